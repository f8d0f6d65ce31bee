import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { lapsedMark } from '../../src/app/page/bench/lapsed-mark.ts'
import { lapsedSignatures, signedAfter, signedText } from '../../src/app/page/shelf/signed-text.ts'
import { replaceSpan } from '../../src/brief/edit.ts'
import { openDesk, writeBrief } from './desk.ts'
import { briefText, FIRST, openPage } from './open-page.ts'

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

const BASE = readFileSync('examples/base-plate.brief', 'utf8')
const SIGNED = 'part P\nnumber N-1 rev A\ndrawn A, 1\nchecked B, 2\nnote X\napproved C,\n  3\nplate 1 × 2 × 3\n'

describe('signatures', () => {
  it('stand for the text that was signed, until another signs or the number is another', () => {
    const changed = SIGNED.replace('1 × 2', '1 × 4')
    expect(signedText(SIGNED, changed)).toBe(SIGNED)
    const again = changed.replace('B, 2', 'B, 5')
    expect(signedText(SIGNED, again)).toBe(again)
    const other = changed.replace('N-1', 'N-2')
    expect(signedText(SIGNED, other)).toBe(other)
  })

  it.each([
    ['a size', SIGNED.replace('1 × 2', '1 × 4'), 2],
    ['a revision', SIGNED.replace('rev A', 'rev B'), 2],
    ['a line more', `${SIGNED}hole top: ⌀1\n`, 2],
    ['a comment', `# as ordered\n${SIGNED}`, 0],
    ['spaces', SIGNED.replace('plate 1', 'plate    1'), 0],
    ['an accepted mark', `${SIGNED}accept wall because cast\n`, 0],
    ['nothing', SIGNED, 0],
  ])('lapse or hold by what was changed: %s', (_, text, lapsed) => {
    expect(lapsedSignatures(text, SIGNED)).toHaveLength(lapsed)
  })

  it('that undo brings back stand for what they stood for, and a new one of the same name for what it signs', () => {
    const memory = new Map<string, string>()
    let [signed, text] = [SIGNED, SIGNED]
    const go = (newer: string, undone = false) => {
      signed = signedAfter(memory, signed, text, newer, undone)
      text = newer
      return lapsedSignatures(text, signed).length
    }
    const changed = SIGNED.replace('1 × 2', '1 × 4')
    const off = changed.replace(/^checked.*\n|^approved.*\n {2}3\n/gm, '')
    const anew = off.replace('drawn A, 1\n', 'drawn A, 1\nchecked B, 5\n')
    expect([go(changed), go(off), go(anew)]).toEqual([2, 0, 0])
    // Undo, undo, undo; redo all.
    expect([go(off, true), go(changed, true), go(SIGNED, true)]).toEqual([0, 2, 0])
    expect([go(changed, true), go(off, true), go(anew, true)]).toEqual([2, 0, 0])
    // Changed once more, and signed by the same on the same day.
    const more = anew.replace('1 × 4', '1 × 5')
    const bare = more.replace('checked B, 5\n', '')
    expect([go(more), go(bare), go(more)]).toEqual([1, 0, 0])
    expect([go(bare, true), go(more, true)]).toEqual([0, 0])
  })

  it('are taken off by the mend, and nothing else is', () => {
    const changed = SIGNED.replace('1 × 2', '1 × 4')
    const mend = lapsedMark(changed, SIGNED)[0]!.mends![0]!
    expect(replaceSpan(changed, mend.span, mend.text)).toBe(
      'part P\nnumber N-1 rev A\ndrawn A, 1\nnote X\nplate 1 × 4 × 3\n',
    )
    expect(lapsedMark(changed, undefined)).toEqual([])
  })

  it('do not outlive a change on the page, and offer no other name', { timeout: FIRST }, async () => {
    page = await openPage(desk.browser, desk.served.address)
    await writeBrief(page, BASE)
    const mark = page.locator('.margin .mark', { hasText: 'changed since it was signed' })
    await page.waitForSelector('.margin .mark:has-text("two pins")')
    await expect.poll(() => mark.count()).toBe(0)
    const changed = BASE.replace('up 100 apart', 'up 104 apart')
    expect(changed).not.toBe(BASE)
    await writeBrief(page, changed)
    await mark.waitFor()
    await page.locator('.signature.lapsed', { hasText: 'Changed since' }).first().waitFor()
    await page.reload()
    await mark.waitFor({ timeout: FIRST })
    await page.getByRole('button', { name: 'Sign', exact: true }).click()
    await expect.poll(() => page.getByLabel('Name').inputValue()).toBe('')
    const today = await page.evaluate(() => {
      const now = new Date()
      const two = (n: number) => String(n).padStart(2, '0')
      return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
    })
    await expect.poll(() => page.getByLabel('Date').inputValue()).toBe(today)
    await page.getByLabel('Name').fill('P. Quillfeather')
    await page.keyboard.press('Enter')
    await expect.poll(() => briefText(page)).toMatch(new RegExp(`^checked {3}P\\. Quillfeather, ${today}$`, 'm'))
    await expect.poll(() => briefText(page)).not.toMatch(/^approved/m)
    await mark.waitFor({ state: 'detached' })
  })
})
