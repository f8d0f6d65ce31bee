/**
 * Keeps the page's own files in the browser, so that it opens again while its server is away. Files of the build carry
 * a hash in their names and are taken from what is kept; the page itself is asked of the server first. What the server
 * says of briefs is never kept.
 */
const worker = self as unknown as Offline

/** What of a service worker's scope is used here (Service Workers, W3C). */
interface Offline {
  readonly registration: { readonly scope: string }
  readonly clients: { readonly claim: () => Promise<void> }
  readonly skipWaiting: () => Promise<void>
  readonly addEventListener: <K extends keyof Events>(name: K, hear: (event: Events[K]) => void) => void
}
interface Lasting extends Event {
  readonly waitUntil: (work: Promise<unknown>) => void
}
interface Fetching extends Lasting {
  readonly request: Request
  readonly respondWith: (answer: Promise<Response>) => void
}
interface Events {
  readonly install: Lasting
  readonly activate: Lasting
  readonly fetch: Fetching
}

const KEPT = 'sheetwright page'
/** Every file of the build, written beside it. */
const LIST = 'files.json'

const isFile = (address: URL): boolean => address.origin === location.origin && address.pathname.startsWith('/assets/')

/** Brings what is kept up to the build that the server gives now, and lets go of older files. */
async function stock(): Promise<void> {
  const answer = await fetch(LIST, { cache: 'no-cache' })
  if (!answer.ok) return
  const wanted = new Set(
    ((await answer.json()) as string[]).map((name) => new URL(name, worker.registration.scope).href),
  )
  const kept = await caches.open(KEPT)
  const have = (await kept.keys()).map((request) => request.url)
  const page = worker.registration.scope
  for (const url of have) if (url !== page && !wanted.has(url)) await kept.delete(url)
  await kept.addAll([page, ...[...wanted].filter((url) => !have.includes(url))])
}

/** The page from the server; while that does not answer, as it was last. */
async function pageOf(request: Request): Promise<Response> {
  try {
    return await fetch(request)
  } catch (fault) {
    const last = await caches.match(worker.registration.scope)
    if (last) return last
    throw fault
  }
}

worker.addEventListener('install', (event) => {
  event.waitUntil(stock().then(() => worker.skipWaiting()))
})
worker.addEventListener('activate', (event) => event.waitUntil(worker.clients.claim()))
worker.addEventListener('fetch', (event) => {
  const { request } = event
  const address = new URL(request.url)
  if (request.method !== 'GET') return
  if (request.mode === 'navigate' && address.href === worker.registration.scope) {
    event.respondWith(pageOf(request))
    // A server that is away is no fault: what is kept stays.
    event.waitUntil(stock().catch(() => {}))
  } else if (isFile(address)) {
    event.respondWith(caches.match(request).then((file) => file ?? fetch(request)))
  }
})
