import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { axeFindings, goToEnd, openDesk, size } from './desk.ts'
import { FIRST, openPage, waitForLettering } from './open-page.ts'

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
    await page.waitForSelector('.turning [role=status]', { state: 'detached', timeout: FIRST })
    expect(await page.locator('.turning [role=alert]').count()).toBe(0)
    const picture = () => canvas.screenshot().then((b) => b.toString('base64'))
    await expect.poll(async () => (await picture()).length, { timeout: 120_000 }).toBeGreaterThan(4000)
    const whole = await picture()
    await canvas.focus()
    await page.keyboard.press('ArrowRight')
    await expect.poll(picture).not.toBe(whole)
    const turned = await picture()
    await page.getByLabel('Cut open').selectOption('1')
    await expect.poll(picture).not.toBe(turned)
    const cut = await picture()
    await size(page, '3.50').focus()
    await page.keyboard.press('Enter')
    await page.locator('.size-field input').fill('2.75')
    await page.keyboard.press('Enter')
    await size(page, '2.75').waitFor({ state: 'attached', timeout: 120_000 })
    await expect.poll(picture, { timeout: 120_000 }).not.toBe(cut)
    expect(await page.locator('.turning [role=alert]').count()).toBe(0)
  })

  it('comes back when its worker is killed while it draws', { timeout: 2 * FIRST }, async () => {
    const context = await desk.browser.newContext({ viewport: { width: 1280, height: 800 } })
    page = await context.newPage()
    await page.addInitScript(() => {
      const Whole = globalThis.Worker
      const made: Worker[] = []
      Object.assign(globalThis, {
        workersMade: made,
        Worker: class extends Whole {
          constructor(...given: ConstructorParameters<typeof Whole>) {
            super(...given)
            made.push(this)
          }
        },
      })
    })
    await page.goto(desk.served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    await goToEnd(page)
    await page.keyboard.type('\nnote      After the fall')
    await page.evaluate(() => (globalThis as unknown as { workersMade: Worker[] }).workersMade.at(-1)!.terminate())
    await page.keyboard.type('.')
    await waitForLettering(page, 'AFTER THE FALL.').catch(() => waitForLettering(page, 'AFTER THE FALL.'))
    expect(
      await page.evaluate(() => (globalThis as unknown as { workersMade: Worker[] }).workersMade.length),
    ).toBeGreaterThan(1)
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
    await page.locator('.turning canvas').waitFor()
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Put back' }).click()
    await page.keyboard.press('Control+o')
    expect(await axeFindings(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Fold away' }).click()
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Brief', exact: true }).click()
    await page.getByRole('button', { name: 'New', exact: true }).click()
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'angle', exact: true }).click()
    expect(await axeFindings(page)).toEqual([])
  })
})
