import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { sketchSizes } from '../../src/app/page/starter/sketch-sizes.ts'
import { type StockName, stockSketches } from '../../src/app/page/starter/sketches.ts'
import { goToEnd, openDesk } from './desk.ts'
import { briefText, FIRST, openPage, waitForLettering } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

/** Actions that a first-time user may need for a right bracket: clicks, fields written, lines written, keys. */
const MOST = 25

it(`makes a right bracket from an empty page in at most ${MOST} actions`, { timeout: FIRST }, async () => {
  page = await openPage(desk.browser, desk.served.address)
  let actions = 0
  const act = async (what: () => Promise<unknown>) => {
    actions++
    await what()
  }
  const button = (name: string) => act(() => page.getByRole('button', { name, exact: true }).click())
  const line = (text: string) => act(() => page.keyboard.type(text))
  const settled = () => page.waitForSelector('main[aria-busy=false]', { timeout: 60_000 })

  await button('New')
  await button('angle')
  for (const [name, text] of [
    ['length', '3.00'],
    ['base', '2.25'],
    ['upright', '3.50'],
  ] as const) {
    await act(() => page.getByLabel(name, { exact: true }).fill(text))
  }
  await act(() => page.getByLabel('Name of the part').fill('Shelf bracket'))
  await button('Write the first lines')
  await waitForLettering(page, 'SHELF BRACKET')

  // Holes, with words chosen from those that are offered.
  await act(() => page.locator('.cm-content').click())
  await act(() => page.keyboard.press('Control+End'))
  await line('hole')
  // By a touch: a list takes no key in its first moment, so that nobody chooses what has not been read.
  await act(() => page.locator('.cm-tooltip-autocomplete li[aria-selected]').click())
  await line('upright, from front: 2X dia .281 THRU\n')
  await settled()
  // Where they sit is asked in the margin; the middle is offered.
  const place = page.locator('.margin .mend', { hasText: 'in a row, centred' })
  await act(() => place.click())
  await settled()
  // The distance that is still to be measured is written where it stands on the sheet.
  await act(async () => {
    await page.locator('.hit[aria-label*="?"]').first().focus()
    await page.keyboard.press('Enter')
  })
  await act(() => page.locator('.size-field input').fill('1.500'))
  await act(() => page.keyboard.press('Enter'))
  await settled()

  // What the title block lacks, from the marks.
  const mend = async (label: string) => {
    const offered = page.locator('.margin .mend', { hasText: label }).first()
    await act(() => offered.click({ timeout: 30_000 }))
    await settled()
  }
  await mend('write general')
  await mend('begin the statement material')
  // The margin follows the text a moment later; a reader waits for it before reaching for the next line.
  const followed = (label: string) =>
    page.locator('.margin .mend', { hasText: label }).first().waitFor({ state: 'detached', timeout: 30_000 })
  await line('carbon steel sheet, ASTM A1011 CS type B')
  await followed('begin the statement material')
  await settled()
  await mend('begin the statement number')
  await line('SB-100   rev A')
  await followed('begin the statement number')
  await settled()
  await expect
    .poll(() => page.$$eval('.margin li.must-change .mark', (all) => all.map((m) => m.textContent)), {
      timeout: 20_000,
    })
    .toEqual([])
  await expect.poll(() => page.locator('.routing').textContent()).toContain('Sizes complete')
  await expect.poll(() => page.locator('.sheet text.ink', { hasText: 'PRELIMINARY' }).count()).toBe(0)
  await expect.poll(() => briefText(page)).toMatch(/2 across 1\.500 apart, centred/)
  expect(actions).toBeLessThanOrEqual(MOST)
})

describe('the starter', () => {
  it('begins from everything by keys alone', { timeout: 3 * FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const held = () => page.evaluate(() => document.activeElement?.textContent ?? '')
    for (const stock of Object.keys(stockSketches) as StockName[]) {
      await page.getByRole('button', { name: 'New', exact: true }).focus()
      await page.keyboard.press('Enter')
      await page.waitForFunction(() => document.activeElement?.matches('[data-stock]'))
      for (let steps = 0; (await held()) !== stock && steps < 20; steps++) await page.keyboard.press('Tab')
      await expect.poll(() => held()).toBe(stock)
      await page.keyboard.press('Enter')
      // One Enter a size, one behind the name.
      for (const { inch } of sketchSizes[stock]) {
        await page.waitForFunction((usual) => document.activeElement?.matches(`input[value="${usual}"]`), inch)
        await page.keyboard.press('Enter')
      }
      await page.keyboard.type(`Trial ${stock}`)
      await page.keyboard.press('Enter')
      await waitForLettering(page, `TRIAL ${stock.toUpperCase()}`)
      // Writing goes on at the end of the brief.
      await page.waitForSelector('.cm-focused .what-next')
      await page.keyboard.type('note      Written on')
      await waitForLettering(page, 'WRITTEN ON')
    }
  })

  it('goes back to the sketches, and to the sheet, by Escape', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.getByRole('button', { name: 'New', exact: true }).click()
    await page.getByRole('button', { name: 'tube', exact: true }).click()
    await page.keyboard.press('Escape')
    await page.waitForFunction(() => document.activeElement?.textContent === 'tube')
    await page.keyboard.press('Escape')
    await page.waitForSelector('.sheet .ink', { state: 'attached' })
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
})
