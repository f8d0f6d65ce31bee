import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Download, Page } from 'playwright-core'
import { SaxesParser } from 'saxes'
import { afterEach, describe, expect, it } from 'vitest'
import { axeFindings, goToEnd, openDesk } from './desk.ts'
import { FIRST, lettering, openPage, waitForLettering } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

describe('files', () => {
  it('issues PDF, SVG, STEP and PNG files that other readers take', { timeout: 2 * FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const get = async (kind: string): Promise<string> => {
      const [download] = await Promise.all([
        page.waitForEvent('download', { timeout: FIRST }) as Promise<Download>,
        page.getByRole('button', { name: kind, exact: true }).click(),
      ])
      expect(download.suggestedFilename()).toBe(`VB-1042.${kind.toLowerCase()}`)
      const path = join(desk.served.folder, download.suggestedFilename())
      await download.saveAs(path)
      await page.getByRole('button', { name: kind, exact: true }).waitFor()
      return path
    }
    const pdf = await get('PDF')
    expect(execFileSync('pdftotext', [pdf, '-'], { encoding: 'utf8' })).toContain('VENT MOTOR BRACKET')
    expect(execFileSync('pdfinfo', [pdf], { encoding: 'utf8' })).toMatch(/Pages:\s+1/)
    const parser = new SaxesParser({ xmlns: true })
    const roots: string[] = []
    parser.on('opentag', (tag) => roots.push(tag.uri))
    parser.write(readFileSync(await get('SVG'), 'utf8')).close()
    expect(roots[0]).toBe('http://www.w3.org/2000/svg')
    expect(readFileSync(await get('STEP'), 'utf8')).toMatch(/^ISO-10303-21;/)
    const png = readFileSync(await get('PNG'))
    // Signature and IHDR: PNG (ISO/IEC 15948) 5.2 and 11.2.2.
    expect(png.subarray(0, 8).toString('hex')).toBe('89504e470d0a1a0a')
    expect(png.readUInt32BE(16)).toBeGreaterThan(2000)
  })

  it.each([
    ['CR LF', '\r\n'],
    ['CR', '\r'],
  ])('draws a brief whose lines end in %s, and has nothing to save of it', { timeout: FIRST }, async (name, end) => {
    const file = `sole${name.replace(' ', '')}.brief`
    const plain = 'part      Sole plate\nunits     mm\npractice  ISO\n\nplate     40 × 30 × 6\n'
    writeFileSync(join(desk.served.folder, file), plain.replaceAll('\n', end))
    page = await openPage(desk.browser, desk.served.address)
    await page.keyboard.press('Control+o')
    await page.getByRole('button', { name: file.replace('.brief', ''), exact: true }).click()
    await waitForLettering(page, 'Sole plate')
    await page.waitForSelector('main[aria-busy=false]')
    await page.locator('.stage[aria-label=Brief]', { hasText: /^BriefSaved/ }).waitFor()
    await page.locator('.stage[aria-label=Check]', { hasText: /marks/ }).waitFor()
    await goToEnd(page)
    await page.keyboard.type('note      Deburr')
    await waitForLettering(page, 'Deburr')
  })

  it('saves into the folder, and not over what another has written', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const slip = page.locator('dialog.asking')
    const line = slip.getByLabel('File name')
    await page.locator('.scale-rule button').first().focus()
    await page.keyboard.press('Control+s')
    await expect.poll(() => line.inputValue()).toBe('VB-1042.brief')
    await page.keyboard.press('Escape')
    await slip.waitFor({ state: 'hidden' })
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('.scale-rule') !== null)).toBe(true)
    expect(existsSync(join(desk.served.folder, 'VB-1042.brief'))).toBe(false)
    await page.keyboard.press('Control+s')
    // A name that is none stays to be mended, with the reason beside it.
    for (const [name, reason] of [
      ['../x', '“/”'],
      ['CON', 'device'],
    ] as const) {
      await line.fill(name)
      await page.keyboard.press('Enter')
      await expect.poll(() => slip.locator('[role=alert]').textContent()).toContain(reason)
      await expect.poll(() => line.inputValue()).toBe(name)
    }
    await page.keyboard.press('Escape')
    await slip.waitFor({ state: 'hidden' })
    await page.keyboard.press('Control+s')
    await slip.locator('[role=alert]').waitFor({ state: 'detached' })
    // The name without its ending is ready to be written over.
    await page.keyboard.type('bracket')
    expect(await axeFindings(page)).toEqual([])
    await page.keyboard.press('Enter')
    await page.waitForSelector('.notice:has-text("Saved as bracket.brief")')
    const path = join(desk.served.folder, 'bracket.brief')
    expect(readFileSync(path, 'utf8')).toBe(readFileSync('examples/vent-bracket.brief', 'utf8'))
    execFileSync('sh', ['-c', `printf 'part  Other\\n' > "${path}"`])
    await goToEnd(page)
    await page.keyboard.type('\nnote      Mine')
    await page.keyboard.press('Control+s')
    await expect.poll(() => line.inputValue()).toBe('bracket-2.brief')
    await page.keyboard.press('Escape')
    await page.waitForSelector('.notice:has-text("was not saved")')
    await page.keyboard.press('Control+s')
    await expect.poll(() => line.inputValue()).toBe('bracket-2.brief')
    await page.keyboard.press('Enter')
    await page.waitForSelector('.notice:has-text("Saved as bracket-2.brief")')
    expect(readFileSync(path, 'utf8')).toBe('part  Other\n')
    expect(readFileSync(join(desk.served.folder, 'bracket-2.brief'), 'utf8')).toMatch(/note {6}Mine\s*$/)
  })

  it('throws a brief away only when it is sure', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.keyboard.press('Control+o')
    await page.getByRole('button', { name: 'spacer ring' }).click()
    await waitForLettering(page, 'Spacer ring')
    await page.keyboard.press('Control+o')
    const bin = page.getByRole('button', { name: 'Throw away Vent motor bracket', exact: true })
    const slip = page.getByRole('dialog', { name: 'Throw away Vent motor bracket?' })
    await bin.press('Enter')
    await slip.waitFor()
    await page.keyboard.press('Enter')
    await slip.waitFor({ state: 'hidden' })
    await expect.poll(() => bin.count()).toBe(1)
    await bin.press('Enter')
    await slip.getByRole('button', { name: 'Throw away', exact: true }).press('Enter')
    await bin.waitFor({ state: 'detached' })
  })

  it('prints the sheet alone at its true size', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const path = join(desk.served.folder, 'printed.pdf')
    await page.pdf({ path, preferCSSPageSize: true })
    const info = execFileSync('pdfinfo', [path], { encoding: 'utf8' })
    const [, width, height] = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info)!
    const sheet = await page.$eval('.sheet .paper', (p) =>
      [p.getAttribute('width'), p.getAttribute('height')].map(Number),
    )
    // A point is 1/72 inch.
    expect((Number(width) / 72) * 25.4).toBeCloseTo(sheet[0]!, 0)
    expect((Number(height) / 72) * 25.4).toBeCloseTo(sheet[1]!, 0)
    expect(info).toMatch(/Pages:\s+1\b/)
    const text = execFileSync('pdftotext', [path, '-'], { encoding: 'utf8' })
    expect(text).toContain('VENT MOTOR BRACKET')
    expect(text).not.toContain('Whole sheet')
  })

  it('lays two sheets one below the other in an upright window', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address, 834, 1112)
    await page.keyboard.press('Control+o')
    await page.getByRole('button', { name: 'spacer ring' }).click()
    await waitForLettering(page, 'Spacer ring')
    await page.keyboard.press('Control+o')
    await page.getByRole('button', { name: 'Lay beside' }).first().click()
    await page.waitForFunction(() => document.querySelectorAll('.sheet .paper').length === 2, null, {
      timeout: 120_000,
    })
    const routing = (await page.locator('.routing').boundingBox())!
    const papers = async () =>
      Promise.all([0, 1].map(async (i) => (await page.locator('.sheet .paper').nth(i).boundingBox())!))
    await expect.poll(async () => (await papers()).every((p) => p.width > 300)).toBe(true)
    const [upper, lower] = await papers()
    expect(upper!.y).toBeGreaterThanOrEqual(0)
    expect(lower!.y).toBeGreaterThanOrEqual(upper!.y + upper!.height)
    expect(lower!.y + lower!.height).toBeLessThanOrEqual(routing.y)
  })

  it('lays two sheets side by side', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await page.keyboard.press('Control+o')
    await page.getByRole('button', { name: 'spacer ring' }).click()
    await waitForLettering(page, 'Spacer ring')
    await page.keyboard.press('Control+o')
    await page.getByRole('button', { name: 'Lay beside' }).first().click()
    await page.waitForFunction(() => document.querySelectorAll('.sheet').length === 2, null, { timeout: 120_000 })
    await expect.poll(() => lettering(page)).toEqual(expect.arrayContaining(['VENT MOTOR BRACKET', 'Spacer ring']))
    await page.getByRole('button', { name: 'Take to the front' }).click()
    await page.waitForFunction(() => document.querySelector('.slip h2')?.textContent === 'Vent motor bracket')
  })
})
