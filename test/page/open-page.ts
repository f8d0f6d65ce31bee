import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { type Browser, chromium, type Page } from 'playwright-core'
import { listen, type PageServerOptions } from '../../src/app/server/page-server.ts'

const CHROMIUM = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find(
  (p) => p && existsSync(p),
)

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--enable-unsafe-swiftshader',
]

/** A first drawing waits for the kernel, on a machine that may be busy with other things. */
export const FIRST = 240_000

export async function openBrowser(): Promise<Browser> {
  if (!CHROMIUM) throw new Error('chromium is not installed; test/run installs it')
  return chromium.launch({ executablePath: CHROMIUM, args: FLAGS })
}

export interface Served {
  readonly address: string
  /** A folder of its own whose briefs the page may open and save. */
  readonly folder: string
  readonly close: () => Promise<void>
}

/** The built page; another build of it can be put to the same tests. */
export const PAGE = resolve(process.env.PAGE_BUILD ?? 'dist/page')

/** The built page on a free port of the loopback interface. */
export async function servePage(more: Partial<PageServerOptions> = {}): Promise<Served> {
  if (!existsSync(join(PAGE, 'index.html'))) throw new Error('the page is not built; run npm run build')
  const folder = mkdtempSync(join(tmpdir(), 'sheetwright-'))
  const server = await listen({ page: PAGE, folder, examples: resolve('examples'), host: '127.0.0.1', ...more }, 0)
  return {
    address: `http://127.0.0.1:${server.port}/`,
    folder,
    close: async () => {
      await server.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** A page with nothing kept, opened at its first sheet. */
export async function openPage(browser: Browser, address: string, width = 1280, height = 800): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height }, acceptDownloads: true })
  await page.goto(address)
  await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
  return page
}

/** All lettering of the sheet, one string an item. */
export const lettering = (page: Page): Promise<string[]> =>
  page.$$eval('.sheet text.ink', (all) => all.map((t) => t.textContent ?? ''))

export async function waitForLettering(page: Page, text: string, there = true): Promise<void> {
  await page.waitForFunction(
    ([wanted, expected]) =>
      [...document.querySelectorAll('.sheet text.ink')].some((t) => t.textContent?.includes(wanted as string)) ===
      expected,
    [text, there] as const,
    { timeout: 120_000 },
  )
}

export const briefText = (page: Page): Promise<string> =>
  page.$$eval('.cm-line', (lines) => lines.map((l) => l.textContent ?? '').join('\n'))
