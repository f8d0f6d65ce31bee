import axe from 'axe-core'
import type { Browser, Locator, Page } from 'playwright-core'
import { afterAll, beforeAll } from 'vitest'
import { FIRST, openBrowser, type Served, servePage } from './open-page.ts'

export interface Desk {
  browser: Browser
  served: Served
}

/** A browser and a served page for the tests of one file. */
export function openDesk(): Desk {
  const desk = {} as Desk
  beforeAll(async () => {
    desk.browser = await openBrowser()
    desk.served = await servePage()
  }, FIRST)
  afterAll(async () => {
    await desk.browser?.close()
    await desk.served?.close()
  })
  return desk
}

/** The first size on the sheet that reads so. */
export const size = (page: Page, words: string): Locator => page.locator(`.hit[aria-label^="Size ${words}"]`).first()

export async function goToEnd(page: Page): Promise<void> {
  await page.locator('.cm-content').click()
  await page.keyboard.press('Control+End')
}

/** Another text in the place of the whole brief, and its sheet waited for. */
export async function writeBrief(page: Page, text: string): Promise<void> {
  await page.locator('.cm-content').click()
  await page.keyboard.press('Control+a')
  await page.keyboard.insertText(text)
  await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
}

/** Puts a text in at the cursor as a paste does. */
export async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((given) => {
    const data = new DataTransfer()
    data.setData('text/plain', given)
    document
      .querySelector('.cm-content')!
      .dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
  }, text)
}

/** What axe finds serious or critical. */
export async function axeFindings(page: Page): Promise<string[]> {
  // The policy of the page lets no script in but its own; this way around it is the test's alone.
  const session = await page.context().newCDPSession(page)
  await session.send('Runtime.evaluate', { expression: axe.source })
  const found = await page.evaluate(() =>
    (
      globalThis as unknown as {
        axe: { run: () => Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }> }
      }
    ).axe.run(),
  )
  return found.violations
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`)
}
