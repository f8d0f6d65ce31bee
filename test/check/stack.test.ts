import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { joined } from '../../src/check/stack/joined.ts'
import { addUp, isObstacle, runOf, type StackUp, stacksOf } from '../../src/check/stack/stack-up.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { lazySubject, onHeader } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

function withParts<T>(texts: readonly string[], use: (...subjects: ReturnType<typeof lazySubject>[]) => T): T {
  const subjects = texts.map((text) => lazySubject(text, kernel))
  try {
    for (const s of subjects)
      expect([...s.brief.marks, ...s.part.marks].filter((m) => m.weight === 'must change')).toEqual([])
    return use(...subjects)
  } finally {
    for (const s of subjects) s.free()
  }
}

/** The stacks of a brief, each of which must be found. */
function ups(text: string): StackUp[] {
  return withParts([text], (s) =>
    stacksOf(s!).map(({ up }) => {
      if (isObstacle(up)) throw new Error(up.text)
      return up
    }),
  )
}

const example = (name: string, ...stacks: string[]) =>
  `${readFileSync(`examples/${name}.brief`, 'utf8')}\n${stacks.map((s) => `stack     ${s}\n`).join('')}`

describe('the loop of a stack', () => {
  // ISO 2768-1 table 1, class m: over 120 to 400 ±0.5, over 6 to 30 ±0.2. By hand: (240 − 200)/2 − 14/2 = 13,
  // (0.5 + 0.5)/2 + 0.2/2 = 0.6; root-sum-square √(0.25² + 0.25² + 0.1²).
  it('counts halves where holes stand evenly about the middle, and the radius at an edge', () => {
    const [up] = ups(example('base-plate', 'web: hole A edge to left'))
    expect(up!.result.nominal).toBeCloseTo(13, 9)
    expect(up!.result.worstCase.min).toBeCloseTo(12.4, 9)
    expect(up!.result.worstCase.max).toBeCloseTo(13.6, 9)
    expect(up!.result.rootSumSquare.max - 13).toBeCloseTo(Math.hypot(0.25, 0.25, 0.1), 9)
    expect(up!.links.map((l) => [l.name, l.sensitivity])).toEqual([
      ['240', 0.5],
      ['200', -0.5],
      ['14', -0.5],
    ])
    expect(up!.notes.join()).toMatch(/centred/)
  })

  // The title block's .XX ±.01 at both sizes from the collar: 1.38 + 6.00 = 7.38 ± .02 inch.
  it('runs over the face that lengths are counted from, by names of shoulders', () => {
    const [up] = ups(example('stepped-shaft', 'whole: nose right face to left left face'))
    expect(up!.result.nominal / 25.4).toBeCloseTo(7.38, 9)
    expect(up!.result.worstCase.max / 25.4).toBeCloseTo(7.4, 9)
    expect(up!.links.map((l) => l.name)).toEqual(['1.38', '6.00'])
  })

  // ASME Y14.5-2018 7.2: basic sizes locate the zone exactly; the axis lies anywhere in it, ⌀0.4 about the true place.
  // 70 − 57.5 − 4.5 = 8; the disc's radius strays by 0.25, the hole's by 0.1, the axis by 0.2.
  it('takes basic sizes as exact and lets the feature stray within its zone', () => {
    const [up] = ups(example('cover', 'rim: hole A edge to rim edge, up-down'))
    expect(up!.result.nominal).toBeCloseTo(8, 6)
    expect(up!.result.worstCase.min).toBeCloseTo(8 - 0.25 - 0.1 - 0.2, 6)
    expect(up!.links.filter((l) => l.of === 'zone').map((l) => [l.name, l.upper])).toEqual([['zone of hole A', 0.2]])
  })

  // ASME Y14.5-2018 section 5, resultant condition of a hole at MMC: largest hole 9.2 + zone 0.4 + bonus 0.4 = 10, its
  // edge up to 5 from the true place; the disc's radius at its least 69.75: 69.75 − 57.5 − 5 = 7.25.
  it('adds the bonus of a material condition where that is asked, and says how much it leaves out', () => {
    const [without] = ups(example('cover', 'rim: hole A edge to rim edge, up-down'))
    expect(without!.notes.join()).toMatch(/bonus of hole A, up to ±0\.2 mm, is not added/)
    const [up] = ups(example('cover', 'rim: hole A edge to rim edge, up-down, with bonus'))
    expect(up!.result.worstCase.min).toBeCloseTo(7.25, 6)
    expect(up!.links.map((l) => l.name)).toContain('bonus of hole A')
    expect(up!.notes.join()).not.toMatch(/bonus/)
  })

  // The oracle is the solid built again with every size at a limit: no loop, no slopes.
  it('comes to what the solids at the limits of its sizes show', () => {
    const brief = (length: number, from: number, hole: number, floor: number) =>
      onHeader(
        'iso',
        [
          `block     ${length} × 50 × 30`,
          `hole A    top: ⌀${hole} ↧ 12, flat bottom`,
          `          ${from} from left; centred up`,
          `step      top right: ${floor} from right, 10 from top`,
          'stack     land: hole A edge to step 1 right',
        ].join('\n'),
      )
    const land = (text: string) =>
      withParts([text], ({ part }) => {
        const hole = part.body.faces.find((f) => f.surface.kind === 'cylinder')!.surface
        const step = part.data.find((d) => d.id === 'step 1 right' && d.kind === 'plane')!
        if (hole.kind !== 'cylinder') throw new Error('no hole')
        return Math.abs(step.point[0] - hole.axes.origin[0]) - hole.r
      })
    const [up] = ups(brief(80, 20, 10, 25))
    // ISO 2768-1 class m: 80 ±0.3, 20 ±0.2, 10 ±0.2, 25 ±0.2.
    const all = [-1, 1].flatMap((a) =>
      [-1, 1].flatMap((b) =>
        [-1, 1].flatMap((c) => [-1, 1].map((d) => brief(80 + 0.3 * a, 20 + 0.2 * b, 10 + 0.2 * c, 25 + 0.2 * d))),
      ),
    )
    const lands = all.map(land)
    expect(up!.result.worstCase.min).toBeCloseTo(Math.min(...lands), 6)
    expect(up!.result.worstCase.max).toBeCloseTo(Math.max(...lands), 6)
  })

  // x = R cos 30°, dx = cos 30° dR: the slope of a projection.
  it('counts a bolt circle by its slope, and says that it is to first order', () => {
    const [up] = ups(
      onHeader(
        'iso',
        "disc      ⌀140 × 16\nholes A   front: 6X ⌀9 THRU\n          on ⌀100 bolt circle, equal, one at 3 o'clock\nhole B    front: ⌀20 THRU\n          centred both ways\nstack     reach: hole B to hole A, up-down",
      ),
    )
    const circle = up!.links.find((l) => l.name === '100')!
    expect(Math.abs(circle.sensitivity)).toBeCloseTo(Math.sin(Math.PI / 3) / 2, 4)
    expect(up!.notes.join()).toMatch(/first order/)
  })

  it('says what stops it', () => {
    const stopped = (stack: string) =>
      withParts([onHeader('iso', `block     80 × 50 × 30\n${stack}`)], (s) =>
        stacksOf(s!).map(({ up }) => (isObstacle(up) ? up.text : 'found')),
      )
    expect(stopped('stack     a: left to top')).toEqual([expect.stringMatching(/do not say along which way/)])
    expect(stopped('stack     a: left to left')).toEqual([expect.stringMatching(/one and the same/)])
    expect(stopped('stack     a: left to right')).toEqual(['found'])
  })

  it('marks a size whose tolerance nobody knows, and takes it as exact', () => {
    const [up] = ups(onHeader('iso', 'plate     80 × 50 × 4 STK\nstack     a: bottom to top'))
    expect(up!.result.worstCase).toEqual({ min: up!.result.nominal, max: up!.result.nominal })
    expect(up!.notes.join()).toMatch(/No tolerance is known for 4/)
  })
})

