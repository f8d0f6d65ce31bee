import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { drawnOf } from '../../src/app/page/engine/drawn.ts'
import { featureWords } from '../../src/app/page/engine/feature-words.ts'
import { look } from '../../src/app/page/engine/look.ts'
import type { Held, Seen } from '../../src/app/page/engine/messages.ts'
import { pictureOf } from '../../src/app/page/engine/solid-picture.ts'
import { centreOf } from '../../src/app/page/sheet/centre-of.ts'
import { cutReach } from '../../src/app/page/solid/cut-reach.ts'
import { broughtBy, cuttingLine } from '../../src/app/page/solid/cutting-line.ts'
import { broughtTo, cutBy, laidAnew, planeWords, stations, stepOf } from '../../src/app/page/solid/cutting-plane.ts'
import { meshCut, sectionLines } from '../../src/app/page/solid/mesh-cut.ts'
import { curvedMesh, meshOutline } from '../../src/app/page/solid/mesh-outline.ts'
import {
  between,
  boardOf,
  frameOf,
  HOME,
  isHome,
  nearer,
  onBoard,
  poseWords,
  turned,
} from '../../src/app/page/solid/pose.ts'
import { lengthOf } from '../../src/geometry/evaluate.ts'
import type { Vec3 } from '../../src/geometry/vec.ts'
import { dot } from '../../src/geometry/vec3.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import type { Part } from '../../src/part/part.ts'
import { practiceFigures } from '../../src/standards/practice-figures.ts'
import { FRAMES, ISOMETRIC } from '../../src/views/frames.ts'

const BRIEF = `part      Block
units     mm
practice  ISO

block     40 × 30 × 20
hole top: ⌀10 thru
          20 from left; 15 from front
`

let kernel: OcctKernel
let part: Part
beforeAll(async () => {
  kernel = await openKernel()
  part = compile(BRIEF, kernel).part!
}, 120_000)

const middle = () => (part.body.box.min[1] + part.body.box.max[1]) / 2
const seenIn = (frame: Held['frame'], scale = 1): Seen =>
  look(part, kernel, { frame, scale, cut: { side: 'front', at: middle() } }, () => false)
const inked = (seen: Seen, kind: string) =>
  seen.lines.filter((l) => l.kind === kind).reduce((sum, l) => sum + lengthOf(l.curve), 0)

describe('the part held', () => {
  it('is at first held as the isometric view of ISO 5456-3 has it: all axes equally shortened', () => {
    const { right, up, toViewer } = frameOf(HOME)
    for (const [a, b] of [
      [right, ISOMETRIC.right],
      [up, ISOMETRIC.up],
      [toViewer, ISOMETRIC.toViewer],
    ] as const)
      a.forEach((c, i) => {
        expect(c).toBeCloseTo(b[i]!, 12)
      })
    // √(2/3) of their true length (ISO 5456-3, closed formula)
    for (const k of [0, 1, 2] as const) expect(Math.hypot(right[k], up[k])).toBeCloseTo(Math.sqrt(2 / 3), 12)
  })

  it('keeps a right-handed view of unit axes however it is turned, and tips no farther than upright', () => {
    let pose = HOME
    for (let i = 0; i < 60; i++) {
      pose = turned(pose, 0.37, i < 30 ? 0.2 : -0.21)
      const { right, up, toViewer } = frameOf(pose)
      for (const v of [right, up, toViewer]) expect(Math.hypot(...v)).toBeCloseTo(1, 12)
      expect(dot(right, up)).toBeCloseTo(0, 12)
      expect(up[2]).toBeGreaterThanOrEqual(-1e-12)
    }
  })

  it('goes back the short way and says how it is turned', () => {
    const pose = turned(HOME, -Math.PI / 9, 0)
    expect(poseWords(pose)).toBe('Turned 20° right')
    expect(poseWords(HOME)).toBe('As on the sheet')
    expect(poseWords(turned(HOME, 0, -Math.PI / 18))).toBe('Tipped 10° back')
    const far = turned(HOME, 1.9 * Math.PI, 0)
    expect(between(far, HOME, 0.5).yaw).toBeGreaterThan(1.9 * Math.PI)
    expect(isHome(between(far, HOME, 1))).toBe(true)
  })

  it('comes nearer to the point under the hand', () => {
    const pose = nearer(HOME, 2, [10, 4])
    // What lay at (10, 4) lies there still: off + near · what it shows
    expect([pose.off[0] + pose.near * 10, pose.off[1] + pose.near * 4]).toEqual([10, 4])
  })
})

