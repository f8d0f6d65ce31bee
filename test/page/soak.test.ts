import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { FIRST, openBrowser, openPage, type Served, servePage } from './open-page.ts'

/** Edits of one sitting. */
const EDITS = 300

let browser: Browser
let served: Served
beforeAll(async () => {
  browser = await openBrowser()
  served = await servePage()
}, FIRST)
afterAll(async () => {
  await browser?.close()
  await served?.close()
})

it(`takes ${EDITS} edits with flat memory`, { timeout: 600_000 }, async () => {
  const page = await openPage(browser, served.address)
  await page.evaluate(() => {
    const post = Worker.prototype.postMessage
    const heard = new WeakSet<Worker>()
    Worker.prototype.postMessage = function (this: Worker, message: unknown) {
      if (!heard.has(this)) {
        heard.add(this)
        this.addEventListener('message', ({ data }: MessageEvent<{ memory?: number }>) => {
          if (data.memory !== undefined) Object.assign(globalThis, { kernelMemory: data.memory })
        })
      }
      Reflect.apply(post, this, [message])
    }
  })
  const session = await page.context().newCDPSession(page)
  /** Bytes of script objects and elements in the page that are still in use. */
  const used = async () => {
    await session.send('HeapProfiler.collectGarbage')
    const heap = (await session.send('Runtime.getHeapUsage')) as { usedSize: number }
    const { nodes } = (await session.send('Memory.getDOMCounters')) as { nodes: number }
    const kernel = await page.evaluate(() => (globalThis as unknown as { kernelMemory: number }).kernelMemory)
    return { heap: heap.usedSize, nodes, kernel }
  }
  await page.locator('.cm-line', { hasText: 'length 3.00' }).first().click()
  await page.keyboard.press('End')
  const edit = async (i: number) => {
    await page.keyboard.press(i % 2 === 0 ? '5' : 'Backspace')
    await page.waitForSelector('main[aria-busy=false]', { timeout: 60_000 })
  }
  for (let i = 0; i < 60; i++) await edit(i)
  const early = await used()
  for (let i = 60; i < EDITS; i++) await edit(i)
  const late = await used()
  // A history of 240 single characters and what the browser keeps about them, but no sheets, parts or elements.
  expect(late.heap - early.heap).toBeLessThan(4 * 2 ** 20)
  expect(late.kernel - early.kernel).toBeLessThan(64 * 2 ** 20)
  expect(late.nodes).toBeLessThan(early.nodes * 1.3)
  await expect.poll(() => page.locator('.margin li.must-change').count()).toBe(0)
})
