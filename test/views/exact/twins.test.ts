import { describe, expect, it } from 'vitest'
import type { Vec3 } from '../../../src/geometry/vec.ts'
import { project, type Track } from '../../../src/views/exact/track.ts'
import { behindTwins } from '../../../src/views/exact/twins.ts'
import type { Frame } from '../../../src/views/view.ts'

// Source of the checks: depths along the line of sight, given with each line.

const frame: Frame = { right: [1, 0, 0], up: [0, 1, 0], toViewer: [0, 0, 1] }
const use = { faces: [], kind: 'edge', divides: true, buried: false } as const

const line = (a: Vec3, b: Vec3, buried = false): Track =>
  project({ kind: 'segment', a, b, t0: 0, t1: 1 }, frame, { ...use, buried }, 1e-6)[0]!
const circle = (r: number, z: number): Track =>
  project({ kind: 'conic', o: [0, 0, z], u: [r, 0, 0], v: [0, r, 0], t0: 0, t1: 2 * Math.PI }, frame, use, 1e-6)[0]!

const behind = (tracks: readonly Track[]) => {
  const found = behindTwins(tracks, frame.toViewer, 1e-6, 1e-7)
  return tracks.map((t) => found.has(t))
}

describe('lines behind lines with the same projection', () => {
  it('finds all but the foremost of a row, whichever way each runs', () => {
    const row = [0, 3, 1, 2].map((z, i) => (i % 2 ? line([5, 1, z], [0, 0, z]) : line([0, 0, z], [5, 1, z])))
    expect(behind(row)).toEqual([true, false, true, true])
    expect(behind([circle(4, 0), circle(4, 2), circle(3, 1)])).toEqual([true, false, false])
  })

  it('finds a line behind another though the foremost in the middle crosses both', () => {
    const slanted = line([0, 0, 9], [5, 1, -3])
    expect(behind([slanted, line([0, 0, 2], [5, 1, 2]), line([0, 0, 1], [5, 1, 1])])).toEqual([false, false, true])
  })

  it('takes none for behind that touches, crosses, lies elsewhere or has only a buried line before it', () => {
    expect(behind([line([0, 0, 1], [5, 1, 1]), line([0, 0, 1], [5, 1, 1])])).toEqual([false, false])
    expect(behind([line([0, 0, 0], [5, 1, 3]), line([0, 0, 2], [5, 1, 2])])).toEqual([false, false])
    expect(behind([line([0, 0, 1], [5, 1, 1]), line([0, 0, 0], [5, 1.001, 0])])).toEqual([false, false])
    expect(behind([line([0, 0, 1], [5, 1, 1], true), line([0, 0, 0], [5, 1, 0])])).toEqual([false, false])
  })
})
