import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { openDesk, size, writeBrief } from './desk.ts'
import { briefText, FIRST, openPage } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')

describe('the keyboard', () => {
  it('is back at a size that it changed, and goes among the sizes from end to end', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await size(page, '3.50').focus()
    await page.keyboard.press('Enter')
    await page.locator('.size-field input').fill('3.625')
    await page.keyboard.press('Enter')
    await page.waitForSelector('.size-field', { state: 'detached' })
    await expect.poll(() => focused()).toMatch(/^Size 3\.(50|625)/)
    await size(page, '3.625').waitFor({ state: 'attached', timeout: 120_000 })
    await expect.poll(() => focused()).toMatch(/^Size 3\.625/)
    // Left as it was, the keyboard is there too.
    await page.keyboard.press('Enter')
    await page.waitForSelector('.size-field')
    await page.keyboard.press('Escape')
    await expect.poll(() => focused()).toMatch(/^Size 3\.625/)
    const names = await page.$$eval('.hit', (all) => all.map((h) => h.getAttribute('aria-label')))
    await page.keyboard.press('End')
    await expect.poll(() => focused()).toBe(names.at(-1))
    await page.keyboard.press('Home')
    await expect.poll(() => focused()).toBe(names[0])
  })

  it('goes along with the pictorial into the hand, and back by Escape', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const lift = page.getByRole('button', { name: 'Lift off' })
    await lift.focus()
    await page.keyboard.press('Enter')
    await page.waitForSelector('.turning')
    await expect.poll(() => focused()).toMatch(/^The part in the hand/)
    await page.keyboard.press('Escape')
    await page.waitForSelector('.turning', { state: 'detached' })
    await expect.poll(() => lift.evaluate((b) => b === document.activeElement)).toBe(true)
    // From elsewhere on the page Escape puts it back too.
    await page.keyboard.press('Enter')
    await page.waitForSelector('.turning')
    await page.locator('.scale-rule button').first().focus()
    await page.keyboard.press('Escape')
    await page.waitForSelector('.turning', { state: 'detached' })
  })

  it('says in the lifted panel what the line under the keyboard is', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const line = page.locator('.line-stop')
    await line.focus()
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Show it on the pictorial' }).click()
    await page.waitForSelector('.turning')
    await line.focus()
    const first = await line.getAttribute('aria-label')
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => line.getAttribute('aria-label')).not.toBe(first)
    await expect
      .poll(async () => [await line.getAttribute('aria-label'), await page.locator('.turning .why').textContent()])
      .toSatisfy(([label, why]) => label.includes(why))
  })
})

describe('what is opened or chosen', () => {
  it('is brought into sight: a mark with its reasons', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address, 1280, 700)
    await writeBrief(page, `${await briefText(page)}\n${'wrong\nbent\nnothing\n'.repeat(6)}`)
    await page.waitForFunction(() => document.querySelectorAll('.margin .alike').length > 0)
    await page.locator('.margin .alike').first().click()
    const last = page.locator('.margin .mark').last()
    await last.focus()
    await page.keyboard.press('Enter')
    const opened = (await page.locator('.margin .opened').boundingBox())!
    const margin = (await page.locator('.margin').boundingBox())!
    expect(opened.y).toBeGreaterThanOrEqual(margin.y)
    expect(opened.y + opened.height).toBeLessThanOrEqual(margin.y + margin.height)
  })

  it('is brought into sight: the words of a size', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address, 1280, 560)
    const scroller = page.locator('.cm-scroller')
    await expect.poll(() => scroller.evaluate((s) => s.scrollTop)).toBe(0)
    const box = (await size(page, '1.38').boundingBox())!
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2)
    await page.waitForSelector('.lit-word')
    await expect.poll(() => scroller.evaluate((s) => s.scrollTop)).toBeGreaterThan(0)
    const words = (await page.locator('.lit-word').first().boundingBox())!
    const slip = (await scroller.boundingBox())!
    expect(words.y).toBeGreaterThanOrEqual(slip.y)
    expect(words.y + words.height).toBeLessThanOrEqual(slip.y + slip.height)
  })

  it('offers the pictorial for a line only where it shows something', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const line = page.locator('.line-stop')
    await line.focus()
    await page.keyboard.press('Enter')
    await page.locator('.why-note .close').click()
    await page.waitForSelector('.why-note', { state: 'detached' })
    await line.focus()
    // Whether it is offered for each line of a kind, going round until the first comes again.
    const offers = async (kind: RegExp) => {
      const seen = new Set<string>()
      const found: boolean[] = []
      await line.focus()
      for (;;) {
        const label = (await line.getAttribute('aria-label'))!
        if (seen.has(label)) return found
        seen.add(label)
        if (kind.test(label)) {
          await page.keyboard.press('Enter')
          await page.waitForFunction(
            (now) => now.endsWith(document.querySelector('.why-note p')?.textContent ?? 'nothing yet'),
            label,
          )
          found.push((await page.locator('.why-note').textContent())!.includes('Show it on the pictorial'))
        }
        await page.keyboard.press('ArrowRight')
        await page.waitForFunction(
          (before) => document.querySelector('.line-stop')?.getAttribute('aria-label') !== before,
          label,
        )
      }
    }
    // A middle line shows its plane, an edge itself.
    expect(await offers(/Middle line/)).toContain(true)
    expect(new Set(await offers(/edge|Middle line/))).toEqual(new Set([true]))
    // Where a section is cut is no part of the solid.
    await writeBrief(page, readFileSync(join(import.meta.dirname, '../../examples/cover.brief'), 'utf8'))
    expect(new Set(await offers(/Cutting plane/))).toEqual(new Set([false]))
  })

  it('leaves the other papers free', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.getByRole('button', { name: 'New', exact: true }).click()
    await page.getByRole('button', { name: 'plate', exact: true }).click()
    await page.getByRole('button', { name: 'Write the first lines' }).click()
    await page.waitForSelector('.papers span')
    // A drawing that comes meanwhile puts the note away.
    const gaps = async () => {
      await page.locator('.line-stop').focus()
      await page.keyboard.press('Enter')
      return page.evaluate(() => {
        const note = document.querySelector('.why-note')?.getBoundingClientRect()
        const below = ['.papers', '.scale-rule'].map((s) => document.querySelector(s)!.getBoundingClientRect().top)
        return note && below.map((top) => top - note.bottom >= 0)
      })
    }
    await expect.poll(gaps, { timeout: 60_000 }).toEqual([true, true])
  })
})

