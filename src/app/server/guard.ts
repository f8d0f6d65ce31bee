import { timingSafeEqual } from 'node:crypto'

/** Names under which a server that listens on the loopback interface may be asked; others are another site's doing. */
const LOOPBACK = new Set(['127.0.0.1', 'localhost', '[::1]'])

/** True where only this machine can reach the address. */
export const isLoopback = (host: string): boolean =>
  host === 'localhost' || host === '::1' || /^127(?:\.\d{1,3}){3}$/.test(host)

/** The name in a Host header, without its port; undefined where it is no host. */
function hostName(header: string | undefined): string | undefined {
  const match = /^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(?::\d{1,5})?$/i.exec(header ?? '')
  return match?.[1]?.toLowerCase()
}

/** A page of another site that a name server led here must not be answered. */
export const isOwnName = (header: string | undefined): boolean => {
  const name = hostName(header)
  return name !== undefined && LOOPBACK.has(name)
}

/** True when a request comes from this page or from no page at all. */
export function isOwnOrigin(origin: string | undefined, host: string | undefined): boolean {
  if (origin === undefined) return true
  try {
    return new URL(origin).host === host
  } catch {
    return false
  }
}

/** Compares without telling by the time it takes how much was right. */
export function isToken(given: string | undefined, token: string): boolean {
  if (given === undefined) return false
  const [a, b] = [Buffer.from(given), Buffer.from(token)]
  return a.length === b.length && timingSafeEqual(a, b)
}
