import type { Page } from 'playwright-core'
import { openBrowser, servePage } from '../test/page/open-page.ts'

/**
 * The page in the browser, in milliseconds: from opening to the first sheet, and from a keystroke to the painted
 * sheet. Each keystroke changes a size of the solid, so nothing that was made before can be used again.
 */
const KEYSTROKES = Number(process.env.KEYSTROKES ?? 15)
/** Keystrokes before the counted ones, while the engine's code is still being compiled. */
const WARMING = 5

const PLATE = `part      Hole plate
units     mm
practice  ISO, first angle
plate     320 × 200 × 10
holes     top: 40X ⌀9 THRU
          8 across 36 apart, centred; 5 up 36 apart, centred
`

const median = (all: readonly number[]) => [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)]!

interface Timed {
  keyAt?: number
  paintedAfter?: number
}

/** Notes in the page when a key went down and when the sheet that followed was on the screen. */
function watch(): void {
  const timed = globalThis as unknown as Timed
  addEventListener(
    'keydown',
    (event) => Object.assign(timed, { keyAt: event.timeStamp, paintedAfter: undefined }),
    true,
  )
  addEventListener('sheetpainted', () =>
    requestAnimationFrame(() =>
      setTimeout(() => {
        if (timed.keyAt !== undefined) timed.paintedAfter ??= performance.now() - timed.keyAt
      }),
    ),
  )
}

async function strokes(page: Page, line: string): Promise<number[]> {
  await page.locator('.cm-line', { hasText: line }).first().click()
  // Twice: the first ends at the row where the slip's width breaks the line.
  await page.keyboard.press('End')
  await page.keyboard.press('End')
  const times: number[] = []
  for (let i = 0; i < KEYSTROKES + WARMING; i++) {
    await page.keyboard.press(i % 2 === 0 ? '5' : 'Backspace')
    await page.waitForFunction(() => (globalThis as unknown as Timed).paintedAfter !== undefined, null, {
      timeout: 60_000,
    })
    times.push((await page.evaluate(() => (globalThis as unknown as Timed).paintedAfter))!)
  }
  return times.slice(WARMING)
}

async function run(): Promise<void> {
  const served = await servePage()
  const browser = await openBrowser()
  try {
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage()
    await page.addInitScript(watch)
    const say = (what: string, ms: number) => console.log(`${what.padEnd(44)} ${ms.toFixed(0)} ms`)
    /** The least is near what a machine with nothing else to do takes. */
    const sayAll = (what: string, all: readonly number[]) => {
      say(`${what}, median of ${all.length}`, median(all))
      say(`${what}, least`, Math.min(...all))
    }
    const opening = async () => {
      const start = performance.now()
      await page.goto(served.address)
      await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: 90_000 })
      return performance.now() - start
    }
    say('first sheet, cold', await opening())
    await page.waitForSelector('main[aria-busy=false]', { timeout: 90_000 })
    await page.waitForTimeout(1500)
    say('first sheet, opened again', await opening())
    await page.waitForSelector('main[aria-busy=false]', { timeout: 90_000 })
    await page.waitForTimeout(1500)
    sayAll('keystroke to sheet, bracket', await strokes(page, 'length 3.00'))
    await page.locator('.cm-content').click()
    await page.keyboard.press('Control+a')
    await page.keyboard.insertText(PLATE)
    await page.waitForSelector('main[aria-busy=false]', { timeout: 90_000 })
    await page.waitForTimeout(1500)
    sayAll('keystroke to sheet, 40 holes', await strokes(page, '320 × 200 × 10'))
  } finally {
    await browser.close()
    await served.close()
  }
}

await run()
