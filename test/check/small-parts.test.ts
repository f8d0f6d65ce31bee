import { beforeAll, describe, expect, it } from 'vitest'
import { rules } from '../../src/check/rules/rules.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { lazySubject, onHeader } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

function raised(name: string, lines: string): number {
  const subject = lazySubject(onHeader('iso', lines), kernel)
  const found = rules.find((r) => r.name === name)!.check(subject)
  subject.free()
  return found.length
}

// Walls in proportion below 25 mm across: common practice, no source. Sizes of stock: hypodermic tube of ISO 9626 has
// walls of 0.05 to 0.3 mm on ⌀0.3 to ⌀3.4 (from memory).
describe('least walls on small parts', () => {
  it.each([
    [
      'thin-wall',
      'tube ⌀3 outside, ⌀2 inside, 8 long, axis left-right',
      'tube ⌀3 outside, ⌀2.9 inside, 8 long, axis left-right',
    ],
    [
      'thin-wall',
      'tube ⌀3 outside, ⌀2 inside, 500 long, axis left-right',
      'tube ⌀30 outside, wall 0.5, 500 long, axis left-right',
    ],
    [
      'hole-near-edge',
      'plate 6 × 4 × 0.5\nholes top: 2X ⌀1 THRU\n  2 across 4 apart, centred; centred up',
      'plate 60 × 40 × 0.5\nhole top: ⌀1 THRU\n  1 from left; centred up',
    ],
    [
      'wall-between-holes',
      'plate 8 × 5 × 0.5\nholes top: 2X ⌀1 THRU\n  2 across 1.4 apart, centred; centred up',
      'plate 60 × 40 × 3\nholes top: 2X ⌀1 THRU\n  2 across 1.4 apart, centred; centred up',
    ],
  ])('%s holds them to walls in proportion', (name, good, bad) => {
    expect(raised(name, good)).toBe(0)
    expect(raised(name, bad)).toBeGreaterThan(0)
  })
})

// A tapped hole beside a bearing bore, and a shell about a wide one, stand by the smaller hole and by 3 mm: common
// practice, no source.
describe('least walls beside large bores', () => {
  const beside = (apart: number) =>
    `plate 100 × 90 × 12\nhole A top: ⌀40 THRU\n  centred both ways\nholes B top: 3X M5 THRU\n  on ⌀${apart} bolt circle, about hole A, equal, one at 12 o'clock`
  const shell = (wall: number) => `block 120 × ${80 + 2 * wall} × 20\nhole top: ⌀80 THRU\n  centred both ways`
  it.each([
    ['wall-between-holes', beside(54), beside(46)],
    ['hole-near-edge', shell(3.5), shell(2.5)],
  ])('%s asks no share of the bore', (name, good, bad) => {
    expect(raised(name, good)).toBe(0)
    expect(raised(name, bad)).toBeGreaterThan(0)
  })
})
