import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { openDesk } from './desk.ts'
import { briefText, FIRST, openPage, waitForLettering } from './open-page.ts'
import { Walk } from './walk.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

/** "In under three minutes without a manual", s: estimated, see `Walk`. */
const THREE_MINUTES = 180

const settled = async () => {
  await page.waitForSelector('main[aria-busy=false]', { timeout: 60_000 })
}
/** The checker has been round: its offer stands in the margin. */
const offer = (words: string) => page.locator('.margin .mend', { hasText: words }).first()

/** A person reads the marks before going on: they have come to rest. */
const read = async (words: string) => {
  await offer(words).waitFor({ timeout: 30_000 })
  await settled()
  const text = async () => (await page.locator('.margin').textContent()) ?? ''
  for (let before = '', now = await text(), alike = 0; alike < 3; before = now, now = await text()) {
    alike = now === before ? alike + 1 : 0
    await page.waitForTimeout(150)
  }
}

const finished = async () => {
  await settled()
  await expect
    .poll(() => page.$$eval('.margin li.must-change .mark', (all) => all.map((m) => m.textContent)), {
      timeout: 30_000,
    })
    .toEqual([])
  await page.locator('.routing', { hasText: 'Sizes complete' }).waitFor({ timeout: 30_000 })
  await expect.poll(() => page.locator('.sheet text.ink', { hasText: 'PRELIMINARY' }).count()).toBe(0)
}

const PARTS = [
  {
    what: 'a plate with four holes',
    stock: 'plate',
    sizes: [
      ['length', '6.00'],
      ['width', '4.00'],
      ['thickness', '.375'],
    ],
    name: 'Cover plate',
    face: 'top',
    callout: ': 4X dia .281 THRU; ',
    places: '2 across 5.00 apart, centred; 2 up 3.00 apart, centred',
    material: 'aluminum 6061-T6, ASTM B209',
    number: 'CP-7   rev A',
  },
  {
    what: 'a right bracket',
    stock: 'angle',
    sizes: [
      ['length', '3.00'],
      ['base', '2.25'],
      ['upright', '3.50'],
      ['thickness', '.188'],
      ['inside radius', '.19'],
    ],
    name: 'Shelf bracket',
    face: 'upright',
    callout: ', from front: 2X dia .281 THRU; ',
    places: '2 across 1.500 apart, centred; 2.50 from bottom',
    material: 'carbon steel sheet, ASTM A1011 CS type B',
    number: 'SB-100   rev A',
  },
] as const

describe.each(PARTS)('$what from an empty page', (part) => {
  const begun = () => waitForLettering(page, part.name.toUpperCase())
  const written = async () => {
    await finished()
    const text = await briefText(page)
    expect(text).toContain(part.places)
    expect(text).toContain(part.material)
  }

  it('is made with the pointer, keys for letters only', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const walk = new Walk(page)
    await walk.button('New')
    await walk.button(part.stock)
    for (const [name, text] of part.sizes) await walk.fill(name, text)
    await walk.fill('Name of the part', part.name)
    await walk.button('Write the first lines')
    await begun()
    const choose = (word: string) =>
      walk.click(
        page
          .locator('.cm-tooltip-autocomplete li')
          .filter({ hasText: new RegExp(`^${word}`) })
          .first(),
      )
    const mend = async (words: string) => {
      await read(words)
      await walk.click(offer(words))
    }
    await walk.type('hole')
    await choose('hole')
    await choose(part.face)
    await walk.type(part.callout + part.places)
    await settled()
    await mend('write general')
    await mend('begin the statement material')
    await walk.type(part.material)
    await offer('begin the statement material').waitFor({ state: 'detached', timeout: 30_000 })
    await mend('begin the statement number')
    await walk.type(part.number)
    await written()
    console.log(`${part.what}, pointer: ${walk.actions} actions, estimated ${walk.estimate.toFixed(0)} s`)
    expect(walk.estimate).toBeLessThan(THREE_MINUTES)
  })

  it('is made with keys only', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    const walk = new Walk(page)
    // From the shelf, where a new brief is the first thing.
    await walk.press('Control+o', 'Enter')
    await page.waitForFunction(() => document.activeElement?.matches('[data-stock]'))
    for (let steps = 0; steps < 20; steps++) {
      if ((await page.evaluate(() => document.activeElement?.textContent)) === part.stock) break
      await walk.press('Tab')
    }
    await walk.press('Enter')
    // The hand is at the first size; Enter goes on.
    const sizes = new Map<string, string>(part.sizes)
    for (let steps = 0; steps < 10; steps++) {
      const field = await page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.name ?? '')
      const text = sizes.get(field)
      if (text) await walk.type(text)
      else if (field === '') break
      await walk.press('Enter')
    }
    await walk.type(part.name)
    await walk.press('Enter')
    await begun()
    await page.waitForSelector('.cm-focused')
    const chosen = async (word: string) => {
      await page.locator('.cm-tooltip-autocomplete li[aria-selected]', { hasText: word }).first().waitFor()
      // In its first moment a list takes no key.
      await page.waitForTimeout(150)
      await walk.press('Tab')
    }
    await walk.type('hole')
    await chosen('hole')
    await walk.type(part.face.slice(0, 2))
    await chosen(part.face)
    await walk.type(part.callout + part.places)
    await settled()
    /** Where the keyboard is: in the brief, at a mark, which one, or somewhere else. */
    const hand = () =>
      page.evaluate(() => ({
        writing: !!document.activeElement?.closest('.cm-editor'),
        mark: document.activeElement?.matches('.margin .mark') ? document.activeElement.closest('li')!.textContent : '',
      }))
    /** Out of the brief, to the marks, along to the one meant, and its mend. */
    const mend = async (words: string) => {
      await read(words)
      // An Escape closes a list that is open; the next lets Tab out of the brief.
      for (let tries = 0; tries < 5 && (await hand()).writing; tries++) {
        if (await page.locator('.cm-tooltip-autocomplete').count()) await walk.press('Escape')
        await walk.press('Escape', 'Tab')
      }
      let way = 'ArrowDown'
      for (let steps = 0; steps < 24; steps++) {
        const { writing, mark } = await hand()
        expect(writing).toBe(false)
        if (mark?.includes(words)) break
        await walk.press(mark ? way : 'm')
        if (mark && (await hand()).mark === mark) way = 'ArrowUp'
      }
      expect((await hand()).mark).toContain(words)
      await walk.press('m')
    }
    await mend('write general')
    await mend('begin the statement material')
    await walk.type(part.material)
    await offer('begin the statement material').waitFor({ state: 'detached', timeout: 30_000 })
    await mend('begin the statement number')
    await walk.type(part.number)
    await written()
    console.log(`${part.what}, keys: ${walk.actions} actions, estimated ${walk.estimate.toFixed(0)} s`)
    expect(walk.estimate).toBeLessThan(THREE_MINUTES)
  })
})