describe('the cutting plane', () => {
  const box = { min: [0, 0, 0], max: [100, 50, 20] } as const
  const axis = { of: ['hole A axis', 'hole A'], words: 'hole A', direction: [0, 0, 1], from: 0, to: 20 } as const
  const axes = [{ ...axis, point: [30, 12, 0] as Vec3 }]

  it('stops at the axes that it can go through and at the middle', () => {
    expect(stations('front', box, axes)).toEqual([
      { depth: 12, name: 'hole A' },
      { depth: 25, name: 'the middle' },
    ])
    expect(stations('right', box, axes).map((s) => s.depth)).toEqual([50, 70])
    expect(stations('top', box, axes).map((s) => s.name)).toEqual(['the middle'])
  })

  it('says where it cuts in the units of the sheet', () => {
    expect(planeWords({ side: 'front', depth: 12 }, box, axes, 'mm')).toBe('Cut through hole A, 12 mm behind the front')
    expect(planeWords({ side: 'left', depth: 12.7 }, box, axes, 'inch')).toBe('Cut .50 in from the left')
    expect(planeWords({ side: 'top', depth: 0 }, box, axes, 'mm')).toBe('Not cut; A–A lies at the top')
  })

  it('cuts nothing at either end, and takes off what lies before it', () => {
    const plane = { side: 'right', depth: 30 } as const
    expect(cutBy(plane, box)).toEqual({ side: 'right', at: 70 })
    expect(cutBy(broughtTo(plane, -3, box), box)).toBeUndefined()
    expect(cutBy(broughtTo(plane, 400, box), box)).toBeUndefined()
  })

  it('is laid from the sides that face the viewer in turn, and goes by round steps', () => {
    const first = { side: 'front', depth: 9 } as const
    const next = laidAnew(first, ISOMETRIC)
    expect(
      [next, laidAnew(next, ISOMETRIC), laidAnew(laidAnew(next, ISOMETRIC), ISOMETRIC)].map((p) => p.side),
    ).toEqual(['right', 'top', 'front'])
    expect(laidAnew(first, FRAMES.left).side).toBe('left')
    expect(stepOf('right', box, 'mm')).toBe(2)
    expect(stepOf('right', { min: [0, 0, 0], max: [76.2, 1, 1] }, 'inch')).toBeCloseTo(25.4 * 0.1, 9)
  })

  it('follows the hand along the way it goes on the slip', () => {
    // 3 px a mm along (0.6, -0.8): a hand that goes 30 px along brings it in by 10 mm, one that goes across not at all
    expect(broughtBy([1.8, -2.4], [18, -24], 3)).toBeCloseTo(10, 9)
    expect(broughtBy([1.8, -2.4], [24, 18], 3)).toBeCloseTo(0, 9)
  })
})

