import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { roomFor } from '../../src/app/page/bench/room.ts'
import { fitted } from '../../src/app/page/sheet/viewport.ts'
import { goToEnd, openDesk, writeBrief } from './desk.ts'
import { briefText, FIRST, openPage } from './open-page.ts'

// Formats: ISO 216 A4 and A3, ANSI/ASME Y14.1 size B (17 × 11 in).
const PAPERS = {
  A4: { width: 210, height: 297 },
  A3: { width: 420, height: 297 },
  B: { width: 431.8, height: 279.4 },
}
const WINDOWS = [
  { width: 1280, height: 800, rem: 14.9 },
  { width: 1024, height: 768, rem: 14.5 },
  { width: 768, height: 1024, rem: 14.5 },
  { width: 1920, height: 1080, rem: 18.1 },
  { width: 3840, height: 2160, rem: 27 },
]

describe('the place of the sheet', () => {
  it.each(WINDOWS)('leaves the marks one of their own that the sheet does not reach: $width × $height', (window) => {
    for (const paper of Object.values(PAPERS)) {
      for (const folded of [true, false]) {
        const { covered, margin, slip } = roomFor(window, { folded, paper, withoutMargin: false })
        if (slip) continue
        const { scale, x, y } = fitted(paper, window, covered)
        const [right, bottom] = [x + paper.width * scale, y + paper.height * scale]
        expect(x).toBeGreaterThanOrEqual(covered.left - 1e-6)
        if (margin?.side === 'below') {
          expect(window.height - margin.bottom - margin.height).toBeGreaterThanOrEqual(bottom - 1e-6)
          expect(margin.height).toBeGreaterThanOrEqual(6.2 * window.rem - 1e-6)
        } else expect(window.width - 16 * window.rem).toBeGreaterThanOrEqual(right - 1e-6)
        // The place that leaves the sheet larger: neither of the two would be better.
        const free = roomFor(window, { folded, paper, withoutMargin: true }).covered
        const beside = fitted(paper, window, { ...free, right: 16 * window.rem }).scale
        const below = fitted(paper, window, { ...free, bottom: free.bottom + 6.2 * window.rem }).scale
        expect(scale).toBeCloseTo(Math.max(beside, below), 9)
      }
    }
  })

  it('is above the open slip in an upright window, and the marks stand beside that', () => {
    const window = WINDOWS[2]!
    for (const paper of Object.values(PAPERS)) {
      const { covered, margin, slip } = roomFor(window, { folded: false, paper, withoutMargin: false })
      const { scale, y } = fitted(paper, window, covered)
      const top = window.height - slip!.bottom - slip!.height
      expect(y + paper.height * scale).toBeLessThanOrEqual(top + 1e-6)
      // Eighteen lines or so to write in, and the desks below.
      expect(slip!.height).toBeGreaterThanOrEqual(18 * window.rem)
      expect(slip!.bottom).toBeGreaterThanOrEqual(10 * window.rem)
      if (margin?.side !== 'below') throw new Error('the marks stand below')
      expect(slip!.width).toBeGreaterThanOrEqual(23.5 * window.rem)
      expect(margin.left).toBeGreaterThan(slip!.width!)
      expect(window.width - margin.left).toBeGreaterThanOrEqual(16 * window.rem - 1.2 * window.rem)
      expect(roomFor(window, { folded: true, paper, withoutMargin: false }).slip).toBeUndefined()
    }
  })

  it('is under the open slip in a small window, and the marks keep a strip below that', () => {
    for (const window of [
      { width: 390, height: 844, rem: 16 },
      { width: 560, height: 800, rem: 14.5 },
    ]) {
      const { slip, margin } = roomFor(window, { folded: false, paper: PAPERS.A3, withoutMargin: false })
      if (margin?.side !== 'below') throw new Error('the marks stand below')
      expect(slip!.bottom).toBeGreaterThanOrEqual(margin.bottom + margin.height)
      expect(margin.height).toBeGreaterThanOrEqual(6.2 * window.rem)
      expect(slip!.height).toBeGreaterThan(margin.height)
    }
  })

  it('is under no slip in any window', () => {
    for (const window of [
      ...WINDOWS,
      { width: 390, height: 844, rem: 14.5 },
      { width: 360, height: 740, rem: 16 },
      { width: 560, height: 800, rem: 14.5 },
      { width: 640, height: 400, rem: 14.5 },
      { width: 800, height: 700, rem: 14.5 },
      // 1280 × 800 at 200 %
      { width: 1280, height: 800, rem: 30 },
    ])
      for (const paper of Object.values(PAPERS))
        for (const withoutMargin of [true, false]) {
          const { covered, slip } = roomFor(window, { folded: false, paper, withoutMargin })
          const { scale, x, y } = fitted(paper, window, covered)
          const side = slip?.side ?? 'left'
          if (side === 'left') expect(x).toBeGreaterThanOrEqual((slip?.width ?? 23.5 * window.rem) - 1e-6)
          else expect(y + paper.height * scale).toBeLessThanOrEqual(window.height - slip!.bottom - slip!.height + 1e-6)
          // Large enough to follow what is written.
          expect(paper.width * scale).toBeGreaterThan(0.2 * window.width)
        }
  })

  it('reaches down to the row of its scale where no desk has to do with it', () => {
    for (const window of WINDOWS) {
      const lying = { folded: false, paper: PAPERS.A3, withoutMargin: false }
      const [with_, without] = [roomFor(window, lying), roomFor(window, { ...lying, withoutDesks: true })]
      const scale = ({ covered }: typeof with_) => fitted(PAPERS.A3, window, covered).scale
      expect(scale(without)).toBeGreaterThanOrEqual(scale(with_))
      const lowest = [
        without.covered.bottom,
        without.slip?.bottom,
        without.margin?.side === 'below' ? without.margin.bottom : undefined,
      ]
      expect(Math.min(...lowest.filter((n) => n !== undefined))).toBeCloseTo(2.7 * window.rem, 9)
    }
  })

  it('keeps none in a low window', () => {
    const room = roomFor(
      { width: 640, height: 400, rem: 14.5 },
      { folded: true, paper: PAPERS.B, withoutMargin: false },
    )
    expect(room).toMatchObject({ low: true, narrow: true, margin: undefined })
  })
})

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

