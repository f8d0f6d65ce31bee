import { expect, it } from 'vitest'
import { openDesk, writeBrief } from './desk.ts'
import { briefText, FIRST, openPage } from './open-page.ts'

const desk = openDesk()

it('changes a taper where it stands, by a rate and nothing else', { timeout: FIRST }, async () => {
  const page = await openPage(desk.browser, desk.served.address)
  await writeBrief(page, 'units mm\npractice ISO\nturned axis left-right\n  nose ⌀20 tapered 1:5, 40 long\n')
  const taper = page.locator('.hit[aria-label*="1:5"]').first()
  await taper.waitFor({ state: 'attached', timeout: 120_000 })
  await taper.focus()
  await page.keyboard.press('Enter')
  const field = page.locator('.size-field input')
  await expect.poll(() => field.inputValue()).toBe('1:5')
  await field.fill('45')
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator('.size-field [role=alert]').textContent()).toContain('such as 1:10')
  await field.fill('1:8')
  await page.keyboard.press('Enter')
  await page.locator('.hit[aria-label*="1:8"]').first().waitFor({ state: 'attached', timeout: 120_000 })
  await expect.poll(() => briefText(page)).toContain('nose ⌀20 tapered 1:8, 40 long')
  await page.context().close()
})
