import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { axeFindings, openDesk } from './desk.ts'
import { briefText, FIRST, lettering, openPage, waitForLettering } from './open-page.ts'

// The public translator round-robin part "as1" (source: test/data/README.md).
const AS1 = join(import.meta.dirname, '../data/as1-oc-214.stp')

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

/** Opens a model from the choice of what the shop begins from, through the browser's own choice of a file. */
async function openModel(file: string): Promise<void> {
  page = await openPage(desk.browser, desk.served.address)
  await page.evaluate(() => {
    delete (window as { showOpenFilePicker?: unknown }).showOpenFilePicker
  })
  await page.getByRole('button', { name: 'New', exact: true }).click()
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'a solid model' }).click()
  await (await chooser).setFiles(file)
  await page.getByRole('region', { name: 'Model' }).waitFor()
}

/** All that the status has said, from now on. */
const listen = () =>
  page.evaluate(() => {
    const said: string[] = []
    ;(window as unknown as { said: string[] }).said = said
    const look = () => {
      const text = document.querySelector('.model-says [role=status]')?.textContent
      if (text && said.at(-1) !== text) said.push(text)
    }
    look()
    new MutationObserver(look).observe(document.body, { subtree: true, childList: true, characterData: true })
  })
const said = () => page.evaluate(() => (window as unknown as { said: string[] }).said)
const status = () => page.getByRole('region', { name: 'Model' }).getByRole('status')
const done = () =>
  page.waitForFunction(() => document.querySelector('main')?.getAttribute('aria-busy') === 'false', null, {
    timeout: FIRST,
  })
/** A sheet stands: the status speaks of it, and no longer of the work. */
const drawn = () =>
  page.waitForFunction(
    () => document.querySelector('.model-says [role=status]')?.textContent?.includes('measured') === true,
    null,
    { timeout: FIRST },
  )

describe('a solid model on the page', () => {
  it('gives the sheet that the command line gives, whole and a part at a time', { timeout: 3 * FIRST }, async () => {
    const kernel = await openKernel()
    const text = readFileSync(AS1, 'utf8')
    const words = (solid?: string) => {
      const { sheet } = compileSolid(text, kernel, solid === undefined ? {} : { solid })
      return sheet!.items.flatMap((item) => (item.item === 'text' ? [item.text] : [])).sort()
    }
    await openModel(AS1)
    await expect.poll(() => page.evaluate(() => crossOriginIsolated)).toBe(true)
    await drawn()
    await done()
    await expect.poll(async () => (await lettering(page)).sort()).toEqual(words())
    await expect.poll(async () => (await lettering(page)).join(' ')).toContain('PRELIMINARY')
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('radio', { name: 'l-bracket' }).check()
    await waitForLettering(page, 'Designation', false)
    await done()
    await expect.poll(async () => (await lettering(page)).sort()).toEqual(words('l-bracket'))
    // its pictorial is lifted too, and its sheet shown larger
    const width = () => page.locator('.sheet').evaluate((svg) => Number(svg.getAttribute('viewBox')!.split(' ')[2]))
    const before = await width()
    await page.getByRole('button', { name: 'Larger' }).click()
    await expect.poll(() => width()).toBeLessThan(before)
    await page.getByRole('button', { name: 'Whole sheet' }).click()
    await page.getByRole('button', { name: 'Lift off' }).click()
    await page.waitForSelector('.turning[data-state="at rest"] .seen .ink', { state: 'attached', timeout: FIRST })
    await expect.poll(() => page.locator('.edge-stop').getAttribute('aria-label')).toMatch(/^(The|An) edge .*face/)
    await page.keyboard.press('Escape')
    await page.waitForSelector('.turning', { state: 'detached' })
    const file = page.waitForEvent('download')
    await page.getByRole('button', { name: 'SVG' }).click()
    expect((await file).suggestedFilename()).toBe('as1-oc-214-l-bracket.svg')
    await page.locator('.notice', { hasText: 'as1-oc-214-l-bracket.svg written, preliminary' }).waitFor()
    // a brief goes on from there
    await page.getByRole('button', { name: 'Begin a brief from it' }).click()
    await page.waitForSelector('.cm-line', { timeout: FIRST })
    await expect.poll(() => briefText(page)).toContain('Begun from as1-oc-214.stp')
  })

  it('says how far it is, stops at once and draws again', { timeout: 3 * FIRST }, async () => {
    await openModel(AS1)
    await listen()
    await drawn()
    // A machine that draws the whole before the hand is at the button is asked again.
    for (let tries = 0; tries < 8 && (await status().textContent()) !== 'Stopped'; tries++) {
      await page.getByRole('radio', { name: 'plate' }).check()
      await drawn()
      await page.getByRole('radio', { name: 'the whole' }).check()
      const stop = page.getByRole('button', { name: 'Stop' })
      await stop.click({ timeout: 2000 }).catch(() => undefined)
      await stop.waitFor({ state: 'detached', timeout: FIRST })
    }
    await expect.poll(() => status().textContent()).toBe('Stopped')
    await page.getByRole('button', { name: 'Draw it again' }).click()
    await drawn()
    expect((await said()).join('\n')).toMatch(/Drawing the \w+ view, \d+ %/)
    // the brief is there as it was
    await page.getByRole('button', { name: 'Put back' }).click()
    await page.getByRole('button', { name: 'Back to the sheet' }).click()
    await waitForLettering(page, 'VENT MOTOR BRACKET')
  })

  it('says what is wrong with a file that is no model', { timeout: FIRST }, async () => {
    const file = join(desk.served.folder, 'torn.step')
    writeFileSync(file, 'no model')
    await openModel(file)
    await expect.poll(() => status().textContent(), { timeout: FIRST }).toBe('Nothing could be drawn')
    await page.getByRole('button', { name: /it is no STEP file/ }).waitFor()
  })
})
