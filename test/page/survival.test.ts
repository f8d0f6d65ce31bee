import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { axeFindings, goToEnd, openDesk } from './desk.ts'
import { briefText, FIRST, waitForLettering } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

describe('when something falls', () => {
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

  it('lays out what was written when a fault of the program takes the bench down', { timeout: 2 * FIRST }, async () => {
    const context = await desk.browser.newContext({ acceptDownloads: true })
    page = await context.newPage()
    await page.goto(desk.served.address)
    await page.waitForSelector('.cm-line', { timeout: FIRST })
    await goToEnd(page)
    await page.keyboard.type('\nnote      Before the fault')
    // A part of the browser that the sheet is drawn with gives out.
    await page.addInitScript(() => {
      globalThis.ResizeObserver = class {
        constructor() {
          throw new Error('no observer')
        }
      } as unknown as typeof ResizeObserver
    })
    await page.reload()
    await page.locator('.fallen', { hasText: 'no observer' }).waitFor({ timeout: FIRST })
    const taken = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Vent motor bracket' }).click()
    const file = await taken
    expect(file.suggestedFilename()).toBe('Vent-motor-bracket.brief')
    expect(readFileSync(await file.path(), 'utf8')).toContain('note      Before the fault')
    expect(await axeFindings(page)).toEqual([])
  })
})
