import { describe, expect, it } from 'vitest'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { rules } from '../../src/check/rules/rules.ts'
import { lazySubject, onHeader } from '../check/subject.ts'
import { faults, openBench } from './workbench.ts'

const bench = openBench()

const CLAMP = 'block 90 × 30 × 35\nbore front: ⌀26 H8 THRU\n'
const slit = (end: string) => `${CLAMP}notch front, right: square, 4 wide, ${end}\n  centred`
/** Half of a strip 2·h wide across a circle: h·√(r² − h²) + r²·asin(h / r) (Machinery's Handbook, from memory). */
const halfStrip = (r: number, h: number) => h * Math.sqrt(r * r - h * h) + r * r * Math.asin(h / r)

describe('a slit that runs out in a bore', () => {
  it('takes the strip from the edge to the bore, and has no depth', () => {
    const part = bench.part(slit('to bore'))
    expect(faults(part)).toEqual([])
    const area = 90 * 35 - Math.PI * 13 ** 2 - (4 * 45 - halfStrip(13, 2))
    expect(part.properties.volume).toBeCloseTo(30 * area, 4)
    expect(part.chosen.filter((c) => c.group === 'notch 1').map((c) => c.kind)).toEqual(['width'])
  })

  it('is sized whole, and no wall is missed beside it', () => {
    const subject = lazySubject(onHeader('iso', slit('to bore')), bench.kernel)
    expect(subject.sizes.proof.complete).toBe(true)
    for (const name of ['hole-near-edge', 'drill-breaks-sideways', 'notch-narrow']) {
      expect(rules.find((r) => r.name === name)!.check(subject), name).toEqual([])
    }
    subject.free()
  })

  it('reads back as it is printed', () => {
    const brief = readBrief(onHeader('iso', slit('to bore')))
    const printed = printBrief(brief)
    expect(printed).toContain('square, 4 wide, to bore')
    expect(printBrief(readBrief(printed))).toBe(printed)
  })

  it.each([
    ['a depth that has no floor', slit('35 deep'), 'notch-without-floor', 'to bore in place of the depth'],
    ['a hole at its side', slit('to bore').replace('centred', '4 from bottom'), 'notch-misses', 'a place in line'],
    ['a name that is nothing', slit('to hole B'), 'unknown-name', 'hole 1'],
    [
      'a bore that comes later',
      slit('to bore').replace(/(bore front.*\n)([\s\S]*)/, '$2\n$1'),
      'unknown-name',
      'first',
    ],
  ])('refuses %s, and says what to write', (_, text, rule, expected) => {
    const mark = bench.part(text).marks.find((m) => m.rule === rule)
    expect(mark?.weight).toBe('must change')
    expect(mark?.expected).toContain(expected)
  })

  it('says twice what is stated twice', () => {
    expect(readBrief(onHeader('iso', slit('20 deep, to bore'))).marks.map((m) => m.rule)).toContain('stated-twice')
  })
})
