import { readdirSync, readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { endOf, lengthOf, startOf } from '../../src/geometry/evaluate.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import type { Part } from '../../src/part/part.ts'
import { practiceFigures } from '../../src/standards/practice-figures.ts'
import { groupedByCarrier } from '../../src/views/conventions/carrier.ts'
import { paperLines } from '../../src/views/dashes/paper-lines.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import { exactView } from '../../src/views/exact/exact-view.ts'
import { FRAMES, ISOMETRIC } from '../../src/views/frames.ts'
import { kernelExactView, kernelProjector } from '../../src/views/oracle.ts'
import type { ExactView, ViewLine } from '../../src/views/view.ts'
import { told } from './told.ts'

const folder = new URL('../../examples/', import.meta.url)
const names = readdirSync(folder).filter((f) => f.endsWith('.brief'))
let kernel: OcctKernel
const parts = new Map<string, Part>()
beforeAll(async () => {
  kernel = await openKernel()
  for (const name of names) parts.set(name, buildPart(readBrief(readFileSync(new URL(name, folder), 'utf8')), kernel))
})
afterAll(() => {
  for (const part of parts.values()) kernel.free(part.solid)
})

const outline = (view: ExactView, visible: boolean) =>
  view.curves.filter((c) => c.visible === visible && c.kind !== 'smooth').reduce((sum, c) => sum + lengthOf(c.curve), 0)

const sides = [
  ['front', FRAMES.front],
  ['top', FRAMES.top],
  ['right', FRAMES.right],
  ['left', FRAMES.left],
  ['isometric', ISOMETRIC],
] as const

/**
 * Hidden length, mm, that the kernel's algorithm adds where there is none. Shaft from above: it hides the start of the
 * keyseat's rounded rims, x 57.2289 to 57.2770 and 82.6770 to 82.6924, though the upper rim lies open to the eye (the
 * shaft is cut away above it) and covers the lower one: the part is the same above and below its axis.
 */
const flaws: Readonly<Record<string, number>> = {
  'stepped-shaft.brief top': 57.277 - 57.228858 + 82.692393 - 82.677,
}

/** Views a drafter would draw of the example parts: ASME Y14.3 and ISO 128-3, customs of the trade. */
const drawn: Readonly<Record<string, readonly string[]>> = {
  'base-plate.brief': ['front', 'top'],
  'clevis.brief': ['front', 'top', 'left'],
  'cover.brief': ['front', 'section A-A'],
  'flanged-bushing.brief': ['left', 'section A-A'],
  'gusset.brief': ['front'],
  'sensor-mount.brief': ['front', 'top', 'right'],
  'slotted-strap.brief': ['top'],
  'spacer-ring.brief': ['section A-A'],
  'stepped-shaft.brief': ['front', 'section A-A'],
  't-nut.brief': ['front', 'top'],
  'v-block.brief': ['front', 'right'],
  'vent-bracket.brief': ['front', 'top', 'right'],
}

describe.each(names)('%s', (name) => {
  it('covers the same visible and hidden outline as the kernel’s own algorithm, to a millionth of the part', () => {
    const part = parts.get(name)!
    const { min, max } = part.body.box
    const size = Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2])
    for (const [side, frame] of sides) {
      const ours = exactView(part.body, frame)
      const theirs = kernelExactView(kernel, part.solid, part.body, frame)
      const flaw = flaws[`${name} ${side}`] ?? 0
      expect(Math.abs(outline(ours, true) - outline(theirs, true))).toBeLessThanOrEqual(1e-6 * size)
      expect(Math.abs(outline(ours, false) + flaw - outline(theirs, false))).toBeLessThanOrEqual(1e-6 * size)
    }
  })

  it('gives the same finished sheet of views whichever exact step it stands on', () => {
    const part = parts.get(name)!
    const shape = (set: ReturnType<typeof drawViews>) =>
      set.views.map((v) => {
        const exact = v.lines.filter((l) => l.curve.kind !== 'spline')
        // The kernel breaks splines at places of its own: there the whole length counts.
        const splines = v.lines.filter((l) => l.curve.kind === 'spline')
        const length = splines.reduce((sum, l) => sum + lengthOf(l.curve), 0)
        return [v.id, exact.map((l) => `${l.kind} ${told(l.curve)}`).sort(), length.toFixed(3)]
      })
    expect(shape(drawViews(part, kernel))).toEqual(shape(drawViews(part, kernel, kernelProjector(kernel))))
  })

  it('draws no place twice, nothing without length, and fits every dash', () => {
    const part = parts.get(name)!
    const figures = practiceFigures(part.brief.header.practice)
    for (const v of drawViews(part, kernel).views) {
      const lines: readonly ViewLine[] = v.lines.filter((l) => !l.covered)
      expect(Math.min(...lines.map((l) => lengthOf(l.curve)))).toBeGreaterThan(1e-4)
      for (const { carrier, members } of groupedByCarrier(lines, 1e-6)) {
        if (carrier.kind !== 'line') continue
        const sorted = [...members].sort((a, b) => a.on.from - b.on.from)
        for (const [i, m] of sorted.slice(1).entries()) expect(m.on.from).toBeGreaterThan(sorted[i]!.on.to - 1e-5)
      }
      for (const l of paperLines(v.lines, 1, figures)) {
        if (!l.dashes) continue
        expect(l.dashes.reduce((a, b) => a + b)).toBeCloseTo(lengthOf(l.curve), 6)
        expect(['hidden', 'centre', 'phantom']).toContain(l.kind)
      }
      const closed = lines.filter((l) => l.curve.kind === 'line' && startOf(l.curve) === endOf(l.curve))
      expect(closed).toEqual([])
    }
  })

  it('needs the views that a drafter would draw', () => {
    const wanted = drawn[name]
    const set = drawViews(parts.get(name)!, kernel)
    expect(set.reasons.length).toBeGreaterThan(0)
    expect(set.views.at(-1)!.id).toBe('pictorial')
    if (wanted) expect(set.views.slice(0, -1).map((v) => v.id)).toEqual(wanted)
  })
})
