import { describe, expect, test } from 'vitest'
import { deviationOf, fromLimits, type Link, plusMinus } from '../../src/tolerance/stack/link.ts'
import { findLoop, type Located } from '../../src/tolerance/stack/loop.ts'
import { keeps, stack } from '../../src/tolerance/stack/stack.ts'
import { tighten } from '../../src/tolerance/stack/tighten.ts'

describe('textbook stack-ups', () => {
  // Budynas, Nisbett, Shigley's Mechanical Engineering Design, chapter 1, example on a shouldered screw with three hollow
  // parts under its nut (data and answers from memory): gap w = a − b − c − d;
  // w = .005 ± .010, so −.005 to .015; for w ≥ .003 the mean must be .013, d = .867; statistical width ± .006.
  const screw = (d: number): Link[] => [
    plusMinus('a, screw to shoulder', 1.75, 0.003),
    plusMinus('b, first sleeve', 0.75, 0.001, -1),
    plusMinus('c, washer', 0.12, 0.005, -1),
    plusMinus('d, second sleeve', d, 0.001, -1),
  ]
  test('shouldered screw: worst case, root-sum-square, contributions', () => {
    const found = stack(screw(0.875))
    expect(found.nominal).toBeCloseTo(0.005, 12)
    expect(found.worstCase.min).toBeCloseTo(-0.005, 12)
    expect(found.worstCase.max).toBeCloseTo(0.015, 12)
    expect(found.rootSumSquare.max - found.middle).toBeCloseTo(0.006, 12)
    expect(found.deviation).toBeCloseTo(0.002, 12)
    // Squares 9 : 1 : 25 : 1 of 36.
    expect(found.contributions.map((each) => each.link.name[0])).toEqual(['c', 'a', 'b', 'd'])
    expect(found.contributions.map((each) => Math.round(each.varianceShare * 36))).toEqual([25, 9, 1, 1])
    expect(found.contributions[0]!.worstShare).toBeCloseTo(0.5, 12)
  })
  test('shouldered screw: the gap of .003 wants the middle at .013, d = .867', () => {
    const found = stack(screw(0.875))
    expect(keeps(found.worstCase, { min: 0.003 })).toBe(false)
    expect(stack(screw(0.867)).worstCase.min).toBeCloseTo(0.003, 12)
    expect(keeps(stack(screw(0.867)).worstCase, { min: 0.003 })).toBe(true)
  })
  test('shouldered screw: what to tighten for a gap of at least −.002', () => {
    const advice = tighten(stack(screw(0.875)), { min: -0.002 }, 'worst case')
    expect(advice.keeps).toBe(false)
    expect(advice.room).toBeCloseTo(0.007, 12)
    // c alone: .007 − (.003 + .001 + .001) = .002.
    expect(advice.single[0]!.link.name).toBe('c, washer')
    expect(advice.single[0]!.half).toBeCloseTo(0.002, 12)
    // a alone: .007 − .007 = 0; b and d cannot do it.
    expect(advice.single[1]!.half).toBeCloseTo(0, 12)
    expect(advice.single[2]!.half).toBeUndefined()
    expect(advice.together).toBeCloseTo(0.7, 12)
    expect(advice.sentence).toBe('Tighten c, washer from ±0.005 to ±0.002.')
    expect(tighten(stack(screw(0.875)), { min: -0.002 }, 'root-sum-square').keeps).toBe(true)
    const outside = tighten(stack(screw(0.875)), { min: 0.007 }, 'worst case')
    expect(outside.room).toBeCloseTo(-0.002, 12)
    expect(outside.sentence).toContain('move it by 0.002')
  })

  // Lesson "Tolerance stack-up" (physicalai-bmi.org, looked up): housing 20.200 ± .05 less plate 6 ± .10, spacer 9 ± .12,
  // cap 5 ± .08; gap to stay within 0.10 … 0.50: worst case ± 0.35, root-sum-square ± 0.18, the spacer contributes most.
  test('retaining clip', () => {
    const found = stack([
      plusMinus('housing', 20.2, 0.05),
      plusMinus('plate', 6, 0.1, -1),
      plusMinus('spacer', 9, 0.12, -1),
      plusMinus('cap', 5, 0.08, -1),
    ])
    expect(found.middle).toBeCloseTo(0.2, 12)
    expect(found.worstCase.max - found.middle).toBeCloseTo(0.35, 12)
    expect(found.rootSumSquare.max - found.middle).toBeCloseTo(Math.sqrt(0.0333), 12)
    expect(found.contributions[0]!.link.name).toBe('spacer')
    const advice = tighten(found, { min: 0.1, max: 0.5 }, 'worst case')
    // No single size has .25 to give; the middle is better at 0.3.
    expect(advice.single.every((each) => each.half === undefined)).toBe(true)
    expect(advice.shift).toBeCloseTo(0.1, 12)
    expect(advice.together).toBeCloseTo(0.1 / 0.35, 12)
    expect(advice.sentence).toBe('No single size will do: all would have to shrink to 28 %.')
  })

  // One-way clutch after Fortini, Dimensioning for Interchangeable Manufacture (data from memory): hub a = 27.645 ± .0125,
  // roller radius c = 11.43 ± .01, ring radius e = 50.8 ± .0125 mm; cos φ = (a + c)/(e − c). The sensitivities are the exact
  // derivatives, and the worst case is held against the angle itself at all eight corners.
  test('one-way clutch: sensitivities other than one', () => {
    const [a, c, e] = [27.645, 11.43, 50.8]
    const angle = (da: number, dc: number, de: number) => Math.acos((a + da + c + dc) / (e + de - c - dc))
    const phi = angle(0, 0, 0)
    expect((phi * 180) / Math.PI).toBeCloseTo(7.0184, 3)
    const reach = e - c
    const sine = Math.sin(phi)
    const sensitivities = [-1 / (sine * reach), -(1 + Math.cos(phi)) / (sine * reach), Math.cos(phi) / (sine * reach)]
    const found = stack([
      { ...plusMinus('hub', a, 0.0125), sensitivity: sensitivities[0]! },
      { ...plusMinus('roller', c, 0.01), sensitivity: sensitivities[1]! },
      { ...plusMinus('ring', e, 0.0125), sensitivity: sensitivities[2]! },
    ])
    const corners = [-1, 1].flatMap((i) =>
      [-1, 1].flatMap((j) => [-1, 1].map((k) => angle(i * 0.0125, j * 0.01, k * 0.0125))),
    )
    const half = found.worstCase.max - found.middle
    // Second-order terms are (half)²/φ of the angle: under 8 % of the half width here, and opposite at the two ends.
    expect(Math.abs((Math.max(...corners) - Math.min(...corners)) / 2 / half - 1)).toBeLessThan(0.01)
    expect(found.contributions[0]!.link.name).toBe('roller')
  })
})

