import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import type { Size } from '../../src/brief/size.ts'
import { buildPart } from '../../src/part/build.ts'
import type { ChosenSize, Datum, Part } from '../../src/part/part.ts'
import { faults, named, openBench } from './workbench.ts'

const bench = openBench()

const examples = new URL('../../examples/', import.meta.url)
const BRACKET = `angle formed, 5 STK, inside R 5
 upright 90 high, at rear; base 60 toward front; length 80
holes A upright, from front: 4X ⌀7 THRU
 2 across 40 apart, centred; 2 up 30 apart, lowest 40 from bottom
slots base, from top: 2X 7 × 22 overall THRU, long way front-rear
 40 apart, centred; centres 35 from heel
round upright, top corners: 2X R12`

describe('names of faces', () => {
  it('come from the brief and survive booleans', () => {
    const part = bench.part(BRACKET)
    expect(faults(part)).toEqual([])
    expect(part.body.faces.every((f) => f.name)).toBe(true)
    for (const name of ['upright front', 'rear', 'top', 'base top', 'bottom', 'front', 'left', 'right', 'heel']) {
      expect(named(part, name).length, name).toBeGreaterThan(0)
    }
    expect(named(part, 'hole A.')).toHaveLength(4)
    // each slot: two flat sides and two round ends
    expect(named(part, 'slot 1.1')).toHaveLength(4)
    expect(named(part, 'round 1.')).toHaveLength(2)
    const heel = named(part, 'heel')[0]!
    expect(heel.surface).toMatchObject({ kind: 'cylinder', r: 10 })
  })

  it('survive a cut, with the cut faces flagged', () => {
    const part = bench.part(BRACKET)
    const { solid, body } = bench.kernel.cut(part.solid, [{ point: [20, 0, 0], normal: [-1, 0, 0] }], 'intersection')
    expect(body.faces.filter((f) => f.cut).length).toBeGreaterThan(0)
    expect(body.faces.some((f) => f.name === 'upright front')).toBe(true)
    expect(body.faces.filter((f) => f.cut).every((f) => f.name === undefined)).toBe(true)
    bench.kernel.free(solid)
  })

  it('edges take the names of the two faces beside them', () => {
    const part = bench.part('plate 100 × 60 × 8')
    expect(part.body.edges.map((e) => e.name)).toContain('left / top')
    expect(part.body.edges.every((e) => e.name)).toBe(true)
  })
})

describe('chosen sizes', () => {
  it('of the bracket: each number once, from the datum the brief names', () => {
    const part = bench.part(BRACKET)
    const sentence = (c: ChosenSize) => {
      const text = c.kind === 'angle' ? c.angle.text : c.size.text
      if (c.kind === 'distance' || c.kind === 'thickness') return `${c.kind} ${text} ${c.from} → ${c.to}`
      if (c.kind === 'pitch') return `pitch ${text} of ${c.members.length}`
      return `${c.kind} ${text} ${'of' in c ? c.of : ''}`.trim()
    }
    expect(part.chosen.map(sentence).sort()).toEqual(
      [
        'thickness 5 upright front → rear',
        'distance 90 bottom → top',
        'distance 60 rear → front',
        'distance 80 left → right',
        'radius 5 inside bend',
        'diameter 7 hole A',
        'pitch 40 of 2',
        'pitch 30 of 2',
        'distance 40 bottom → hole A.1 axis',
        'width 7 slot 1',
        'length 22 slot 1',
        'pitch 40 of 2',
        'distance 35 rear → slot 1.1 axis',
        'radius 12 round 1',
      ].sort(),
    )
    expect(part.implied.filter((i) => i.kind === 'centred').map((i) => i.between.slice(-2))).toEqual([
      ['left', 'right'],
      ['left', 'right'],
    ])
  })

  it('a closed outline chooses a spanning tree: the number that follows from the others is left out', () => {
    const part = bench.part(`outline 8 thick, face front
 right 120; up 20; slope left 100 up 100; left 20; close`)
    const across = part.chosen
      .filter((c) => c.kind === 'distance' && c.direction[0] === 1)
      .map((c) => 'size' in c && c.size.text)
    const up = part.chosen
      .filter((c) => c.kind === 'distance' && c.direction[2] === 1)
      .map((c) => 'size' in c && c.size.text)
    expect(across).toEqual(['120', '20'])
    expect(up).toEqual(['20', '100'])
  })

  it('turned lengths count from the datum face', () => {
    const part = bench.part(`turned axis left-right; lengths from collar left face
 left ⌀20, 28 long
 collar ⌀28, 6 long
 right ⌀22, to 64`)
    const lengths = part.chosen.filter((c) => c.kind === 'distance')
    expect(lengths.map((c) => [c.from, c.to])).toEqual([
      ['left face', 'collar left face'],
      ['collar left face', 'collar right face'],
      ['collar left face', 'right face'],
    ])
  })
})

/** Distance from `from` to `to` along the direction, by the data's own places. */
function measured(part: Part, c: Extract<ChosenSize, { kind: 'distance' }>): number {
  const place = (id: string) => {
    const datum = part.data.find((d): d is Datum => d.id === id)
    if (!datum) throw new Error(`no datum ${id}`)
    return datum.point.reduce((s, v, k) => s + v * c.direction[k]!, 0)
  }
  return Math.abs(place(c.to) - place(c.from))
}

describe('the example briefs', () => {
  const files = readdirSync(examples).filter((f) => f.endsWith('.brief'))
  it('are twelve', () => expect(files.length).toBeGreaterThanOrEqual(12))

  it.each(files)('%s builds clean, every face named, every chosen distance true on the solid', (file) => {
    const brief = readBrief(readFileSync(new URL(file, examples), 'utf8'))
    const part = buildPart(brief, bench.kernel)
    try {
      expect(faults(part)).toEqual([])
      expect(part.body.faces.filter((f) => !f.name)).toEqual([])
      for (const c of part.chosen) {
        if (c.kind === 'distance') expect(measured(part, c)).toBeCloseTo(c.size.mm, 6)
        const faces = 'faces' in c ? c.faces : undefined
        if (faces) expect(faces.length, `${c.kind} ${'size' in c ? (c.size as Size).text : ''}`).toBeGreaterThan(0)
      }
      for (const feature of part.features) {
        for (const member of feature.members) expect(member.faces.length, member.id).toBeGreaterThan(0)
      }
      // one number, one size
      const spans = part.chosen.map((c) => `${c.kind === 'angle' ? c.angle.span.from : c.size.span.from}`)
      expect(new Set(spans).size).toBe(spans.length)
      const check = new bench.kernel.oc.BRepCheck_Analyzer(bench.kernel.shapeOf(part.solid), true)
      expect(check.IsValid()).toBe(true)
      check.delete()
    } finally {
      bench.kernel.free(part.solid)
    }
  })
})
