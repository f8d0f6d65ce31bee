import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { axeFindings, openDesk, size } from './desk.ts'
import { FIRST, openPage } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

describe('the bench', () => {
  it('lifts the pictorial off, cuts it and says why a line is there', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.getByRole('button', { name: 'Lift off' }).click()
    const canvas = page.locator('.turning canvas')
    await canvas.waitFor()
    await page.waitForSelector('.turning[data-state="at rest"]', { timeout: FIRST })
    await expect.poll(() => page.locator('.turning [role=alert]').count()).toBe(0)
    const picture = () => canvas.screenshot().then((b) => b.toString('base64'))
    await expect.poll(async () => (await picture()).length, { timeout: 120_000 }).toBeGreaterThan(4000)
    const whole = await picture()
    await canvas.focus()
    await page.keyboard.press('ArrowRight')
    await expect.poll(picture).not.toBe(whole)
    const turned = await picture()
    await page.getByRole('slider', { name: 'Cutting plane' }).focus()
    await page.keyboard.press('PageUp')
    await page.waitForSelector('.turning[data-state="at rest"] .hatching', { state: 'attached', timeout: 120_000 })
    await expect.poll(picture).not.toBe(turned)
    const cut = await picture()
    await size(page, '3.50').focus()
    await page.keyboard.press('Enter')
    await page.locator('.size-field input').fill('2.75')
    await page.keyboard.press('Enter')
    await size(page, '2.75').waitFor({ state: 'attached', timeout: 120_000 })
    await expect.poll(picture, { timeout: 120_000 }).not.toBe(cut)
    await expect.poll(() => page.locator('.turning [role=alert]').count()).toBe(0)
  })

  it('has nothing serious against it for those who cannot see or point', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    expect(await axeFindings(page)).toEqual([])
    await page.locator('.cm-line', { hasText: 'round' }).first().click()
    await page.keyboard.press('Home')
    await page.keyboard.press('Delete')
    await page.waitForSelector('.margin li', { timeout: 120_000 })
    await page.locator('.margin li button').first().click()
    expect(await axeFindings(page)).toEqual([])
    await page.locator('.margin .mend').first().click()
    await page.waitForSelector('main[aria-busy=false]')
    await page.getByRole('button', { name: 'Lift off' }).click()
    await page.waitForSelector('.turning[data-state="at rest"]', { timeout: 120_000 })
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('slider', { name: 'Cutting plane' }).focus()
    await page.keyboard.press('PageUp')
    await page.waitForSelector('.turning[data-state="at rest"] .hatching', { state: 'attached', timeout: 120_000 })
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Put back', exact: true }).click()
    await page.keyboard.press('Control+o')
    expect(await axeFindings(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Fold' }).click()
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Brief', exact: true }).click()
    await page.getByRole('button', { name: 'New', exact: true }).click()
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'angle', exact: true }).click()
    expect(await axeFindings(page)).toEqual([])
  })

  it('has nothing serious against it with a check print, two sheets, many marks, and slips that ask', {
    timeout: 2 * FIRST,
  }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.getByRole('button', { name: 'Check print' }).click()
    await page.waitForSelector('.sheet .pencil-yellow', { state: 'attached', timeout: 120_000 })
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Check print' }).click()
    await page.getByRole('button', { name: 'Sign' }).click()
    await page.locator('.asking input').first().waitFor()
    expect(await axeFindings(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Measure the screen' }).click()
    expect(await axeFindings(page)).toEqual([])
    await page.keyboard.press('Escape')

    await page.keyboard.press('Control+o')
    await page.locator('dialog .names button').first().click()
    await page.waitForSelector('main[aria-busy=false] .sheet .ink', { state: 'attached', timeout: 120_000 })
    await page.keyboard.press('Control+o')
    await page.getByRole('button', { name: 'Lay beside' }).first().click()
    await page.locator('.sheet-frame').nth(1).locator('.ink').first().waitFor({ state: 'attached' })
    // That is there to be looked at: nothing on it says that it can be lifted.
    await expect.poll(() => page.getByRole('button', { name: 'Lift off' }).count()).toBe(1)
    await page.getByRole('button', { name: 'Put back', exact: true }).waitFor()
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Put back', exact: true }).click()

    await page.getByRole('button', { name: 'New', exact: true }).click()
    await page.getByRole('button', { name: /nothing yet/ }).click()
    await page.waitForSelector('.blank-paper', { timeout: 60_000 })
    await page.waitForSelector('.margin li', { timeout: 60_000 })
    expect(await axeFindings(page)).toEqual([])
    await page.locator('.margin .mark').first().click()
    await page.locator('.margin .opened').waitFor()
    expect(await axeFindings(page)).toEqual([])
  })

  it('moves nothing by itself for those who asked for that', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const moving = () =>
      page.$$eval('*', (all) =>
        all
          .filter((e) => {
            const { transitionDuration, animationName } = getComputedStyle(e)
            return animationName !== 'none' || transitionDuration.split(', ').some((d) => Number.parseFloat(d) > 0)
          })
          .map((e) => e.className),
      )
    // The slip slides when it is folded away.
    await expect.poll(() => moving()).toContain('slip-body')
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await expect.poll(async () => (await moving()).filter((name) => !/^cm-/.test(String(name)))).toEqual([])
  })
})