describe('links', () => {
  test('limits and unequal tolerances are centred on their middle', () => {
    const found = stack([
      fromLimits('hole', 1.006, 1, 1),
      { name: 'pin', nominal: 1, upper: -0.001, lower: -0.003, sensitivity: -1 },
    ])
    expect(found.nominal).toBeCloseTo(0.003, 12)
    expect(found.middle).toBeCloseTo(0.005, 12)
    expect(found.worstCase.min).toBeCloseTo(0.001, 12)
    expect(found.worstCase.max).toBeCloseTo(0.009, 12)
  })
  // Standard deviations of the distributions (any textbook of statistics): half/3, half/√3, half/√6.
  test('standard deviations', () => {
    const link = plusMinus('x', 0, 0.3)
    expect(deviationOf(link)).toBeCloseTo(0.1, 12)
    expect(deviationOf({ ...link, sigmas: 2 })).toBeCloseTo(0.15, 12)
    expect(deviationOf({ ...link, distribution: 'uniform' })).toBeCloseTo(0.3 / Math.sqrt(3), 12)
    expect(deviationOf({ ...link, distribution: 'triangular' })).toBeCloseTo(0.3 / Math.sqrt(6), 12)
  })
  test('a stack without links is nothing', () => {
    expect(stack([])).toMatchObject({ nominal: 0, middle: 0, deviation: 0, contributions: [] })
  })
})

describe('loops', () => {
  const size = (id: string, from: string, to: string): Located => ({ id, from, to })
  const chain = (sizes: readonly Located[], from: string, to: string) => {
    const found = findLoop(sizes, from, to)
    return found.ok
      ? found.value.steps.map((step) => (step.direction > 0 ? '+' : '−') + step.size.id).join(' ')
      : found.problem.text
  }
  const bracket = [
    size('length', 'left', 'right'),
    size('first', 'left', 'hole 1'),
    size('pitch', 'hole 1', 'hole 2'),
    size('slot', 'right', 'slot'),
  ]
  test('walks sizes along and against their direction', () => {
    expect(chain(bracket, 'left', 'hole 2')).toBe('+first +pitch')
    expect(chain(bracket, 'hole 2', 'right')).toBe('−pitch −first +length')
    expect(chain(bracket, 'slot', 'hole 1')).toBe('−slot −length +first')
    expect(chain(bracket, 'left', 'left')).toBe('')
  })
  test('takes the chain with the fewest links and says when another is as short', () => {
    const closed = [...bracket, size('other', 'hole 2', 'right')]
    // Two chains of two: the sizes given first are taken.
    expect(chain(closed, 'hole 1', 'right')).toBe('−first +length')
    expect(chain([...closed, size('direct', 'hole 1', 'right')], 'hole 1', 'right')).toBe('+direct')
    const found = findLoop(closed, 'hole 1', 'right')
    expect(found.ok && found.value.ambiguous).toBe(true)
    const open = findLoop(bracket, 'hole 1', 'right')
    expect(open.ok && open.value.ambiguous).toBe(false)
  })
  test('crosses from part to part where they touch', () => {
    const pair = [...bracket, size('contact', 'right', 'cover: seat'), size('depth', 'cover: seat', 'cover: floor')]
    expect(chain(pair, 'hole 2', 'cover: floor')).toBe('−pitch −first +length +contact +depth')
  })
  test('what does not hang together is named', () => {
    expect(chain([...bracket, size('far', 'p', 'q')], 'left', 'q')).toContain('No chain of sizes joins left to q')
    expect(chain(bracket, 'left', 'nowhere')).toBe('No size leads to nowhere.')
    const found = findLoop([...bracket, size('far', 'p', 'q')], 'left', 'q')
    expect(!found.ok && found.problem.expected).toContain('hole 2')
  })
  // Closed formula: a chain walked there and back has the opposite sum.
  test('there and back again are opposite', () => {
    const there = chain(bracket, 'slot', 'hole 2')
    const back = chain(bracket, 'hole 2', 'slot').split(' ').reverse().join(' ')
    const flip: Record<string, string> = { '+': '−', '−': '+' }
    expect(back.replace(/[+−]/g, (sign) => flip[sign]!)).toBe(there)
  })
})
