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
    expect(await lettering(page)).toContain('VENT MOTOR BRACKET')
    expect(await page.locator('.margin li').count()).toBe(0)
    await goToEnd(page)
    await page.keyboard.type('\nnote      <img src=x onerror="document.title=1"> & <b>bold</b>')
    await waitForLettering(page, '<IMG')
    expect(await page.locator('.sheet img, .sheet b, .slip img').count()).toBe(0)
    expect(await page.title()).toBe('Sheetwright')
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
    expect(await page.locator('.cm-lintRange-error').first().textContent()).toBe('ngle')
    // The stamp goes into the nearest free place; nothing else moves.
    const stamp = /PRELIMINARY|NOT FOR MANUFACTURE/
    expect((await lettering(page)).filter((t) => !stamp.test(t))).toEqual(before)
    expect((await lettering(page)).some((t) => stamp.test(t))).toBe(true)
    await page.locator('.margin .mend', { hasText: 'angle' }).first().click()
    await page.waitForSelector('.margin', { state: 'detached', timeout: 120_000 })
    expect(await briefText(page)).toMatch(/^angle {5}formed/m)
    await page.locator('.cm-line', { hasText: 'angle' }).last().click()
    await page.keyboard.press('Home')
    await page.keyboard.press('Home')
    await page.keyboard.type('# ')
    const standing = page.locator('.margin .standing')
    await standing.waitFor({ timeout: 120_000 })
    expect(await standing.textContent()).toContain('The sheet is of the brief before')
    expect(await lettering(page)).toEqual(before)
  })

  it('starts a part from a sketch, writes on, and has nothing to complain of', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.getByRole('button', { name: 'New', exact: true }).click()
    await page.getByRole('button', { name: 'angle', exact: true }).click()
    await page.getByLabel('upright').fill('2.50')
    await page.getByLabel('Name of the part').fill('Shelf bracket')
    await page.getByRole('button', { name: 'Write the first lines' }).click()
    await waitForLettering(page, 'SHELF BRACKET')
    await waitForLettering(page, '2.50')
    await goToEnd(page)
    await page.keyboard.type('holes     upright, from front: 2X dia .281 thru\n')
    await page.keyboard.type('          1.500 apart, centred; 1.50 from bottom\n')
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    await waitForLettering(page, '1.500')
    // What is left is the title block's: the sketch asks for sizes only.
    await page.waitForSelector('.margin li.must-change')
    const left = await page.$$eval('.margin li.must-change .mark', (all) => all.map((m) => m.textContent ?? ''))
    expect(left.filter((m) => !/names no material|no number|no tolerance, and the title block/.test(m))).toEqual([])
  })

  it('offers to begin where a brief says nothing of what it begins from', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.locator('.cm-content').click()
    await page.keyboard.press('Control+a')
    await page.keyboard.insertText('part      Nothing yet\n')
    await page.getByRole('button', { name: 'Choose what the shop begins from' }).click({ timeout: 40_000 })
    await page.getByRole('button', { name: 'angle', exact: true }).waitFor()
  })

  it('offers the words that may follow', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await goToEnd(page)
    await page.keyboard.type('\nround     in')
    await page.keyboard.press('Control+Space')
    await page.waitForSelector('.cm-tooltip-autocomplete li')
    expect(await page.$$eval('.cm-completionLabel', (all) => all.map((l) => l.textContent))).toContain('inside corner')
  })

  it('loses no keystroke when it is killed mid-word', { timeout: FIRST }, async () => {
    const context = await desk.browser.newContext()
    page = await context.newPage()
    await page.goto(desk.served.address)
    await page.waitForSelector('.cm-line', { timeout: FIRST })
    await goToEnd(page)
    await page.keyboard.type('\nnote      Half a wo')
    // The tab goes without a chance to put anything away.
    const session = await context.newCDPSession(page)
    const crashed = page.waitForEvent('crash')
    session.send('Page.crash').catch(() => {})
    await crashed
    const second = await context.newPage()
    await second.goto(desk.served.address)
    await second.locator('.cm-content').click({ timeout: FIRST })
    await second.keyboard.press('Control+End')
    await expect.poll(() => briefText(second), { timeout: 120_000 }).toContain('note      Half a wo')
  })
})
