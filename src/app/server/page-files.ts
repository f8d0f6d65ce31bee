import { readFile, realpath, stat } from 'node:fs/promises'
import { extname, join, sep } from 'node:path'

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.ttf': 'font/ttf',
  '.json': 'application/json',
  '.txt': 'text/plain; charset=utf-8',
}

export interface PageFile {
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly headers: Readonly<Record<string, string>>
}

/** What the page may load: itself alone. Its styles are set from script, so those may stand inline. */
const PAGE_POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self'; " +
  "connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
/** The kernel's bindings are made by `new Function`; only the worker that runs it may do that. */
const WORKER_POLICY = "default-src 'none'; script-src 'self' 'unsafe-eval'; connect-src 'self'"

/** A file of the built page by the path of its address, or undefined. Nothing outside the folder is ever read. */
export async function pageFile(folder: string, address: string): Promise<PageFile | undefined> {
  const asked = address === '/' ? '/index.html' : address
  const type = TYPES[extname(asked).toLowerCase()]
  if (!type || asked.includes('\0') || asked.includes('\\') || asked.split('/').some((p) => p.startsWith('.'))) {
    return undefined
  }
  try {
    const [home, path] = await Promise.all([realpath(folder), realpath(join(folder, asked))])
    if (!path.startsWith(home + sep) || !(await stat(path)).isFile()) return undefined
    const bytes = new Uint8Array(await readFile(path))
    // Built names under /assets/ carry a hash of their content.
    const lasting = asked.startsWith('/assets/')
    const isWorker = /\/engine\.worker-[^/]*\.js$/.test(asked)
    return {
      bytes,
      headers: {
        'content-type': type,
        'cache-control': lasting ? 'public, max-age=31536000, immutable' : 'no-cache',
        'content-security-policy': isWorker ? WORKER_POLICY : PAGE_POLICY,
      },
    }
  } catch {
    return undefined
  }
}
