import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { checked } from '../../src/app/checked.ts'
import { compile } from '../../src/app/compile.ts'
import { sentence } from '../../src/brief/sentence.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { axeFindings, openDesk, writeBrief } from './desk.ts'
import { briefText, FIRST, openPage } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

const BASE = readFileSync('examples/base-plate.brief', 'utf8')
const marks = () => page.$$eval('.margin .mark', (all) => all.map((m) => m.textContent ?? ''))

describe('the checker on the page', () => {
  it('says in the margin what the check command says', { timeout: FIRST }, async () => {
    const kernel = await openKernel()
    const drawing = compile(BASE, kernel)
    const said = checked(drawing).map((m) => m.text)
    kernel.free(drawing.part!.solid)
    expect(said.length).toBeGreaterThan(1)
    page = await openPage(desk.browser, desk.served.address)
    await writeBrief(page, BASE)
    await expect.poll(async () => (await marks()).length, { timeout: 60_000 }).toBe(said.length)
    for (const text of said)
      await expect.poll(async () => (await marks()).some((m) => m.endsWith(sentence(text)))).toBe(true)
    // The paper leaves the margin its place.
    const margin = (await page.locator('.margin').boundingBox())!
    const paper = (await page.locator('.sheet .paper').boundingBox())!
    expect(paper.x + paper.width <= margin.x + 1 || paper.y + paper.height <= margin.y + 1).toBe(true)
    await page.locator('.margin .mark').first().press('Enter')
    await expect
      .poll(() => page.locator('.opened dt').allTextContents())
      .toEqual(['Weight', 'Expected', 'Rule', 'Source'])
    expect(await axeFindings(page)).toEqual([])
  })

  it('accepts a mark for a written reason, and wakes it when a figure changes', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await writeBrief(page, BASE)
    const pins = page.locator('.margin .mark', { hasText: 'two pins' })
    await pins.press('Enter')
    await page.getByLabel('It stands, because').fill('both parts are drilled together, see note #2')
    await page.keyboard.press('Enter')
    await page.waitForSelector('.margin li.accepted')
    await expect
      .poll(() => briefText(page))
      .toMatch(/^accept +"dowel-distance at .* because both parts are drilled together, see note #2"$/m)
    await expect.poll(() => page.locator('.routing').textContent()).toContain('1 accepted')
    await page.locator('.cm-line', { hasText: 'up 100 apart' }).click()
    const text = (await briefText(page)).replace('up 100 apart', 'up 104 apart')
    await writeBrief(page, text)
    await page.waitForSelector('.margin .mark:has-text("It was accepted with")')
    await expect.poll(() => page.locator('.margin li.accepted').count()).toBe(0)
  })

  it('closes an open mark when another has come to its place', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await writeBrief(page, 'part Trial\nunits mm\npractice ISO\nplate 80 × 60 × 10\nhole top: ⌀9 THRU\n')
    const first = page.locator('.margin .mark').first()
    await first.filter({ hasText: 'hole' }).click({ timeout: 60_000 })
    await page.locator('.margin .opened').waitFor()
    await page.locator('.cm-line', { hasText: 'plate' }).click()
    await page.keyboard.press('Home')
    await page.keyboard.press('Delete')
    await first.filter({ hasText: 'no statement begins with' }).waitFor({ timeout: 60_000 })
    await expect.poll(() => first.getAttribute('aria-expanded')).toBe('false')
  })

  it('mends by a key, and offers a place to holes that have none', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await writeBrief(page, 'part Plate\nunits mm\npractice ISO\nplate 80 × 60 × 10\nhole top: ⌀9 THRU\n')
    const mark = page.locator('.margin .mark', { hasText: 'does the hole sit' })
    await mark
      .or(page.locator('.margin .mark', { hasText: 'do the holes sit' }))
      .first()
      .waitFor()
    await page.keyboard.press('Escape')
    await page.locator('.scale-rule button').first().focus()
    await page.keyboard.press('m')
    await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toBe('mark')
    await page.keyboard.press('m')
    await expect.poll(() => briefText(page)).toMatch(/⌀9 THRU\n {10}centred both ways/)
    const general = page.locator('.margin .mend', { hasText: 'write general ISO 2768-m' })
    await general.click()
    await expect.poll(() => briefText(page)).toMatch(/^practice ISO\ngeneral {3}ISO 2768-m$/m)
    await page.locator('.margin .mend', { hasText: 'begin the statement material' }).click()
    // Pressed again it goes on with the line that is begun.
    await page.locator('.margin .mend', { hasText: 'go on with the statement material' }).click()
    await page.keyboard.type('S235JR EN 10025-2')
    await expect.poll(() => briefText(page)).toMatch(/^material {2}S235JR EN 10025-2$/m)
  })

  it('lays out the check print, takes the signature, and writes it', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await writeBrief(page, BASE.replace(/^checked.*\n/m, ''))
    await page.waitForSelector('.margin .mark:has-text("two pins")')
    await page.getByRole('button', { name: 'Check print' }).click()
    await page.waitForSelector('.ink.pencil-yellow', { state: 'attached' })
    const words = () => page.$$eval('.sheet text.ink', (all) => all.map((t) => t.textContent ?? ''))
    await expect.poll(async () => (await words()).join('\n')).toMatch(/CHECK PRINT/)
    await expect.poll(async () => (await words()).join('\n')).toMatch(/yellow: found consistent/)
    await expect.poll(() => page.locator('.ink.pencil-red').count()).toBeGreaterThan(4)
    await expect.poll(() => page.locator('.ink.pencil-blue').count()).toBeGreaterThan(4)
    expect(await axeFindings(page)).toEqual([])
    await page.getByRole('button', { name: 'Sign', exact: true }).click()
    await page.getByLabel('Name').fill('P. Quillfeather')
    await page.getByLabel('Date').fill('2024-02-07')
    await page.keyboard.press('Enter')
    await expect.poll(() => briefText(page)).toMatch(/^drawn.*\nchecked {3}P\. Quillfeather, 2024-02-07$/m)
    // The next print comes when the checker has been round.
    await expect.poll(words, { timeout: 30_000 }).toEqual(expect.arrayContaining(['P. Quillfeather']))
    await expect.poll(async () => (await words()).filter((w) => w === 'P. Quillfeather').length).toBe(2)
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: FIRST }),
      page.getByRole('button', { name: 'Its PDF' }).click(),
    ])
    expect(download.suggestedFilename()).toBe('CS-2201-check.pdf')
    const path = join(desk.served.folder, 'check.pdf')
    await download.saveAs(path)
    const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' })
    expect(text).toContain('CHECK PRINT')
    expect(text.split('P. Quillfeather')).toHaveLength(3)
  })

  it('places the pictorial by hand and by keys', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.waitForSelector('main[aria-busy=false]')
    const line = await page.$$eval('.ink.visible', (all) => {
      const boxes = all
        .filter((e) => (e as SVGElement).dataset.view === 'pictorial')
        .map((e) => e.getBoundingClientRect())
        .filter((r) => r.width < 2 && r.height > 40)
      return boxes.map((r) => [r.x + r.width / 2, r.y + r.height / 2] as const)[0]
    })
    const [x, y] = line!
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x - 20, y + 10)
    await page.mouse.move(x - 40, y + 20)
    await page.mouse.up()
    await expect.poll(() => briefText(page)).toMatch(/^place {5}pictorial -\d+ across, -\d+ up$/m)
    await page.waitForSelector('main[aria-busy=false]')
    const stop = page.locator('.line-stop')
    await stop.focus()
    for (let i = 0; i < 120 && !(await stop.getAttribute('aria-label'))!.includes('in the pictorial'); i++) {
      await page.keyboard.press('ArrowRight')
    }
    const before = /pictorial (-?\d+) across/.exec(await briefText(page))![1]
    await page.keyboard.press('Shift+ArrowLeft')
    await expect
      .poll(async () => /pictorial (-?\d+) across/.exec(await briefText(page))![1])
      .toBe(String(Number(before) - 5))
    await expect.poll(() => page.locator('.margin li.must-change').count()).toBe(0)
  })
})
