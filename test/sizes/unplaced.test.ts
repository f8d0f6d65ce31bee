import { expect, it } from 'vitest'
import { allMarks, asme } from './sized.ts'

it('a feature without a place is marked where it stands, and nothing else for it', () => {
  const s = asme(`plate 6.00 × 4.00 × .50
slot top: .50 × 1.50 overall THRU, long way left-right
  centred up
`)
  const must = allMarks(s).filter((m) => m.weight === 'must change')
  expect(must.map((m) => m.rule)).toEqual(['not-located'])
  expect(s.part.brief.text.slice(must[0]!.span!.from, must[0]!.span!.to)).toBe('centred up')
  expect(s.sizes.proof.complete).toBe(false)
})