describe('two parts that meet', () => {
  const cup = onHeader(
    'iso',
    'block     60 × 60 × 30\npocket    top: 40 across × 40 up × 20 +0.1 -0.0 deep, corners R5\n          centred both ways\nstack     depth: top to pocket 1 floor',
  )
  const lid = onHeader('iso', 'block     30 × 30 × 19.8 ±0.05\nstack     height: bottom to top')

  // By hand: 20 +0.1/0 less 19.8 ±0.05 leaves 0.2 + 0.1 + 0.05 = 0.35 at most, 0.2 − 0.05 = 0.15 at least.
  it('leaves the gap of a block in a pocket, face on face', () => {
    withParts([cup, lid], (a, b) => {
      const run = joined({ drawing: a!, file: 'cup' }, { drawing: b!, file: 'lid' })
      if (isObstacle(run)) throw new Error(run.text)
      const up = addUp(runOf(a!, 0).said, run, {})
      expect(up.result.nominal).toBeCloseTo(0.2, 9)
      expect(up.result.worstCase.min).toBeCloseTo(0.15, 9)
      expect(up.result.worstCase.max).toBeCloseTo(0.35, 9)
    })
  })

  // ISO 286-2: ⌀20 H7 is +0.021/0, ⌀20 f7 −0.020/−0.041: greatest clearance 0.062, half of it to either side.
  it('lets a pin stand off the middle by half of its play', () => {
    const holder = onHeader(
      'iso',
      'block     60 × 60 × 30\nhole A    top: ⌀20 H7 THRU\n          30 ±0.1 from left; centred up\nstack     seat: left to hole A',
    )
    const pin = onHeader(
      'iso',
      'turned    axis up-down\n          pin   ⌀20 f7, 30 long\n          head  ⌀40, 10 long\nstack     head: pin to head edge, left-right',
    )
    withParts([holder, pin], (a, b) => {
      const run = joined({ drawing: a!, file: 'holder' }, { drawing: b!, file: 'pin' })
      if (isObstacle(run)) throw new Error(run.text)
      const play = run.links.find((l) => l.of === 'play')!
      expect(play.upper).toBeCloseTo(0.031, 6)
      // 30 and 20 to the rim of the head; ISO 2768-1 class m gives ⌀40 ±0.3.
      const up = addUp(runOf(a!, 0).said, run, {})
      expect(up.result.nominal).toBeCloseTo(50, 9)
      expect(up.result.worstCase.max).toBeCloseTo(50 + 0.1 + 0.031 + 0.15, 6)
    })
  })
})
