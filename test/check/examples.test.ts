import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { checkDrawing } from '../../src/check/check-drawing.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { lazySubject } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

/**
 * All that the rules say about the twelve examples. Each stands because a strict checker would leave it standing; the
 * argument for each is in docs/check.md.
 */
const standing: Readonly<Record<string, readonly string[]>> = {
  'base-plate': ['dowel-distance', 'rough-for-tolerance', 'withdrawn-standard'],
  cover: ['datum-unstable', 'withdrawn-standard'],
  'flanged-bushing': ['shoulder-undercut', 'withdrawn-standard'],
  'slotted-strap': ['wider-than-general'],
  'spacer-ring': ['coating-on-fits', 'withdrawn-standard'],
  'stepped-shaft': ['shoulder-undercut', 'shoulder-undercut'],
  'v-block': ['withdrawn-standard'],
}

const names = readdirSync('examples')
  .filter((f) => f.endsWith('.brief'))
  .map((f) => f.replace('.brief', ''))

describe.each(names)('the rules on %s', (name) => {
  it('say nothing that a strict checker would cross out, and nothing that must change', () => {
    const subject = lazySubject(readFileSync(`examples/${name}.brief`, 'utf8'), kernel)
    const marks = checkDrawing(subject)
    subject.free()
    expect(marks.map((m) => m.rule).sort()).toEqual(standing[name] ?? [])
    expect(marks.filter((m) => m.weight === 'must change')).toEqual([])
  })
})

it('offers for a shoulder what the practice of the sheet writes (DIN 509 is not called up on an inch sheet)', () => {
  const offers = ['stepped-shaft', 'flanged-bushing'].map((name) => {
    const subject = lazySubject(readFileSync(`examples/${name}.brief`, 'utf8'), kernel)
    const offer = checkDrawing(subject).find((m) => m.rule === 'shoulder-undercut')?.expected
    subject.free()
    return offer
  })
  expect(offers).toEqual([expect.stringContaining('.03 MAX'), expect.stringContaining('DIN 509-F')])
})
