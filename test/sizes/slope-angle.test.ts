import { expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { allMarks, iso } from './sized.ts'

// the legs of a right triangle: the rise is the run times the tangent of the angle
it.each([
  ['slope left 100 up at 45°', 100, '45°'],
  ['slope left 100, up 30°', 100 * Math.tan(Math.PI / 6), '30°'],
])('%s', (slope, rise, angle) => {
  const s = iso(`outline 8 thick, face front\n  right 120; up 20; ${slope}; left 20; close\n`)
  expect(s.part.body.box.max[2]).toBeCloseTo(20 + rise, 9)
  expect(s.part.properties.volume).toBeCloseTo(8 * (120 * 20 + 20 * rise + 50 * rise), 6)
  expect(s.texts).toContain(angle)
  expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
  expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
  const own = s.find(angle)
  expect(own.measured.kind === 'angle' && (Math.abs(own.measured.sweep) * 180) / Math.PI).toBeCloseTo(own.value, 6)
})

it('from an upright side: the run is the rise times the tangent', () => {
  const s = iso('outline 8 thick, face front\n  right 120; up 20; slope up 60 left at 20°; left 30; close\n')
  expect(s.part.body.box.max[2]).toBeCloseTo(80, 9)
  expect(s.texts).toContain('20°')
})

it('an angle alone says what is missing', () => {
  const brief = readBrief(
    'units mm\npractice ISO\noutline 8 thick, face front\n  right 120; up 20; slope 45°; left 20; close\n',
  )
  expect(brief.marks.map((m) => m.rule)).toEqual(['missing-size'])
  expect(brief.marks[0]!.expected).toContain('slope left 100 up at 45°')
})
