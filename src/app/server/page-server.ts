import type { Server } from 'node:http'
import { serve } from '@hono/node-server'
import { type Context, Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { getCookie, setCookie } from 'hono/cookie'
import { isBriefName, listBriefs, MOST_BYTES, readStored, saveStored } from './desk.ts'
import { isLoopback, isOwnName, isOwnOrigin, isToken } from './guard.ts'
import { pageFile } from './page-files.ts'

/** What the page's server is given. All folders are absolute. */
export interface PageServerOptions {
  /** The built page. */
  readonly page: string
  /** Folder whose briefs may be opened and saved. */
  readonly folder: string
  /** Brief of the folder that the page opens with; absent: an example. */
  readonly open?: string
  readonly examples: string
  readonly host: string
  /** Required unless the host is the loopback interface. */
  readonly token?: string
}

/** What the page asks first. */
export interface DeskAnswer {
  readonly folder: string
  readonly open: string | null
  readonly briefs: readonly { readonly name: string; readonly bytes: number; readonly modified: string }[]
  readonly examples: readonly string[]
}

const COOKIE = 'sheetwright'

const said = (c: Context, status: 400 | 403 | 404 | 405 | 409 | 413 | 415 | 500, text: string) =>
  c.text(`${text}\n`, status)

/** Answers for the page: its files, the briefs of one folder and the examples. Nothing else of the machine. */
export function pageServer(options: PageServerOptions): Hono {
  const { token } = options
  if (!isLoopback(options.host) && !token) throw new Error('a server beyond this machine needs a token')
  const app = new Hono()

  app.use(async (c, next) => {
    if (!['GET', 'HEAD', 'PUT'].includes(c.req.method)) {
      c.header('allow', 'GET, HEAD, PUT')
      return said(c, 405, 'Only GET, HEAD and PUT are answered.')
    }
    const host = c.req.header('host')
    if (isLoopback(options.host) && !isOwnName(host))
      return said(c, 403, 'This server answers only to its own address.')
    if (!isOwnOrigin(c.req.header('origin'), host)) return said(c, 403, 'Another site may not ask this.')
    if (token) {
      const given = c.req.query('token')
      if (isToken(given, token)) {
        setCookie(c, COOKIE, token, { httpOnly: true, sameSite: 'Strict', path: '/' })
        return c.redirect(new URL(c.req.url).pathname)
      }
      if (!isToken(getCookie(c, COOKIE), token)) return said(c, 403, 'Open the address that the command printed.')
    }
    await next()
    c.header('x-content-type-options', 'nosniff')
    c.header('referrer-policy', 'no-referrer')
    c.header('cross-origin-opener-policy', 'same-origin')
    // with it the page shares memory with its workers, and can end their work at once
    c.header('cross-origin-embedder-policy', 'require-corp')
    c.header('cross-origin-resource-policy', 'same-origin')
    return undefined
  })

  app.get('/api/desk', async (c) => {
    const [briefs, examples] = await Promise.all([listBriefs(options.folder), listBriefs(options.examples)])
    const answer: DeskAnswer = {
      folder: options.folder.split(/[\\/]/).pop() ?? '',
      open: options.open ?? null,
      briefs,
      examples: examples.map((e) => e.name),
    }
    return c.json(answer, 200, { 'cache-control': 'no-store' })
  })

  const give = (folder: string) => async (c: Context) => {
    const stored = await readStored(folder, c.req.param('name') ?? '')
    if (!stored) return said(c, 404, 'There is no such brief.')
    return c.text(stored.text, 200, { etag: stored.tag, 'cache-control': 'no-store' })
  }
  app.get('/api/briefs/:name', give(options.folder))
  app.get('/api/examples/:name', give(options.examples))

  app.put(
    '/api/briefs/:name',
    bodyLimit({ maxSize: MOST_BYTES, onError: (c) => said(c, 413, `A brief is at most ${MOST_BYTES} bytes.`) }),
    async (c) => {
      const name = c.req.param('name')
      if (!isBriefName(name))
        return said(c, 400, 'A brief is saved under a plain name that ends in .brief, and no device’s such as CON.')
      if (!/^text\/plain\b/.test(c.req.header('content-type') ?? '')) return said(c, 415, 'A brief is plain text.')
      const bytes = new Uint8Array(await c.req.arrayBuffer())
      try {
        new TextDecoder('utf-8', { fatal: true }).decode(bytes)
      } catch {
        return said(c, 400, 'A brief is UTF-8 text.')
      }
      try {
        const saving = await saveStored(options.folder, name, bytes, c.req.header('if-match'))
        if (saving.kind === 'saved') return c.body(null, 204, { etag: saving.tag })
        if (saving.tag) c.header('etag', saving.tag)
        return said(c, 409, 'The file has changed since it was opened.')
      } catch (fault) {
        return said(c, 500, `The file cannot be written: ${(fault as NodeJS.ErrnoException).code ?? 'refused'}.`)
      }
    },
  )

  app.get('*', async (c) => {
    const file = await pageFile(options.page, c.req.path)
    if (!file) return said(c, 404, 'There is nothing here.')
    return c.body(file.bytes, 200, { ...file.headers })
  })
  app.onError((_, c) => said(c, 500, 'A fault of the program’s own.'))
  return app
}

/** Serves until `close`. Rejects where the port is taken. */
export function listen(
  options: PageServerOptions,
  port: number,
): Promise<{ port: number; close: () => Promise<void> }> {
  const app = pageServer(options)
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, hostname: options.host, port }, (info) =>
      resolve({
        port: info.port,
        close: () =>
          new Promise<void>((done) => {
            server.close(() => done())
            ;(server as Server).closeAllConnections()
          }),
      }),
    ) as Server
    server.once('error', reject)
  })
}
