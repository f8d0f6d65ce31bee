import type { DeskAnswer } from '../../server/page-server.ts'

/** The server's folder. A page opened without its server has none. */
export async function askDesk(): Promise<DeskAnswer | undefined> {
  try {
    const answer = await fetch('api/desk')
    return answer.ok ? ((await answer.json()) as DeskAnswer) : undefined
  } catch {
    return undefined
  }
}

export async function fetchBrief(from: 'briefs' | 'examples', name: string): Promise<{ text: string; tag: string }> {
  const answer = await fetch(`api/${from}/${encodeURIComponent(name)}`)
  if (!answer.ok) throw new Error((await answer.text()).trim())
  return { text: await answer.text(), tag: answer.headers.get('etag') ?? '' }
}

export type Putting =
  | { readonly kind: 'saved'; readonly tag: string }
  | { readonly kind: 'changed' }
  | { readonly kind: 'refused'; readonly text: string }

/** Saves to the folder, unless the file is no longer what it was when it was opened. */
export async function putBrief(name: string, text: string, tag: string | undefined): Promise<Putting> {
  try {
    const answer = await fetch(`api/briefs/${encodeURIComponent(name)}`, {
      method: 'PUT',
      headers: { 'content-type': 'text/plain; charset=utf-8', ...(tag ? { 'if-match': tag } : {}) },
      body: text,
    })
    if (answer.status === 204) return { kind: 'saved', tag: answer.headers.get('etag') ?? '' }
    if (answer.status === 409) return { kind: 'changed' }
    return { kind: 'refused', text: (await answer.text()).trim() }
  } catch {
    return {
      kind: 'refused',
      text: 'the server does not answer. It stays on the shelf of this browser; start the server, then save again',
    }
  }
}
