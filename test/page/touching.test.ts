import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { openDesk, size } from './desk.ts'
import { briefText, FIRST, openPage } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

describe('touching the sheet', () => {
  it('lights a hole in all views and in the brief, both ways', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const holes = page.locator('.hit[aria-label*="hole 1"], .hit[aria-label*="THRU"]').first()
    const box = (await holes.boundingBox())!
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await page.waitForSelector('.lit-word')
    const views = () =>
      page.$$eval('.ink.lit, .ink.beside', (all) => [...new Set(all.map((e) => (e as SVGElement).dataset.view))].sort())
    await expect.poll(() => views()).toEqual(['front', 'pictorial', 'right', 'top'])
    await expect.poll(() => page.locator('.lit-statement').first().textContent()).toMatch(/^holes/)
    await page.mouse.move(2, 2)
    await page.locator('.cm-line', { hasText: '4X' }).first().click()
    await page.waitForSelector('.ink.lit', { state: 'attached' })
    await expect.poll(() => views()).toEqual(['front', 'pictorial', 'right', 'top'])
  })

  it('changes a size where it stands, refuses what is none, and takes it back', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const before = await briefText(page)
    await size(page, '3.50').focus()
    await page.keyboard.press('Enter')
    const field = page.locator('.size-field input')
    await expect.poll(() => field.inputValue()).toBe('3.50')
    await field.fill('a lot')
    await page.keyboard.press('Enter')
    await expect.poll(() => page.locator('.size-field [role=alert]').textContent()).toContain('Expected: a size')
    await expect.poll(() => briefText(page)).toBe(before)
    await field.fill('3-5/8')
    await page.keyboard.press('Enter')
    await page.waitForSelector('.hit[aria-label*="3-5/8"], .hit[aria-label*="35/8"], .hit[aria-label*="5/8"]', {
      state: 'attached',
      timeout: 120_000,
    })
    await expect.poll(() => briefText(page)).toBe(before.replace('upright 3.50', 'upright 3-5/8'))
    await page.locator('.scale-rule button').first().focus()
    await page.keyboard.press('Control+z')
    await size(page, '3.50').waitFor({ state: 'attached', timeout: 120_000 })
    await expect.poll(() => briefText(page)).toBe(before)
  })

  it('writes the place of a dragged size and of a dragged view into the brief', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const drag = async (x: number, y: number, dx: number, dy: number) => {
      await page.mouse.move(x, y)
      await page.mouse.down()
      await page.mouse.move(x + dx / 2, y + dy / 2)
      await page.mouse.move(x + dx, y + dy)
      await page.mouse.up()
    }
    const box = (await size(page, '2.25').boundingBox())!
    await drag(box.x + box.width / 2, box.y + box.height / 2, 0, 24)
    await page.waitForFunction(() => document.querySelector('.cm-content')?.textContent?.includes('place '))
    // Nothing is drawn round the figures for a hand that points.
    await expect
      .poll(() => page.$$eval('.hit:focus', (all) => all.map((e) => getComputedStyle(e).outlineStyle)))
      .toEqual(['none'])
    await expect.poll(() => briefText(page)).toMatch(/^place {5}2\.25 in right view, row \d, below$/m)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    const outline = await page.$$eval('.ink.visible', (all) =>
      all
        .filter((e) => (e as SVGElement).dataset.view === 'right')
        .map((e) => e.getBoundingClientRect())
        .filter((r) => r.height > 60 && r.width < 2)
        .map((r) => [r.x, r.y + r.height / 3] as const),
    )
    const [x, y] = outline[0]!
    await drag(x, y, 40, 0)
    await page.waitForFunction(() =>
      /right view \d+ across/.test(document.querySelector('.cm-content')?.textContent ?? ''),
    )
    await expect.poll(() => briefText(page)).toMatch(/^place {5}right view \d+ across, -?\d+ up$/m)
    await expect.poll(() => page.locator('.margin li.must-change').count()).toBe(0)
  })

  it('says when a view put elsewhere by hand changes the format', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    const stop = page.locator('.line-stop')
    await stop.focus()
    for (let i = 0; i < 80 && !/front view/.test((await stop.getAttribute('aria-label')) ?? ''); i++)
      await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Shift+ArrowDown')
    await page.waitForFunction(() => document.querySelector('.cm-content')?.textContent?.includes('front view'))
    await page.locator('.routing', { hasText: 'A, 1:2' }).waitFor({ timeout: 120_000 })
    const notice = await page.locator('.notice').textContent()
    expect(notice).toMatch(/^Written into the brief: place front view 0 across, -\d+ up: so not all has room on B, 1:1/)
    expect(notice).toContain('the sheet is A, 1:2 now')
  })

  it('writes the places of a size and of a view by keys alone', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    await size(page, '2.25').focus()
    await page.keyboard.press('Shift+ArrowDown')
    await expect.poll(() => briefText(page)).toMatch(/^place {5}2\.25 in right view, row \d, (below|above)$/m)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    // The keyboard is still at the size, wherever it went.
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
      .toMatch(/^Size 2\.25/)
    await page.keyboard.press('v')
    await expect.poll(() => briefText(page), { timeout: 120_000 }).toMatch(/^place {5}2\.25 in top view$/m)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    await page.locator('.line-stop').focus()
    await page.keyboard.press('Shift+ArrowRight')
    await expect.poll(() => briefText(page)).toMatch(/^place {5}\w+ view 5 across, 0 up$/m)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    await expect.poll(() => page.locator('.margin li.must-change').count()).toBe(0)
  })

  it('says by keys alone why a line is there', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const line = page.locator('.line-stop')
    await line.focus()
    const first = await line.getAttribute('aria-label')
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => line.getAttribute('aria-label')).not.toBe(first)
    await page.keyboard.press('Enter')
    await expect
      .poll(async () => [await line.getAttribute('aria-label'), await page.locator('.why-note p').textContent()])
      .toSatisfy(([label, why]) => label.includes(why))
    await page.keyboard.press('Escape')
    await page.waitForSelector('.why-note', { state: 'detached' })
  })

  it('can be read and written on by fingers', { timeout: FIRST }, async () => {
    const context = await desk.browser.newContext({ viewport: { width: 1180, height: 820 }, hasTouch: true })
    page = await context.newPage()
    await page.goto(desk.served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    const box = (await size(page, '3.50').boundingBox())!
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2)
    const field = page.locator('.size-field input')
    await expect.poll(() => field.inputValue()).toBe('3.50')
    await field.fill('3.25')
    await page.keyboard.press('Enter')
    await size(page, '3.25').waitFor({ state: 'attached', timeout: 120_000 })
    await page.getByRole('button', { name: 'Undo' }).tap()
    await size(page, '3.50').waitFor({ state: 'attached', timeout: 120_000 })
    await page.getByRole('button', { name: 'Redo' }).tap()
    await size(page, '3.25').waitFor({ state: 'attached', timeout: 120_000 })
    const session = await context.newCDPSession(page)
    const width = () => page.$eval('.sheet .paper', (p) => p.getBoundingClientRect().width)
    const before = await width()
    const fingers = (type: 'touchStart' | 'touchMove' | 'touchEnd', apart: number) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints:
          type === 'touchEnd'
            ? []
            : [
                { x: 760 - apart, y: 620, id: 1 },
                { x: 760 + apart, y: 620, id: 2 },
              ],
      })
    await fingers('touchStart', 40)
    for (const apart of [50, 60, 70, 80]) await fingers('touchMove', apart)
    await fingers('touchEnd', 0)
    await expect.poll(width).toBeGreaterThan(before * 1.7)
    await expect.poll(() => width()).toBeLessThan(before * 2.3)
  })
})