const paper = async () => {
  const { x, y, width, height } = (await page.locator('.sheet .paper').boundingBox())!
  return [x, y, width, height].map((n) => Math.round(n))
}

describe('the sheet on the page', () => {
  it('stays where it is when marks come and go', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const first = await briefText(page)
    const before = await paper()
    expect(before[2]).toBeGreaterThan(850)
    const stays = async (text: string, margin: string) => {
      await writeBrief(page, text)
      await page.waitForSelector(margin)
      // Longer than the checker waits, and than half a word stands.
      await page.waitForTimeout(1500)
      await expect.poll(() => paper()).toEqual(before)
    }
    await stays(`${first}\nwrong\n`, '.margin li.must-change')
    await stays(first.replace(/^angle.*\n(?: .*\n)*/m, ''), '.margin .standing')
    await writeBrief(page, first)
    await page.waitForSelector('.margin', { state: 'detached' })
    await expect.poll(() => paper()).toEqual(before)
  })

  it('gives the margin’s room to the check print, and tells its marks once', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await writeBrief(page, `${await briefText(page)}\nnote      As drawn\n`)
    await page.waitForSelector('.margin li')
    await page.getByRole('button', { name: 'Check print' }).click()
    await page.waitForSelector('.ink.pencil-yellow', { state: 'attached' })
    await expect.poll(() => page.locator('.margin').count()).toBe(0)
    await expect.poll(async () => (await paper())[2]).toBeGreaterThan(850)
    const laid = await paper()
    // Written on, the last print stays until the next, at its size.
    await page.locator('.cm-content').click()
    await page.keyboard.press('Control+End')
    await page.keyboard.type('note      Twice')
    await expect.poll(() => paper()).toEqual(laid)
    await expect.poll(() => page.locator('.ink.pencil-yellow').count()).toBeGreaterThan(0)
    // The tally leads from the print to the marks.
    await page.locator('.stage[aria-label=Check] button').first().click()
    await page.waitForSelector('.margin .opened')
  })

  it('has the slip below it on an upright tablet, open from the first', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address, 768, 1024)
    const box = async (selector: string) => (await page.locator(selector).boundingBox())!
    const slip = await box('.slip-body')
    const [, y, width, height] = await paper()
    expect(y! + height!).toBeLessThanOrEqual(slip.y + 1)
    expect(width).toBeGreaterThan(700)
    const routing = await box('.routing')
    expect(slip.y + slip.height).toBeLessThanOrEqual(routing.y + 1)
    await goToEnd(page)
    await page.keyboard.press('Enter')
    await page.keyboard.type('wrong')
    await page.waitForSelector('.margin li.must-change')
    expect((await box('.margin')).x).toBeGreaterThanOrEqual(slip.x + slip.width)
    await page.getByRole('button', { name: 'Fold', exact: true }).click()
    await page.waitForSelector('.slip.folded')
    const brief = page.getByRole('button', { name: 'Brief', exact: true })
    await brief.click()
    await expect.poll(async () => (await box('.slip-body')).y).toBeCloseTo(slip.y, 0)
  })

  it('keeps the note on a line clear of the marks below it', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await goToEnd(page)
    await page.keyboard.press('Enter')
    await page.keyboard.type('wrong')
    await page.waitForSelector('.margin.below li.must-change')
    await writeBrief(page, (await briefText(page)).replace(/\nwrong$/, '\nnote      As drawn'))
    await page.waitForSelector('.margin.below li')
    await page.locator('.line-stop').focus()
    await page.keyboard.press('Enter')
    const noteBox = async () => (await page.locator('.why-note').boundingBox())!
    const note = await noteBox()
    const marks = (await page.locator('.margin.below').boundingBox())!
    expect(note.y + note.height).toBeLessThanOrEqual(marks.y + 1)
    // Without marks it lies in their place, and the sheet is free.
    await page.keyboard.press('Escape')
    await writeBrief(page, (await briefText(page)).replace(/\nnote {6}As drawn/, ''))
    await page.waitForSelector('.margin', { state: 'detached' })
    await page.locator('.line-stop').focus()
    await page.keyboard.press('Enter')
    const [, y, , height] = await paper()
    expect((await noteBox()).y).toBeGreaterThanOrEqual(y! + height!)
  })

  it('has slip, marks and desks below it on a phone, all within reach', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address, 390, 844)
    const box = async (selector: string) => (await page.locator(selector).boundingBox())!
    await page.getByRole('button', { name: 'Brief', exact: true }).click()
    await goToEnd(page)
    await page.keyboard.press('Enter')
    await page.keyboard.type('wrong')
    await page.waitForSelector('.margin li.must-change')
    const slip = await box('.slip-body')
    const [, y, , height] = await paper()
    expect(y! + height!).toBeLessThanOrEqual(slip.y + 1)
    const margin = await box('.margin')
    expect(slip.y + slip.height).toBeLessThanOrEqual(margin.y + 1)
    expect(margin.y + margin.height).toBeLessThanOrEqual((await box('.routing')).y + 1)
    for (const name of ['Save', 'Check print', 'Sign', 'PDF', 'SVG', 'STEP', 'PNG', 'Print'])
      await page.locator('.routing').getByRole('button', { name, exact: true }).click({ trial: true })
  })

  it('leaves the line in sight that is written when its paper changes', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address, 768, 1024)
    const before = await paper()
    // Without its holes the part goes on a smaller sheet, of another shape.
    const text = (await briefText(page)).replace(/^(?:holes|slots).*\n(?: .*\n)*/gm, '')
    await writeBrief(page, text.trimEnd())
    await expect.poll(paper).not.toEqual(before)
    await expect
      .poll(async () => {
        const slip = (await page.locator('.slip .writing').boundingBox())!
        const line = await page.locator('.cm-line').last().boundingBox()
        return line !== null && line.y >= slip.y && line.y + line.height <= slip.y + slip.height
      })
      .toBe(true)
  })

  it('is of use on a quarter of the window, and its marks are within reach', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address, 640, 400)
    const before = await paper()
    const [, , width, height] = before
    expect((width! * height!) / (640 * 400)).toBeGreaterThan(0.5)
    await page.getByRole('button', { name: 'Brief', exact: true }).click()
    // The sheet makes way for the brief, whole.
    const slip = (await page.locator('.slip-body').boundingBox())!
    await expect.poll(async () => (await paper())[0]).toBeGreaterThanOrEqual(slip.x + slip.width)
    const aside = await paper()
    expect(aside[0]! + aside[2]!).toBeLessThanOrEqual(640)
    expect(aside[2]).toBeGreaterThan(300)
    await goToEnd(page)
    await page.keyboard.press('Enter')
    await page.keyboard.type('wrong')
    await page.waitForFunction(() => document.querySelector('.stage[aria-label=Check]')?.textContent?.match(/\d marks/))
    await expect.poll(() => paper()).toEqual(aside)
    // What says nothing in one line is not there.
    await expect.poll(() => page.locator('.stage[aria-label=Register]').isVisible()).toBe(false)
    // Nothing lies over what folds the slip, the pictorial in the hand neither.
    await page.locator('main').click({ position: { x: 600, y: 10 } })
    await page.keyboard.press('l')
    await page.waitForSelector('.turning[data-state="at rest"]', { timeout: FIRST })
    await page.getByRole('button', { name: 'Fold', exact: true }).click({ trial: true })
    await page.keyboard.press('Escape')
    await page.waitForSelector('.turning', { state: 'detached' })
    // Nothing lies over what takes back.
    const undo = page.getByRole('button', { name: 'Undo' })
    await undo.click({ trial: true })
    await page.locator('.stage[aria-label=Check] button').first().click()
    await page.locator('.margin .opened').click({ trial: true, position: { x: 5, y: 5 } })
    const opened = (await page.locator('.margin .opened').boundingBox())!
    expect(opened.y).toBeGreaterThanOrEqual(0)
    expect(opened.y + Math.min(opened.height, 60)).toBeLessThanOrEqual(400)
  })
})
