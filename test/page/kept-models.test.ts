import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { giveWay, MOST_OF_ALL } from '../../src/app/page/shelf/models.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { writeStep } from '../../src/write/step.ts'
import { axeFindings, openDesk } from './desk.ts'
import { briefText, FIRST, lettering, openPage } from './open-page.ts'

describe('models on the shelf', () => {
  it('give way to a new one, the longest untouched first, and no more of them than must', () => {
    const model = (id: string, size: number, touched: number) => ({ id, name: id, size, touched })
    const kept = [model('new', 60, 3), model('old', 50, 1), model('middle', 70, 2)].map((m) => ({
      ...m,
      size: (m.size / 200) * MOST_OF_ALL,
    }))
    const gone = (size: number) => giveWay(kept, (size / 200) * MOST_OF_ALL).map((m) => m.id)
    expect(gone(20)).toEqual([])
    expect(gone(21)).toEqual(['old'])
    expect(gone(71)).toEqual(['old', 'middle'])
    expect(giveWay([], MOST_OF_ALL)).toEqual([])
  })
})

const desk = openDesk()
let page: Page
let file: string
beforeAll(async () => {
  const kernel = await openKernel()
  const { part } = compile(readFileSync('examples/t-nut.brief', 'utf8'), kernel)
  file = join(desk.served.folder, 't-nut.step')
  writeFileSync(file, writeStep(part!, kernel))
  kernel.free(part!.solid)
}, FIRST)
afterEach(async () => {
  await page?.context().close()
})

const region = () => page.getByRole('region', { name: 'Model' })
const drawn = () =>
  page.waitForFunction(
    () => document.querySelector('.model-says [role=status]')?.textContent?.includes('measured') === true,
    null,
    { timeout: FIRST },
  )

describe('a model on the bench', () => {
  it('lies there again after reloading, and on the shelf until it is thrown away', { timeout: 2 * FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.evaluate(() => {
      delete (window as { showOpenFilePicker?: unknown }).showOpenFilePicker
    })
    const example = await briefText(page)
    await page.getByRole('button', { name: 'New', exact: true }).click()
    const chooser = page.waitForEvent('filechooser')
    await page.getByRole('button', { name: 'a solid model' }).click()
    await (await chooser).setFiles(file)
    await region().waitFor()
    await drawn()
    const words = await lettering(page)
    expect(words.length).toBeGreaterThan(20)
    await expect.poll(() => page.evaluate(() => localStorage.getItem('sheetwright model'))).not.toBeNull()

    await page.reload()
    await region().waitFor({ timeout: FIRST })
    await drawn()
    await expect.poll(() => lettering(page)).toEqual(words)

    await page.getByRole('button', { name: 'Put back', exact: true }).click()
    await page.reload()
    await page.waitForSelector('.cm-content', { timeout: FIRST })
    await expect.poll(() => region().count()).toBe(0)
    await expect.poll(() => briefText(page)).toBe(example)

    await page.keyboard.press('Control+o')
    const shelf = page.getByRole('dialog', { name: 'Shelf' })
    await shelf.getByRole('button', { name: /^t-nut\.step/ }).waitFor()
    expect(await axeFindings(page)).toEqual([])
    await shelf.getByRole('button', { name: 'Throw away t-nut.step' }).click()
    await page.locator('.asking').getByRole('button', { name: 'Throw away' }).click()
    await shelf.getByRole('button', { name: /^t-nut\.step/ }).waitFor({ state: 'detached' })
  })
})
