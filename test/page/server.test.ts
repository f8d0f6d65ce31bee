import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { listen, pageServer } from '../../src/app/server/page-server.ts'

const root = mkdtempSync(join(tmpdir(), 'sheetwright-server-'))
const options = {
  page: join(root, 'page'),
  folder: join(root, 'briefs'),
  examples: join(root, 'examples'),
  host: '127.0.0.1',
}
let port = 0
let close: () => Promise<void>

beforeAll(async () => {
  for (const folder of [options.page, options.folder, options.examples]) mkdirSync(folder)
  writeFileSync(join(options.page, 'index.html'), '<!doctype html>')
  writeFileSync(join(options.folder, 'a.brief'), 'part  A\n')
  writeFileSync(join(options.folder, 'other.txt'), 'not a brief')
  writeFileSync(join(root, 'secret.brief'), 'secret')
  symlinkSync(join(root, 'secret.brief'), join(options.folder, 'link.brief'))
  ;({ port, close } = await listen(options, 0))
})
afterAll(async () => {
  await close()
  rmSync(root, { recursive: true, force: true })
})

interface Answer {
  readonly status: number
  readonly text: string
  readonly headers: Readonly<Record<string, string | string[] | undefined>>
}

/** A request whose path reaches the server as it stands; fetch would tidy it. */
function ask(
  path: string,
  more: { method?: string; headers?: Record<string, string>; body?: string } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port, path, method: more.method ?? 'GET', headers: { ...more.headers } },
      (answer) => {
        let text = ''
        answer.on('data', (piece) => (text += String(piece)))
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, text, headers: answer.headers }))
      },
    )
    asked.on('error', reject)
    asked.end(more.body)
  })
}

const put = (path: string, body: string, headers: Record<string, string> = {}) =>
  ask(path, { method: 'PUT', body, headers: { 'content-type': 'text/plain; charset=utf-8', ...headers } })

describe('the page server', () => {
  it('gives the page with a policy that lets in nothing foreign', async () => {
    const answer = await ask('/')
    expect(answer.status).toBe(200)
    expect(answer.headers['content-security-policy']).toContain("default-src 'none'")
    expect(answer.headers['content-security-policy']).not.toContain('unsafe-eval')
    expect(answer.headers['x-content-type-options']).toBe('nosniff')
  })

  it('lists briefs alone, and gives none through a link out of the folder', async () => {
    const desk = JSON.parse((await ask('/api/desk')).text) as { briefs: { name: string }[] }
    expect(desk.briefs.map((b) => b.name)).toEqual(['a.brief'])
    expect((await ask('/api/briefs/link.brief')).status).toBe(404)
    expect((await ask('/api/briefs/other.txt')).status).toBe(404)
  })

  it.each([
    '/../secret.brief',
    '/..%2fsecret.brief',
    '/%2e%2e/secret.brief',
    '/api/briefs/..%2Fsecret.brief',
    '/api/briefs/..%5Csecret.brief',
    '/api/briefs/%2e%2e%2fsecret.brief',
    '/api/examples/..%2f..%2fsecret.brief',
    '/assets/../../secret.brief',
    '/api/briefs/a.brief%00.brief',
  ])('does not leave its folders by %s', async (path) => {
    const answer = await ask(path)
    expect(answer.status).toBe(404)
    expect(answer.text).not.toContain('secret')
  })

  it('saves under a plain name only', async () => {
    for (const name of ['..%2Fx.brief', '.hidden.brief', 'x.txt', 'a%2Fb.brief', 'x.brief%00', 'CON%3A.brief']) {
      const answer = await put(`/api/briefs/${name}`, 'part  X\n')
      expect([400, 404], name).toContain(answer.status)
    }
  })

  it('saves what is new or was seen, and refuses to write over what was not', async () => {
    expect((await put('/api/briefs/new.brief', 'part  One\n')).status).toBe(204)
    expect((await put('/api/briefs/new.brief', 'part  Two\n')).status).toBe(409)
    expect(readFileSync(join(options.folder, 'new.brief'), 'utf8')).toBe('part  One\n')
    const seen = await ask('/api/briefs/new.brief')
    const again = await put('/api/briefs/new.brief', 'part  Two\n', { 'if-match': String(seen.headers.etag) })
    expect(again.status).toBe(204)
    expect(readFileSync(join(options.folder, 'new.brief'), 'utf8')).toBe('part  Two\n')
  })

  it('refuses bodies that are too large, not text or not UTF-8', async () => {
    expect((await put('/api/briefs/big.brief', 'x'.repeat(4 * 1024 * 1024 + 1))).status).toBe(413)
    expect((await put('/api/briefs/j.brief', '{}', { 'content-type': 'application/json' })).status).toBe(415)
    const answer = await fetch(`http://127.0.0.1:${port}/api/briefs/b.brief`, {
      method: 'PUT',
      headers: { 'content-type': 'text/plain' },
      body: new Uint8Array([0xff, 0xfe, 0x00]),
    })
    expect(answer.status).toBe(400)
  })

  it.each(['POST', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE'])('refuses %s', async (method) => {
    const answer = await ask('/api/briefs/a.brief', { method })
    expect(answer.status).toBe(405)
    expect(answer.headers.allow).toBe('GET, HEAD, PUT')
  })

  it('answers to its own name and its own pages only', async () => {
    expect((await ask('/api/desk', { headers: { host: 'elsewhere.example' } })).status).toBe(403)
    expect((await ask('/api/desk', { headers: { host: `localhost:${port}` } })).status).toBe(200)
    const foreign = { origin: 'http://elsewhere.example', host: `127.0.0.1:${port}` }
    expect((await put('/api/briefs/x.brief', 'part  X\n', foreign)).status).toBe(403)
  })

  it('listens on the loopback interface alone', async () => {
    // 127.0.0.2 is loopback too, but not the address that was asked for.
    const reached = await new Promise<boolean>((resolve) => {
      const socket = connect({ host: '127.0.0.2', port, timeout: 1000 })
      socket.on('connect', () => resolve(true))
      for (const event of ['error', 'timeout']) socket.on(event, () => resolve(false))
      socket.on('close', () => socket.destroy())
    })
    expect(reached).toBe(false)
  })

  it('beyond this machine, answers to the token alone', async () => {
    expect(() => pageServer({ ...options, host: '0.0.0.0' })).toThrow(/token/)
    const app = pageServer({ ...options, host: '0.0.0.0', token: 'correct-horse-battery' })
    expect((await app.request('http://there.example/api/desk')).status).toBe(403)
    expect((await app.request('http://there.example/api/desk?token=wrong-horse-battery')).status).toBe(403)
    const first = await app.request('http://there.example/?token=correct-horse-battery')
    expect(first.status).toBe(302)
    expect(first.headers.get('location')).toBe('/')
    const cookie = first.headers.get('set-cookie')!
    expect(cookie).toMatch(/HttpOnly/)
    expect(cookie).toMatch(/SameSite=Strict/)
    const second = await app.request('http://there.example/api/desk', { headers: { cookie: cookie.split(';')[0]! } })
    expect(second.status).toBe(200)
  })
})
