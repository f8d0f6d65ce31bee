import * as fc from 'fast-check'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { fingerBoxes } from '../../src/app/page/sheet/size-places.ts'
import type { Box2 } from '../../src/geometry/evaluate.ts'
import { openDesk } from './desk.ts'
import { FIRST } from './open-page.ts'

const box = (x: number, y: number, w: number, h: number): Box2 => ({ min: [x, y], max: [x + w, y + h] })
const apart = (a: Box2, b: Box2) =>
  a.max[0] <= b.min[0] || b.max[0] <= a.min[0] || a.max[1] <= b.min[1] || b.max[1] <= a.min[1]
const holds = (outer: Box2, inner: Box2) =>
  ([0, 1] as const).every((k) => outer.min[k] <= inner.min[k] && outer.max[k] >= inner.max[k])

describe('where a finger finds a size', () => {
  it('is at least so large, where nothing is near', () => {
    expect(fingerBoxes([box(10, 10, 4, 2), box(100, 0, 30, 2)], 8)).toEqual([box(8, 7, 8, 8), box(100, -3, 30, 8)])
  })

  it('ends midway to a neighbour', () => {
    expect(fingerBoxes([box(0, 0, 4, 2), box(0, 4, 4, 2)], 10)).toEqual([
      { min: [-3, -4], max: [7, 3] },
      { min: [-3, 3], max: [7, 10] },
    ])
  })

  it('holds the figures and reaches into no other', () => {
    // Figures on a grid of cells of 20 × 10, each within its own cell: none overlap.
    const cells = fc.uniqueArray(fc.tuple(fc.nat(6), fc.nat(6)), { selector: ([i, j]) => `${i} ${j}`, minLength: 2 })
    const within = fc.tuple(fc.nat(9), fc.nat(4), fc.integer({ min: 1, max: 10 }), fc.integer({ min: 1, max: 5 }))
    fc.assert(
      fc.property(
        cells.chain((at) =>
          fc.tuple(fc.constant(at), fc.array(within, { minLength: at.length, maxLength: at.length })),
        ),
        fc.integer({ min: 0, max: 40 }),
        ([at, inner], least) => {
          const boxes = at.map(([i, j], k) => {
            const [x, y, w, h] = inner[k]!
            return box(20 * i + x, 10 * j + y, w, h)
          })
          const grown = fingerBoxes(boxes, least)
          grown.forEach((g, i) => {
            expect(holds(g, boxes[i]!)).toBe(true)
            for (const other of grown.slice(i + 1)) expect(apart(g, other)).toBe(true)
          })
        },
      ),
      { seed: 7, numRuns: 300 },
    )
  })
})

const desk = openDesk()
let page: Page
afterEach(async () => {
  await page?.context().close()
})

describe('a tablet', () => {
  it('gives every size a place for the finger, and takes the size beside which it touches', {
    timeout: FIRST,
  }, async () => {
    const context = await desk.browser.newContext({
      viewport: { width: 1024, height: 768 },
      hasTouch: true,
      isMobile: true,
    })
    page = await context.newPage()
    await page.goto(desk.served.address)
    await page.waitForSelector('.sheet .ink', { state: 'attached', timeout: FIRST })
    await page.waitForSelector('.hit', { state: 'attached' })
    const places = await page.$$eval('.hit', (all) =>
      all.map((h) => {
        const { x, y, width, height } = h.getBoundingClientRect()
        return { name: h.getAttribute('aria-label') ?? '', x, y, width, height }
      }),
    )
    expect(places.length).toBeGreaterThan(8)
    const boxes = places.map((p) => box(p.x, p.y, p.width, p.height))
    const wide = places.filter((p) => Math.min(p.width, p.height) >= 32)
    // A neighbour nearer than that shares what is between them; WCAG 2.2, 2.5.8 asks for 24 px of either.
    expect(wide.length).toBeGreaterThan(places.length / 2)
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1))
        expect(apart(a, { min: [b.min[0] + 0.1, b.min[1] + 0.1], max: b.max })).toBe(true)
    })
    // Beside the figures, still on their place.
    const size = places.find((p) => p.name.startsWith('Size 3.50'))!
    await page.touchscreen.tap(size.x + size.width / 2, size.y + 3)
    await expect.poll(() => page.locator('.size-field input').inputValue()).toBe('3.50')
  })
})