describe('the page for fingers and at 200 %', () => {
  it('gives a finger 24 px of each button (WCAG 2.2, 2.5.8)', { timeout: FIRST }, async () => {
    const context = await desk.browser.newContext({
      viewport: { width: 1024, height: 768 },
      hasTouch: true,
      isMobile: true,
    })
    page = await context.newPage()
    await page.goto(desk.served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    const small = await page.$$eval('button', (all) =>
      all
        .map((b) => ({ words: b.textContent, box: b.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && Math.min(box.width, box.height) < 24)
        .map(({ words }) => words),
    )
    expect(small).toEqual([])
    await expect.poll(() => overprinted()).toEqual([])
  })

  it.each([
    [640, 400],
    [390, 844],
    [834, 1112],
  ])('prints no button over a signature at %i × %i', { timeout: FIRST }, async (width, height) => {
    page = await desk.browser.newPage({ viewport: { width, height }, hasTouch: true })
    await page.goto(desk.served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    await page.waitForSelector('.stage .signature', { state: 'attached' })
    await expect.poll(() => overprinted()).toEqual([])
  })

  /** Desks of the routing slip whose buttons reach into their signature. */
  const overprinted = () =>
    page.$$eval('.stage', (all) =>
      all
        .filter((stage) => {
          const line = stage.querySelector('.signature')?.getBoundingClientRect()
          const body = stage.querySelector('.stage-body')?.getBoundingClientRect()
          // A signature that is read on the sheet only takes no room here.
          return line && body && line.width > 1 && body.bottom > line.top
        })
        .map((stage) => stage.textContent),
    )
})

describe('Enter in the brief', () => {
  const typed = `part      Trial
units     inch
practice  ASME
plate     6 × 4 × 1/2
`

  it('indents where the statement goes on, and goes back to the margin', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await writeBrief(page, typed)
    await page.keyboard.press('Control+End')
    await page.keyboard.type('hole top: 2x .281 dia thru')
    // The list of words that may follow takes Enter while it is open.
    await page.keyboard.press('Escape')
    await page.keyboard.press('Enter')
    await page.keyboard.type('2 across 4.50 apart, centred; 1.00 from front')
    await page.keyboard.press('Escape')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
    await page.keyboard.type('note One')
    await page.keyboard.press('Escape')
    await page.keyboard.press('Enter')
    await page.keyboard.type('note Two')
    await expect
      .poll(() => briefText(page))
      .toBe(`${typed}hole top: 2x .281 dia thru
          2 across 4.50 apart, centred; 1.00 from front
note One
note Two`)
    // Within a statement what follows stays its own.
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('End')
    for (const _ of 'One') await page.keyboard.press('ArrowLeft')
    await page.keyboard.press('Enter')
    await expect.poll(() => briefText(page)).toMatch(/^note \n {10}One\nnote Two$/m)
    // Escape, then Tab: out of the brief.
    await page.keyboard.press('Escape')
    await page.keyboard.press('Tab')
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('.cm-editor') === null)).toBe(true)
  })
})