describe('the cutting-plane line', () => {
  it('lies where the plane leaves the part, not at the box about it', () => {
    const bracket = compile(
      'part Bracket\nunits mm\npractice ISO\nangle formed, 4 thick, inside R 4; upright 60 high, at rear; base 40 toward front; length 80\n',
      kernel,
    ).part!
    const { box, corners } = pictureOf(bracket, kernel)
    const reach = (side: 'front' | 'top' | 'right', depth: number) => cutReach({ side, depth }, box, corners)
    const wide = ({ min, max }: typeof box) => max.map((c, i) => c - min[i]!)
    // From the sizes of the brief: cut level, the upright alone is met; cut across the base, that alone.
    const level = wide(reach('top', 20))
    expect(level[0]).toBeCloseTo(80, 6)
    expect(level[1]).toBeCloseTo(4, 6)
    const across = wide(reach('front', 10))
    expect(across[0]).toBeCloseTo(80, 6)
    expect(across[2]).toBeCloseTo(4, 6)
    expect(reach('front', 10).max[2]).toBeCloseTo(box.min[2] + 4, 6)
    expect(wide(reach('right', 30)).slice(1)).toEqual([expect.closeTo(40, 6), expect.closeTo(60, 6)])
    // Not cut yet, it lies before what it will meet first.
    expect(reach('front', 0).max[2]).toBeCloseTo(box.min[2] + 4, 6)
    const board = boardOf(HOME, box, { width: 400, height: 300 })
    const line = cuttingLine({ side: 'top', depth: 20 }, box, reach('top', 20), board, practiceFigures('ISO'), 2.4)
    const [stroke] = line.strokes
    if (stroke?.curve.kind !== 'line') throw new Error('the line is straight')
    const { a, b } = stroke.curve
    const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
    const front = onBoard(board, [(box.min[0] + box.max[0]) / 2, box.max[1] - 4, box.max[2] - 20])
    expect(middle).toEqual([expect.closeTo(front[0], 6), expect.closeTo(front[1], 6)])
  })
})

describe('what a feature is called', () => {
  it('names the line of the brief, and none where it was read from a model', () => {
    const [hole] = part.features
    expect(featureWords(part).of(hole!.id)).toBe('the hole ⌀10 (line 6)')
    const read = { ...hole!, feature: { ...hole!.feature!, span: { from: 0, to: 0 } } }
    expect(featureWords({ features: [read], brief: part.brief }).of(hole!.id)).toBe('the hole ⌀10')
  })
})

describe('a middle line', () => {
  it('stands for its plane in a section as in a view', () => {
    const drawn = drawnOf(
      compile(
        'part Block\nunits mm\npractice ISO\nviews front; section A-A\nblock 60 × 40 × 30\nhole top: ⌀10 ↧ 12\n          centred both ways\nnotch bottom, right: square, 10 wide, 20 deep\n          centred\n',
        kernel,
      ),
      0,
    )
    expect(drawn.sections.map((s) => s.view)).toEqual(['section A-A'])
    const found = drawn.sheet!.items.flatMap((item, i) =>
      item.item === 'stroke' && item.kind === 'centre' && item.tie?.view === 'section A-A' ? [centreOf(drawn, i)] : [],
    )
    expect(found.length).toBeGreaterThan(0)
    const { toViewer } = FRAMES[drawn.sections[0]!.side]
    for (const centre of found) {
      // The plane is seen edge-on in its view.
      expect(dot(centre!.plane!.normal, toViewer)).toBeCloseTo(0, 12)
      expect(Math.hypot(...centre!.plane!.normal)).toBeCloseTo(1, 12)
    }
  })
})

