import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { listen } from '../../src/app/server/page-server.ts'
import { goToEnd, openDesk, paste, size } from './desk.ts'
import { briefText, FIRST, openPage, PAGE, waitForLettering } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

/** Numbers that look like chance, the same at each run (linear congruence of Numerical Recipes). */
function* noise(seed: number): Generator<number> {
  for (let state = seed; ; ) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    yield state >>> 16
  }
}

describe('two tabs', () => {
  it('write into one brief, each going along with the other', { timeout: 2 * FIRST }, async () => {
    const context = await desk.browser.newContext({ viewport: { width: 1280, height: 800 } })
    page = await context.newPage()
    await page.goto(desk.served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    const second = await context.newPage()
    await second.goto(desk.served.address)
    await second.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    await goToEnd(page)
    await page.keyboard.type('\nnote      Written in one')
    await expect
      .poll(() => second.locator('.cm-content').textContent(), { timeout: 60_000 })
      .toContain('Written in one')
    await waitForLettering(second, 'WRITTEN IN ONE')
    await second.locator('.cm-content').click()
    await second.keyboard.press('Control+End')
    await second.keyboard.type(' and in the other')
    await page.bringToFront()
    await waitForLettering(page, 'WRITTEN IN ONE AND IN THE OTHER')
    // A third is given what both wrote.
    const third = await context.newPage()
    await third.goto(desk.served.address)
    await waitForLettering(third, 'WRITTEN IN ONE AND IN THE OTHER')
  })
})

describe('a server that goes away', () => {
  it('loses nothing that is saved meanwhile, and the page opens again', { timeout: 3 * FIRST }, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'sheetwright-'))
    const options = { page: PAGE, folder, examples: resolve('examples'), host: '127.0.0.1' }
    let server = await listen(options, 0)
    const { port } = server
    try {
      page = await openPage(desk.browser, `http://127.0.0.1:${port}/`)
      const save = async () => {
        await page.keyboard.press('Control+s')
        await page.locator('.asking input').fill('kept.brief')
        await page.keyboard.press('Enter')
      }
      // Until the page's files are kept: the list of them is the last that is asked for before.
      await page.evaluate(async () => {
        await navigator.serviceWorker.ready
      })
      await server.close()
      await goToEnd(page)
      await page.keyboard.type('\nnote      Written without a server')
      await save()
      await page.getByText('kept.brief was not saved: the server does not answer.').waitFor()
      await expect.poll(() => page.locator('.routing').textContent()).toContain('not saved')

      await page.reload()
      await waitForLettering(page, 'WRITTEN WITHOUT A SERVER')
      // The engine too, not the kept drawing alone.
      await page.locator('.cm-line', { hasText: 'Written without' }).click()
      await page.keyboard.press('End')
      await page.keyboard.type(', still')
      await waitForLettering(page, 'WRITTEN WITHOUT A SERVER, STILL')

      server = await listen(options, port)
      await page.reload()
      await waitForLettering(page, 'WRITTEN WITHOUT A SERVER, STILL')
      await save()
      await page.getByText('Saved as kept.brief.').waitFor()
      expect(readFileSync(join(folder, 'kept.brief'), 'utf8')).toContain('Written without a server, still')
    } finally {
      await server.close()
      rmSync(folder, { recursive: true, force: true })
    }
  })
})

describe('a text that is no usual brief', () => {
  it('of two thousand lines can be written on', { timeout: 2 * FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const first = await briefText(page)
    const lines = Array.from({ length: 2000 }, (_, i) => `# line ${i + 1} of what was thought on the way`)
    await page.locator('.cm-content').click()
    await page.keyboard.press('Control+a')
    await paste(page, `${lines.join('\n')}\n${first.slice(0, first.indexOf('angle '))}plate     4.00 × 2.00 × .25\n`)
    await size(page, '4.00').waitFor({ state: 'attached', timeout: 120_000 })
    await page.locator('.cm-content').click()
    await page.keyboard.press('Control+End')
    await page.keyboard.type('note      At the far end')
    await waitForLettering(page, 'AT THE FAR END')
    await size(page, '4.00').focus()
    await page.keyboard.press('Enter')
    await page.locator('.size-field input').fill('4.50')
    await page.keyboard.press('Enter')
    await size(page, '4.50').waitFor({ state: 'attached', timeout: 120_000 })
    // Of the editor's lines only those in the window are elements.
    await expect.poll(() => page.locator('.cm-line').count()).toBeLessThan(300)
  })

  it('of noise stands as text, is marked, and can be taken back', { timeout: 2 * FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const chance = noise(7)
    const junk = String.fromCharCode(...Array.from({ length: 30_000 }, () => chance.next().value as number))
    await page.locator('.cm-content').click()
    await page.keyboard.press('Control+End')
    await paste(page, junk)
    await page.waitForSelector('.margin li.must-change', { timeout: 120_000 })
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    await page.keyboard.press('Control+z')
    await page.waitForSelector('.margin li.must-change', { state: 'detached', timeout: 120_000 })
    await waitForLettering(page, 'VENT MOTOR BRACKET')
  })
})
