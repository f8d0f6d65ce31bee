import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { saysNothing } from '../../src/app/page/shelf/says-nothing.ts'
import { inUnit, refusalOf } from '../../src/app/page/starter/typed-size.ts'
import { openDesk } from './desk.ts'
import { briefText, FIRST, openPage, waitForLettering } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

const plate = async () => {
  page = await openPage(desk.browser, desk.served.address)
  await page.getByRole('button', { name: 'New', exact: true }).click()
  await page.getByRole('button', { name: 'plate', exact: true }).click()
}

describe('sizes written on a sketch', () => {
  it.each(['abc', '0', '-3', '1.25.0', '4 x', '2 # wide'])('refuses %s', (typed) => {
    expect(refusalOf(typed, 'inch')).toMatch(/Expected: /)
  })

  it.each(['4', '.25', '1-3/8', '25 mm', '.500 ±.002', '?', ''])('takes %s', (typed) => {
    expect(refusalOf(typed, 'inch')).toBeUndefined()
  })

  // The international inch is 25.4 mm exactly (agreement of 1959).
  it.each([
    ['5.5', 'inch', '139.7'],
    ['1-3/8', 'inch', '34.925'],
    ['8', 'mm', '.315'],
    ['25.4', 'mm', '1'],
    ['1 in', 'inch', '1 in'],
    ['.500 ±.002', 'inch', '.500 ±.002 in'],
    ['2?', 'inch', '50.8?'],
    ['?', 'inch', '?'],
    ['abc', 'inch', 'abc'],
  ] as const)('turns %s in %s into %s', (text, unit, turned) => {
    expect(inUnit({ text, unit }, unit === 'inch' ? 'mm' : 'inch')).toBe(turned)
    expect(inUnit({ text, unit }, unit)).toBe(text)
  })

  it('are refused at their field, by Enter and by the button', { timeout: FIRST }, async () => {
    await plate()
    await page.getByLabel('width', { exact: true }).fill('abc')
    await page.keyboard.press('Enter')
    await page.locator('.refusal', { hasText: 'abc' }).waitFor()
    await page.getByLabel('width', { exact: true }).fill('2.00')
    await page.locator('.refusal').waitFor({ state: 'detached' })
    await page.getByLabel('thickness', { exact: true }).fill('0')
    await page.getByRole('button', { name: 'Write the first lines' }).click()
    await page.locator('.refusal').waitFor()
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).name)).toBe('thickness')
    await page.getByLabel('thickness', { exact: true }).fill('.25')
    await page.getByLabel('Name of the part').fill('Trial plate')
    await page.getByRole('button', { name: 'Write the first lines' }).click()
    await waitForLettering(page, 'TRIAL PLATE')
  })

  it.each([
    [640, 400],
    [390, 844],
  ])('leave in sight what is asked, at %i × %i', { timeout: FIRST }, async (width, height) => {
    page = await openPage(desk.browser, desk.served.address, width, height)
    await page.getByRole('button', { name: 'Brief', exact: true }).click()
    await page.getByRole('button', { name: 'New', exact: true }).click()
    const heading = page.getByRole('heading', { level: 1 })
    const inSight = async () => {
      const box = (await heading.boundingBox())!
      expect(box.y).toBeGreaterThanOrEqual(0)
      // Two lines of it at most, not a word a line.
      expect(box.height).toBeLessThan(70)
    }
    await page.waitForFunction(() => document.activeElement?.matches('[data-stock]'))
    await inSight()
    await page.getByRole('button', { name: 'angle', exact: true }).click()
    await page.waitForFunction(() => document.activeElement?.matches('.large-sketch input'))
    await inSight()
  })

  it('stay the same size when the unit changes', { timeout: FIRST }, async () => {
    await plate()
    await page.getByLabel('length', { exact: true }).fill('5.5')
    await page.getByLabel('mm', { exact: true }).check()
    await expect.poll(() => page.getByLabel('length', { exact: true }).inputValue()).toBe('139.7')
    await page.getByLabel('inch', { exact: true }).check()
    await expect.poll(() => page.getByLabel('length', { exact: true }).inputValue()).toBe('5.5')
    await page.getByLabel('mm', { exact: true }).check()
    await page.getByRole('button', { name: 'Write the first lines' }).click()
    await expect.poll(() => briefText(page)).toMatch(/^plate {5}139\.7 × 60 × 8$/m)
  })

  it('leave no paper behind that says nothing', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.getByRole('button', { name: 'New', exact: true }).click()
    await page.getByRole('button', { name: /nothing yet/ }).click()
    await page.getByRole('button', { name: 'Choose what the shop begins from' }).first().click({ timeout: 60_000 })
    await page.getByRole('button', { name: 'plate', exact: true }).click()
    await page.getByLabel('Name of the part').fill('Trial plate')
    await page.getByRole('button', { name: 'Write the first lines' }).click()
    await waitForLettering(page, 'TRIAL PLATE')
    await expect.poll(() => page.locator('.papers li').count()).toBe(1)
    await page.keyboard.press('Control+o')
    await page.locator('dialog', { hasText: 'Trial plate' }).waitFor()
    await expect
      .poll(() => page.locator('dialog').filter({ hasText: 'Trial plate' }).textContent())
      .not.toContain('Untitled')
  })
})

describe('a brief that says nothing', () => {
  const shelf = { kind: 'shelf' } as const
  it('has no more than units and practice', () => {
    expect(saysNothing({ text: 'part      \nunits     inch\npractice  ASME\n\n', home: shelf })).toBe(true)
    expect(saysNothing({ text: 'part      Untitled\nunits     mm\n', home: shelf })).toBe(true)
  })
  it.each(['part Bracket\nunits mm\n', 'part Untitled\nplate 1 x 1 x ?\n', 'part\n# to do\n'])('is not %j', (text) => {
    expect(saysNothing({ text, home: shelf })).toBe(false)
  })
  it('is not one that has been saved', () => {
    expect(saysNothing({ text: 'part\n', home: shelf, saved: 'part\n' })).toBe(false)
  })
})