describe('the cut at rest', () => {
  it('has the outline and the area that the closed formula gives, section lines ending on the outline', () => {
    // A 40 × 20 block with a ⌀10 hole cut through its axis: two rectangles 15 × 20.
    const seen = seenIn(FRAMES.front)
    expect(inked(seen, 'cut')).toBeCloseTo(2 * 2 * (15 + 20), 6)
    const { angle, spacing } = seen.hatching!
    expect(angle).toBe(45)
    expect(inked(seen, 'hatching') * spacing).toBeGreaterThan(0.97 * 600)
    expect(inked(seen, 'hatching') * spacing).toBeLessThan(1.03 * 600)
    const { min, max } = part.body.box
    const [x0, x1, z0, z1] = [min[0], max[0], min[2], max[2]]
    const c = (x0 + x1) / 2
    for (const { kind, curve } of seen.lines) {
      if (kind !== 'hatching' || curve.kind !== 'line') continue
      expect(Math.abs(curve.b[1] - curve.a[1])).toBeCloseTo(Math.abs(curve.b[0] - curve.a[0]), 6)
      for (const [x, z] of [curve.a, curve.b]) {
        const off = Math.min(...[x0, c - 5, c + 5, x1].map((e) => Math.abs(x - e)), Math.abs(z - z0), Math.abs(z - z1))
        expect(off).toBeLessThan(1e-6)
        // None in the hole.
        expect(Math.abs(x - c)).toBeGreaterThan(5 - 1e-6)
      }
    }
  })

  it('lies in the plane of the cut when it is seen aslant, and is not seen from behind', () => {
    const seen = seenIn(ISOMETRIC)
    // 45° in the plane x–z of an isometric view: along x + z or x − z (closed formula)
    for (const { kind, curve } of seen.lines) {
      if (kind !== 'hatching' || curve.kind !== 'line') continue
      const [dx, dy] = [curve.b[0] - curve.a[0], curve.b[1] - curve.a[1]]
      const along = [ISOMETRIC.right[0] + ISOMETRIC.right[2], ISOMETRIC.up[0] + ISOMETRIC.up[2]] as const
      expect(Math.abs(dx * along[1] - dy * along[0])).toBeLessThan(1e-6)
    }
    expect(seen.lines.some((l) => l.kind === 'hatching')).toBe(true)
    const behind = seenIn(FRAMES.rear)
    expect(behind.lines.filter((l) => l.kind === 'hatching' || l.kind === 'cut')).toEqual([])
  })

  it('keeps the names of the edges that are left of the solid', () => {
    const whole = look(part, kernel, { frame: ISOMETRIC, scale: 1 }, () => false)
    const known = new Set(part.body.edges.map((e) => e.id))
    const rear = part.body.edges.find(
      (e) => e.curve.kind === 'line' && e.curve.a[1] > middle() && e.curve.b[1] > middle() && e.curve.a[2] > 0,
    )!
    const cut = seenIn(ISOMETRIC)
    for (const { edges } of [...whole.lines, ...cut.lines]) for (const e of edges) expect(known.has(e)).toBe(true)
    expect(whole.lines.some((l) => l.edges.length > 0)).toBe(true)
    const faces = new Set(rear.faces)
    expect(cut.lines.some((l) => l.edges.some((e) => part.body.edges[e]!.faces.some((f) => faces.has(f))))).toBe(true)
  })
})

describe('the cut in motion', () => {
  it('is the same in triangles, to their coarseness', () => {
    const solid = pictureOf(part, kernel)
    const pieces = meshCut(solid.corners, FRAMES.front.toViewer, -middle())
    let border = 0
    for (let i = 0; i < pieces.length; i += 6)
      border += Math.hypot(pieces[i + 3]! - pieces[i]!, pieces[i + 5]! - pieces[i + 2]!)
    // within the sag of the triangles, a part in 2000 of the size on each wall of the hole
    expect(border).toBeGreaterThan(140 - 0.2)
    expect(border).toBeLessThan(140 + 0.2)
    const lines = sectionLines(pieces, FRAMES.front, { angle: 45, spacing: 1, offset: 0.37 })
    let length = 0
    for (let i = 0; i < lines.length; i += 6)
      length += Math.hypot(lines[i + 3]! - lines[i]!, lines[i + 5]! - lines[i + 2]!)
    expect(length).toBeGreaterThan(0.98 * 600)
    expect(length).toBeLessThan(1.02 * 600)
  })

  it('shows where round walls turn away: two lines along a hole seen from the side', () => {
    const solid = pictureOf(part, kernel)
    const curved = curvedMesh(solid.corners, solid.faces)
    const pieces = meshOutline(curved, [0, -1, 0])
    let length = 0
    const c = (part.body.box.min[0] + part.body.box.max[0]) / 2
    for (let i = 0; i < pieces.length; i += 6) {
      length += Math.hypot(...[0, 1, 2].map((k) => pieces[i + 3 + k]! - pieces[i + k]!))
      expect(Math.abs(Math.abs(pieces[i]! - c) - 5)).toBeLessThan(0.05)
    }
    expect(length).toBeCloseTo(2 * 20, 1)
  })

  it('knows the axis of the hole, from end to end', () => {
    const { axes } = pictureOf(part, kernel)
    const hole = axes.find((a) => a.of.some((id) => id.startsWith('hole')))!
    expect(Math.abs(hole.direction[2])).toBeCloseTo(1, 12)
    expect(hole.to - hole.from).toBeCloseTo(20, 3)
  })
})
