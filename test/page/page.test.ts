import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import axe from 'axe-core'
import type { Browser, Download, Page } from 'playwright-core'
import { SaxesParser } from 'saxes'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import {
  briefText,
  FIRST,
  lettering,
  openBrowser,
  openPage,
  type Served,
  servePage,
  waitForLettering,
} from './open-page.ts'

let browser: Browser
let served: Served
let page: Page

beforeAll(async () => {
  browser = await openBrowser()
  served = await servePage()
}, FIRST)
afterAll(async () => {
  await browser?.close()
  await served?.close()
})
afterEach(async () => {
  await page?.context().close()
})

const size = (words: string) => page.locator(`.hit[aria-label^="Size ${words}"]`).first()

async function goToEnd(): Promise<void> {
  await page.locator('.cm-content').click()
  await page.keyboard.press('Control+End')
}

async function axeFindings(): Promise<string[]> {
  // The policy of the page lets no script in but its own; this way around it is the test's alone.
  const session = await page.context().newCDPSession(page)
  await session.send('Runtime.evaluate', { expression: axe.source })
  const found = await page.evaluate(() =>
    (
      globalThis as unknown as {
        axe: { run: () => Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }> }
      }
    ).axe.run(),
  )
  return found.violations
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`)
}

describe('the page', () => {
  it('opens at a finished example, and shows text as text', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    expect(await lettering(page)).toContain('VENT MOTOR BRACKET')
    expect(await page.locator('.margin li').count()).toBe(0)
    await goToEnd()
    await page.keyboard.type('\nnote      <img src=x onerror="document.title=1"> & <b>bold</b>')
    await waitForLettering(page, '<IMG')
    expect(await page.locator('.sheet img, .sheet b, .slip img').count()).toBe(0)
    expect(await page.title()).toBe('Sheetwright')
  })

  it('loads less than 700 kB of script, compressed, to show a sheet', { timeout: FIRST }, async () => {
    page = await browser.newPage()
    const scripts: Promise<Buffer>[] = []
    page.on('response', (answer) => {
      if (answer.url().endsWith('.js')) scripts.push(answer.body())
    })
    await page.goto(served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    const bytes = (await Promise.all(scripts)).map((b) => gzipSync(b).length)
    expect(bytes.length).toBeGreaterThanOrEqual(2)
    expect(bytes.reduce((sum, n) => sum + n, 0)).toBeLessThan(700_000)
  })

  it('lights a hole in all views and in the brief, both ways', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    const holes = page.locator('.hit[aria-label*="hole 1"], .hit[aria-label*="THRU"]').first()
    const box = (await holes.boundingBox())!
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await page.waitForSelector('.lit-word')
    const views = () =>
      page.$$eval('.ink.lit, .ink.beside', (all) => [...new Set(all.map((e) => (e as SVGElement).dataset.view))].sort())
    expect(await views()).toEqual(['front', 'pictorial', 'right', 'top'])
    expect(await page.locator('.lit-statement').first().textContent()).toMatch(/^holes/)
    await page.mouse.move(2, 2)
    await page.locator('.cm-line', { hasText: '4X' }).first().click()
    await page.waitForSelector('.ink.lit', { state: 'attached' })
    expect(await views()).toEqual(['front', 'pictorial', 'right', 'top'])
  })

  it('changes a size where it stands, refuses what is none, and takes it back', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    const before = await briefText(page)
    await size('3.50').focus()
    await page.keyboard.press('Enter')
    const field = page.locator('.size-field input')
    expect(await field.inputValue()).toBe('3.50')
    await field.fill('a lot')
    await page.keyboard.press('Enter')
    expect(await page.locator('.size-field [role=alert]').textContent()).toContain('Expected: a size')
    expect(await briefText(page)).toBe(before)
    await field.fill('3-5/8')
    await page.keyboard.press('Enter')
    await page.waitForSelector('.hit[aria-label*="3-5/8"], .hit[aria-label*="35/8"], .hit[aria-label*="5/8"]', {
      state: 'attached',
      timeout: 120_000,
    })
    expect(await briefText(page)).toBe(before.replace('upright 3.50', 'upright 3-5/8'))
    await page.locator('.scale-rule button').first().focus()
    await page.keyboard.press('Control+z')
    await size('3.50').waitFor({ state: 'attached', timeout: 120_000 })
    expect(await briefText(page)).toBe(before)
  })

  it('keeps the last good sheet over an error and mends it by its offer', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    const before = await lettering(page)
    await page.locator('.cm-line', { hasText: 'angle' }).last().click()
    await page.keyboard.press('Home')
    await page.keyboard.press('Home')
    await page.keyboard.press('Delete')
    await page.waitForSelector('.margin li', { timeout: 120_000 })
    expect(await page.locator('.cm-lintRange-error').first().textContent()).toBe('ngle')
    expect(await lettering(page)).toEqual(before)
    await page.locator('.margin .mend', { hasText: 'angle' }).first().click()
    await page.waitForSelector('.margin', { state: 'detached', timeout: 120_000 })
    expect(await briefText(page)).toMatch(/^angle {5}formed/m)
    await page.locator('.cm-line', { hasText: 'angle' }).last().click()
    await page.keyboard.press('Home')
    await page.keyboard.press('Home')
    await page.keyboard.type('# ')
    const standing = page.locator('.margin .standing')
    await standing.waitFor({ timeout: 120_000 })
    expect(await standing.textContent()).toContain('The sheet is of the brief before')
    expect(await lettering(page)).toEqual(before)
  })

  it('writes the place of a dragged size and of a dragged view into the brief', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    const drag = async (x: number, y: number, dx: number, dy: number) => {
      await page.mouse.move(x, y)
      await page.mouse.down()
      await page.mouse.move(x + dx / 2, y + dy / 2)
      await page.mouse.move(x + dx, y + dy)
      await page.mouse.up()
    }
    const box = (await size('2.25').boundingBox())!
    await drag(box.x + box.width / 2, box.y + box.height / 2, 0, 24)
    await page.waitForFunction(() => document.querySelector('.cm-content')?.textContent?.includes('place '))
    expect(await briefText(page)).toMatch(/^place {5}2\.25 in right view, row \d, below$/m)
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
    expect(await briefText(page)).toMatch(/^place {5}right view \d+ across, -?\d+ up$/m)
    expect(await page.locator('.margin li.must-change').count()).toBe(0)
  })

  it('writes the places of a size and of a view by keys alone', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    await size('2.25').focus()
    await page.keyboard.press('Shift+ArrowDown')
    await expect.poll(() => briefText(page)).toMatch(/^place {5}2\.25 in right view, row \d, (below|above)$/m)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    // The keyboard is still at the size, wherever it went.
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^Size 2\.25/)
    await page.keyboard.press('v')
    await expect.poll(() => briefText(page), { timeout: 120_000 }).toMatch(/^place {5}2\.25 in top view$/m)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    await page.locator('.line-stop').focus()
    await page.keyboard.press('Shift+ArrowRight')
    await expect.poll(() => briefText(page)).toMatch(/^place {5}\w+ view 5 across, 0 up$/m)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    expect(await page.locator('.margin li.must-change').count()).toBe(0)
  })

  it('starts a part from a sketch, writes on, and has nothing to complain of', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    await page.getByRole('button', { name: 'New', exact: true }).click()
    await page.getByRole('button', { name: 'angle', exact: true }).click()
    await page.getByLabel('upright').fill('2.50')
    await page.getByLabel('Name of the part').fill('Shelf bracket')
    await page.getByRole('button', { name: 'Write the first lines' }).click()
    await waitForLettering(page, 'SHELF BRACKET')
    await waitForLettering(page, '2.50')
    await goToEnd()
    await page.keyboard.type('holes     upright, from front: 2X dia .281 thru\n')
    await page.keyboard.type('          1.500 apart, centred; 1.50 from bottom\n')
    await page.waitForSelector('main[aria-busy=false]', { timeout: 120_000 })
    await waitForLettering(page, '1.500')
    expect(await page.locator('.margin li.must-change').count()).toBe(0)
  })

  it('offers to begin where a brief says nothing of what it begins from', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    await page.locator('.cm-content').click()
    await page.keyboard.press('Control+a')
    await page.keyboard.insertText('part      Nothing yet\n')
    await page.getByRole('button', { name: 'Choose what the shop begins from' }).click({ timeout: 40_000 })
    await page.getByRole('button', { name: 'angle', exact: true }).waitFor()
  })

  it('offers the words that may follow', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    await goToEnd()
    await page.keyboard.type('\nround     in')
    await page.keyboard.press('Control+Space')
    await page.waitForSelector('.cm-tooltip-autocomplete li')
    expect(await page.$$eval('.cm-completionLabel', (all) => all.map((l) => l.textContent))).toContain('inside corner')
  })

  it('loses no keystroke when it is killed mid-word', { timeout: FIRST }, async () => {
    const context = await browser.newContext()
    page = await context.newPage()
    await page.goto(served.address)
    await page.waitForSelector('.cm-line', { timeout: FIRST })
    await goToEnd()
    await page.keyboard.type('\nnote      Half a wo')
    // The tab goes without a chance to put anything away.
    const session = await context.newCDPSession(page)
    const crashed = page.waitForEvent('crash')
    session.send('Page.crash').catch(() => {})
    await crashed
    const second = await context.newPage()
    await second.goto(served.address)
    await second.locator('.cm-content').click({ timeout: FIRST })
    await second.keyboard.press('Control+End')
    await expect.poll(() => briefText(second), { timeout: 120_000 }).toContain('note      Half a wo')
  })

  it('issues PDF, SVG, STEP and PNG files that other readers take', { timeout: 2 * FIRST }, async () => {
    page = await openPage(browser, served.address)
    const get = async (kind: string): Promise<string> => {
      const [download] = await Promise.all([
        page.waitForEvent('download', { timeout: FIRST }) as Promise<Download>,
        page.getByRole('button', { name: kind, exact: true }).click(),
      ])
      expect(download.suggestedFilename()).toBe(`VB-1042.${kind.toLowerCase()}`)
      const path = join(served.folder, download.suggestedFilename())
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

  it('saves into the folder, and not over what another has written', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    const slip = page.locator('dialog.asking')
    const line = slip.getByLabel('File name')
    await page.locator('.scale-rule button').first().focus()
    await page.keyboard.press('Control+s')
    expect(await line.inputValue()).toBe('VB-1042.brief')
    await page.keyboard.press('Escape')
    await slip.waitFor({ state: 'hidden' })
    expect(await page.evaluate(() => document.activeElement?.closest('.scale-rule') !== null)).toBe(true)
    expect(existsSync(join(served.folder, 'VB-1042.brief'))).toBe(false)
    await page.keyboard.press('Control+s')
    // The name without its ending is ready to be written over.
    await page.keyboard.type('bracket')
    expect(await axeFindings()).toEqual([])
    await page.keyboard.press('Enter')
    await page.waitForSelector('.notice:has-text("Saved as bracket.brief")')
    const path = join(served.folder, 'bracket.brief')
    expect(readFileSync(path, 'utf8')).toBe(readFileSync('examples/vent-bracket.brief', 'utf8'))
    execFileSync('sh', ['-c', `printf 'part  Other\\n' > "${path}"`])
    await goToEnd()
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
    expect(readFileSync(join(served.folder, 'bracket-2.brief'), 'utf8')).toMatch(/note {6}Mine\s*$/)
  })

  it('throws a brief away only when it is sure', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
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
    expect(await bin.count()).toBe(1)
    await bin.press('Enter')
    await slip.getByRole('button', { name: 'Throw away', exact: true }).press('Enter')
    await bin.waitFor({ state: 'detached' })
  })

  it('lifts the pictorial off, cuts it and says why a line is there', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
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
    await size('3.50').focus()
    await page.keyboard.press('Enter')
    await page.locator('.size-field input').fill('2.75')
    await page.keyboard.press('Enter')
    await size('2.75').waitFor({ state: 'attached', timeout: 120_000 })
    await expect.poll(picture, { timeout: 120_000 }).not.toBe(cut)
    expect(await page.locator('.turning [role=alert]').count()).toBe(0)
  })

  it('says by keys alone why a line is there', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    const line = page.locator('.line-stop')
    await line.focus()
    const first = await line.getAttribute('aria-label')
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => line.getAttribute('aria-label')).not.toBe(first)
    await page.keyboard.press('Enter')
    const why = await page.locator('.why-note p').textContent()
    expect(await line.getAttribute('aria-label')).toContain(why)
    await page.keyboard.press('Escape')
    await page.waitForSelector('.why-note', { state: 'detached' })
  })

  it('prints the sheet alone at its true size', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    const path = join(served.folder, 'printed.pdf')
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
    expect(text).not.toContain('Fold away')
  })

  it('lays two sheets side by side', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    await page.keyboard.press('Control+o')
    await page.getByRole('button', { name: 'spacer ring' }).click()
    await waitForLettering(page, 'Spacer ring')
    await page.keyboard.press('Control+o')
    await page.getByRole('button', { name: 'Lay beside' }).first().click()
    await page.waitForFunction(() => document.querySelectorAll('.sheet').length === 2, null, { timeout: 120_000 })
    expect(await lettering(page)).toEqual(expect.arrayContaining(['VENT MOTOR BRACKET', 'Spacer ring']))
    await page.getByRole('button', { name: 'Take to the front' }).click()
    await page.waitForFunction(() => document.querySelector('.slip h2')?.textContent === 'Vent motor bracket')
  })

  it('can be read and written on by fingers', { timeout: FIRST }, async () => {
    const context = await browser.newContext({ viewport: { width: 1180, height: 820 }, hasTouch: true })
    page = await context.newPage()
    await page.goto(served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    const box = (await size('3.50').boundingBox())!
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2)
    const field = page.locator('.size-field input')
    expect(await field.inputValue()).toBe('3.50')
    await page.keyboard.press('Escape')
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
    expect(await width()).toBeLessThan(before * 2.3)
  })

  it('comes back when its worker is killed while it draws', { timeout: 2 * FIRST }, async () => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } })
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
    await page.goto(served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    await goToEnd()
    await page.keyboard.type('\nnote      After the fall')
    await page.evaluate(() => (globalThis as unknown as { workersMade: Worker[] }).workersMade.at(-1)!.terminate())
    await page.keyboard.type('.')
    await waitForLettering(page, 'AFTER THE FALL.').catch(() => waitForLettering(page, 'AFTER THE FALL.'))
    expect(
      await page.evaluate(() => (globalThis as unknown as { workersMade: Worker[] }).workersMade.length),
    ).toBeGreaterThan(1)
  })

  it('has nothing serious against it for those who cannot see or point', { timeout: FIRST }, async () => {
    page = await openPage(browser, served.address)
    expect(await axeFindings()).toEqual([])
    await page.locator('.cm-line', { hasText: 'round' }).first().click()
    await page.keyboard.press('Home')
    await page.keyboard.press('Delete')
    await page.waitForSelector('.margin li', { timeout: 120_000 })
    await page.locator('.margin li button').first().click()
    expect(await axeFindings()).toEqual([])
    await page.getByRole('button', { name: 'New', exact: true }).click()
    expect(await axeFindings()).toEqual([])
  })
})
