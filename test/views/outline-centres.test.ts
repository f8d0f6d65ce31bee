import { beforeAll, describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import { toldAll } from './told.ts'

// Centres of arcs that locate something are marked: ASME Y14.2, ISO 128-2 (from memory); of which arcs, and how long the
// bare cross is, is common practice, no source.

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

function centresOf(lines: string): string[] {
  const part = buildPart(readBrief(`units mm\npractice ISO, first angle\n${lines}`), kernel)
  expect(part.marks.filter((m) => m.weight === 'must change')).toEqual([])
  const view = drawViews(part, kernel).views[0]!
  kernel.free(part.solid)
  return toldAll(view.lines.filter((l) => l.kind === 'centre'))
}

describe('an outline', () => {
  const strap = (end: string) => `outline 12 thick, face front\n  right 100; ${end}; left 100; close\n`

  it('has crossed lines at the centre of a round end', () => {
    // R10 about 100, 10: arms of 0.06 R, their overruns come on paper.
    const end = 'arc R10 to 100 across, 20 up, turning left'
    expect(centresOf(strap(end))).toEqual(['centre line 100,9.4 100,10.6', 'centre line 99.4,10 100.6,10'])
  })

  it('has none where a hole stands there with its own', () => {
    const end = 'arc R10 to 100 across, 20 up, turning left'
    const hole = 'hole front: ⌀8 THRU\n  100 from left; 10 from bottom\n'
    expect(centresOf(strap(end) + hole)).toEqual(['centre line 100,6 100,14', 'centre line 96,10 104,10'])
  })

  it('has them at an arc of more than a quarter that meets its neighbours at an angle', () => {
    // R12 over a chord of 20: half angle asin(10/12) = 56.4°, turn 112.9°; centre √(144 − 100) = 6.63 inside.
    const [x, y, arm] = [100 - Math.sqrt(44), 10, 0.06 * 12]
    const told = (n: number) => String(Math.round(n * 1e6) / 1e6)
    expect(centresOf(strap('arc R12 to 100 across, 20 up, turning left'))).toEqual(
      [
        `centre line ${told(x - arm)},${y} ${told(x + arm)},${y}`,
        `centre line ${told(x)},${told(y - arm)} ${told(x)},${told(y + arm)}`,
      ].sort(),
    )
  })

  it('has none at corners that are rounded', () => {
    expect(centresOf(strap('up 12; arc R8 to 92 across, 20 up, turning left').replace('left 100', 'left 92'))).toEqual(
      [],
    )
  })
})
