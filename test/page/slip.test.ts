import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { sentence } from '../../src/brief/sentence.ts'
import { goToEnd, openDesk } from './desk.ts'
import { briefText, FIRST, openPage } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

const button = (name: string) => page.getByRole('button', { name, exact: true })

describe('the slip', () => {
  it('lies there as it was left after a look at the sketches, and the keyboard is at New again', {
    timeout: FIRST,
  }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await goToEnd(page)
    await page.keyboard.press('Enter')
    await page.keyboard.type('note      Kept words')
    await page.keyboard.press('Escape')
    const written = await briefText(page)
    expect(written).toMatch(/note {6}Kept words$/)
    await button('New').click()
    await page.waitForSelector('.starter')
    await page.keyboard.press('Escape')
    await page.waitForSelector('.sheet .ink', { state: 'attached' })
    await expect.poll(() => briefText(page)).toBe(written)
    await expect.poll(() => button('New').evaluate((b) => b === document.activeElement)).toBe(true)
    // What was written before can still be taken back.
    await button('Undo').click()
    await expect.poll(() => briefText(page)).not.toContain('Kept words')
  })

  it('offers what follows a keyword that was chosen, on its own paper', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await goToEnd(page)
    await page.keyboard.press('Enter')
    await page.keyboard.type('hol')
    const list = page.locator('.cm-tooltip-autocomplete')
    await list.locator('li[aria-selected]', { hasText: 'hole' }).waitFor()
    // In its first moment a list takes no key.
    await page.waitForTimeout(200)
    const cards = page.locator('.cm-tooltip, .cm-completionInfo')
    const onSlip = async () => {
      const slip = (await page.locator('.slip-body').boundingBox())!
      const boxes = await cards.evaluateAll((all) => all.map((c) => c.getBoundingClientRect().right))
      return boxes.length > 0 && boxes.every((right) => right <= slip.x + slip.width + 0.5)
    }
    await expect.poll(() => onSlip()).toBe(true)
    const line = await page.evaluate(() => {
      const { y, height } = getSelection()!.getRangeAt(0).getBoundingClientRect()
      return { y, height }
    })
    expect(line.height).toBeGreaterThan(0)
    const listed = (await list.boundingBox())!
    expect(listed.y >= line.y + line.height - 1 || listed.y + listed.height <= line.y + 1).toBe(true)
    await page.keyboard.press('Tab')
    await list.locator('li', { hasText: 'upright' }).first().waitFor()
    await expect.poll(() => briefText(page)).toMatch(/^hole {6}$/m)
    await expect.poll(() => onSlip()).toBe(true)
  })
})

describe('a notice', () => {
  it('is put away by its sign and by Escape, and leaves sheet, brief and marks free', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const notice = page.locator('.notice p')
    const write = async () => {
      const download = page.waitForEvent('download', { timeout: FIRST })
      await button('SVG').click()
      await download
      await notice.waitFor()
    }
    await write()
    const box = (await notice.boundingBox())!
    for (const other of ['.sheet .paper', '.slip-body']) {
      const { x, y, width, height } = (await page.locator(other).boundingBox())!
      const apart =
        x + width <= box.x + 1 || box.x + box.width <= x + 1 || y + height <= box.y + 1 || box.y + box.height <= y + 1
      expect(apart).toBe(true)
    }
    await button('Put the notice away').click()
    await expect.poll(() => notice.count()).toBe(0)
    await write()
    await page.keyboard.press('Escape')
    await expect.poll(() => notice.count()).toBe(0)
  })
})

describe('the words of a mark', () => {
  it.each([
    ['the face of the hole is not said', 'The face of the hole is not said.'],
    ['where do the holes sit?', 'Where do the holes sit?'],
    ['“bent” is no stock', '“bent” is no stock.'],
    ['Nothing is said about edges.', 'Nothing is said about edges.'],
    ['⌀8 is held to 0.015 mm', '⌀8 is held to 0.015 mm.'],
    ['mm5 is no unit', 'mm5 is no unit.'],
    ['hole 1 is located twice', 'Hole 1 is located twice.'],
    ['', ''],
  ])('are a sentence: %s', (words, said) => {
    expect(sentence(words)).toBe(said)
  })
})
