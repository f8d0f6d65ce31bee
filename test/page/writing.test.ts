import { gzipSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { goToEnd, openDesk } from './desk.ts'
import { briefText, FIRST, lettering, openPage, waitForLettering } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

describe('writing on the page', () => {
  it('opens at a finished example, and shows text as text', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await expect.poll(() => lettering(page)).toContain('VENT MOTOR BRACKET')
    await expect.poll(() => page.locator('.margin li').count()).toBe(0)
    await goToEnd(page)
    await page.keyboard.type('\nnote      <img src=x onerror="document.title=1"> & <b>bold</b>')
    await waitForLettering(page, '<IMG')
    await expect.poll(() => page.locator('.sheet img, .sheet b, .slip img').count()).toBe(0)
    await expect.poll(() => page.title()).toBe('Sheetwright')
  })

  it('loads less than 700 kB of script, compressed, to show a sheet', { timeout: FIRST }, async () => {
    page = await desk.browser.newPage()
    const scripts: Promise<Buffer>[] = []
    page.on('response', (answer) => {
      if (answer.url().endsWith('.js')) scripts.push(answer.body())
    })
    await page.goto(desk.served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    const bytes = (await Promise.all(scripts)).map((b) => gzipSync(b).length)
    expect(bytes.length).toBeGreaterThanOrEqual(2)
    expect(bytes.reduce((sum, n) => sum + n, 0)).toBeLessThan(700_000)
  })

  it('keeps the last good sheet over an error and mends it by its offer', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const before = await lettering(page)
    await page.locator('.cm-line', { hasText: 'angle' }).last().click()
    await page.keyboard.press('Home')
    await page.keyboard.press('Home')
    await page.keyboard.press('Delete')
    await page.waitForSelector('.margin li', { timeout: 120_000 })
    await expect.poll(() => page.locator('.cm-lintRange-error').first().textContent()).toBe('ngle')
    // The stamp goes into the nearest free place, who checked and approved are taken off; nothing else moves.
    const stamp = /PRELIMINARY|NOT FOR MANUFACTURE/
    const signed = /QUILLFEATHER|ORBANEK|2024-03-1[45]/
    expect(before.filter((t) => signed.test(t))).toHaveLength(4)
    await expect
      .poll(async () => (await lettering(page)).filter((t) => !stamp.test(t)))
      .toEqual(before.filter((t) => !signed.test(t)))
    await expect.poll(async () => (await lettering(page)).some((t) => stamp.test(t))).toBe(true)
    await page.locator('.margin .mend', { hasText: 'angle' }).first().click()
    await page.waitForSelector('.margin', { state: 'detached', timeout: 120_000 })
    await expect.poll(() => briefText(page)).toMatch(/^angle {5}formed/m)
    await page.locator('.cm-line', { hasText: 'angle' }).last().click()
    await page.keyboard.press('Home')
    await page.keyboard.press('Home')
    await page.keyboard.type('# ')
    const standing = page.locator('.margin .standing')
    await standing.waitFor({ timeout: 120_000 })
    await expect.poll(() => standing.textContent()).toContain('The sheet is of the brief before')
    await expect.poll(() => lettering(page)).toEqual(before)
  })

  it('offers the words that may follow', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await goToEnd(page)
    await page.keyboard.type('\nround     in')
    await page.keyboard.press('Control+Space')
    await page.waitForSelector('.cm-tooltip-autocomplete li')
    await expect
      .poll(() => page.$$eval('.cm-completionLabel', (all) => all.map((l) => l.textContent)))
      .toContain('inside corner')
  })
})
