import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { axeFindings, openDesk, writeBrief } from './desk.ts'
import { briefText, FIRST, openPage } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

const lift = async () => {
  await page.getByRole('button', { name: 'Lift off' }).click()
  await atRest()
}
const atRest = () => page.waitForSelector('.turning[data-state="at rest"]', { timeout: FIRST })
const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')
const says = () => page.locator('.turning .says').textContent()
const slider = () => page.getByRole('slider', { name: 'Cutting plane' })
const value = () => slider().getAttribute('aria-valuetext')
/** Widths of what lies in the slip's drawing, in px of the screen. */
const boxOf = async (selector: string) => (await page.locator(selector).first().boundingBox())!

describe('the pictorial in the hand', () => {
  it('is taken up from its place on the sheet and drawn as the sheet draws it', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const onSheet = await page.locator('.sheet [data-view="pictorial"].visible').count()
    const place = await boxOf('.sheet [data-view="pictorial"]')
    await lift()
    const slip = await boxOf('.turning')
    expect(slip.x).toBeLessThan(place.x)
    expect(slip.x + slip.width).toBeGreaterThan(place.x)
    // The engine's own lines, one for one.
    await expect.poll(() => page.locator('.turning .seen .ink').count()).toBe(onSheet)
    await expect.poll(() => says()).toBe('As on the sheet. Not cut; A–A lies at the front.')
  })

  it('is turned, cut and picked from the keyboard, says so, and gives the keyboard back', {
    timeout: FIRST,
  }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.locator('.scale-rule button').first().focus()
    await page.keyboard.press('l')
    await atRest()
    await expect.poll(() => focused()).toMatch(/^The part in the hand/)
    for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowRight')
    await expect.poll(says).toBe('Turned 20° right. Not cut; A–A lies at the front.')
    await page.keyboard.press('Tab')
    await expect.poll(() => focused()).toBe('Cutting plane A–A, from the front')
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => value()).toBe('Cut .05 in behind the front')
    await page.keyboard.press('PageUp')
    await expect
      .poll(() => value())
      .toMatch(/^Cut through one of the 2 slots \(line \d+\), [.\d]+ in behind the front$/)
    await page.waitForSelector('.turning[data-state="at rest"] .hatching', { state: 'attached', timeout: 60_000 })
    await expect.poll(says).toMatch(/^Turned 20° right\. Cut through one of the 2 slots/)
    await page.keyboard.press('Home')
    await expect.poll(() => value()).toBe('Not cut; A–A lies at the front')
    await page.keyboard.press('Enter')
    await expect.poll(() => focused()).toBe('Cutting plane A–A, from the right')
    await atRest()
    await page.keyboard.press('Tab')
    const first = await focused()
    expect(first).toMatch(/edge/)
    await page.keyboard.press('ArrowRight')
    await expect.poll(focused).not.toBe(first)
    const edge = await focused()
    await page.keyboard.press('Enter')
    await expect.poll(() => page.locator('.turning .why').textContent()).toBe(edge)
    await expect.poll(() => page.locator('.turning .seen .lit').count()).toBeGreaterThan(0)
    await expect.poll(() => page.locator('.sheet .lit').count()).toBeGreaterThan(0)
    await page.keyboard.press('Escape')
    await page.waitForSelector('.turning', { state: 'detached' })
    await expect
      .poll(() =>
        page
          .locator('.scale-rule button')
          .first()
          .evaluate((b) => b === document.activeElement),
      )
      .toBe(true)
  })

  it('is cut by drawing A–A into it, and laid anew by a touch of it', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await lift()
    const at = async () => {
      const box = await boxOf('.cutting-handle text')
      return [box.x + box.width / 2, box.y + box.height / 2] as const
    }
    const [x, y] = await at()
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x + 20, y - 10, { steps: 4 })
    await page.mouse.move(x + 45, y - 26, { steps: 4 })
    // The cut follows before the hand lets go.
    await expect.poll(() => value()).toMatch(/^Cut /)
    await page.mouse.up()
    await page.waitForSelector('.turning[data-state="at rest"] .hatching', { state: 'attached', timeout: 60_000 })
    await expect.poll(() => page.locator('.turning .seen .cut').count()).toBeGreaterThan(3)
    const [u, v] = await at()
    await page.mouse.click(u, v)
    await expect.poll(() => slider().getAttribute('aria-label')).toBe('Cutting plane A–A, from the right')
    await expect.poll(() => value()).toBe('Not cut; A–A lies at the right')
    expect(await axeFindings(page)).toEqual([])
  })

  it('lights what is touched on it', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await lift()
    const stage = await boxOf('.stage-of-slip')
    const ink = await page.locator('.turning .seen .ink').evaluateAll((all) =>
      all.map((line) => {
        const path = line as unknown as SVGPathElement
        const p = path.getPointAtLength(path.getTotalLength() / 2).matrixTransform(path.getScreenCTM()!)
        return [p.x, p.y] as const
      }),
    )
    const [x, y] = ink[0]!
    expect(x).toBeGreaterThan(stage.x)
    await page.mouse.click(x, y)
    await page.locator('.turning .why', { hasText: 'edge' }).waitFor()
    await expect.poll(() => page.locator('.turning .seen .lit').count()).toBeGreaterThan(0)
  })

  it('shows the middle plane that a middle line stands for, and the axes of a centre line', {
    timeout: FIRST,
  }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const stop = page.locator('.line-stop')
    const show = async (words: RegExp) => {
      await stop.focus()
      for (let i = 0; i < 80 && !words.test((await stop.getAttribute('aria-label')) ?? ''); i++)
        await page.keyboard.press('ArrowRight')
      await expect.poll(() => stop.getAttribute('aria-label')).toMatch(words)
      await page.keyboard.press('Enter')
      await page.getByRole('button', { name: 'Show it on the pictorial' }).click()
      await atRest()
      const count = await page.locator('.turning .inner').count()
      await page.keyboard.press('Escape')
      await page.waitForSelector('.turning', { state: 'detached' })
      return count
    }
    // A plane is shown by its four sides, four holes by their four axes.
    expect(await show(/Middle line/)).toBe(4)
    expect(await show(/Centre line of the 4 holes ⌀\.281 \(line \d+\)\.$/)).toBe(4)
  })

  it('goes back without a motion where none is wanted, and follows the brief until then', {
    timeout: FIRST,
  }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await lift()
    await page.locator('.turning canvas').focus()
    await page.keyboard.press('ArrowRight')
    await atRest()
    const lines = await page.locator('.turning .seen .ink').count()
    await writeBrief(page, (await briefText(page)).replace(/^round .*\n(?: .*\n)*/m, ''))
    await expect.poll(() => page.locator('.turning .seen .ink').count(), { timeout: 60_000 }).not.toBe(lines)
    await atRest()
    await expect.poll(() => says()).toMatch(/^Turned 5° right/)
    await page.getByRole('button', { name: 'As on the sheet' }).click()
    await expect.poll(says).toMatch(/^As on the sheet/)
    const running = await page.evaluate(() => {
      const back = [...document.querySelectorAll<HTMLButtonElement>('.turning button')].at(-1)!
      back.click()
      return document.getAnimations().length
    })
    expect(running).toBe(0)
    await page.waitForSelector('.turning', { state: 'detached' })
  })
})
