import { describe, expect, it } from 'vitest'
import { auditSizes } from './audit.ts'
import { kinds, numbers } from './random-briefs.ts'
import { iso } from './sized.ts'

const RUNS = 24

/*
 * Briefs that say all that the language asks for are complete, and no size of theirs can be left out or given twice:
 * held against the rank of the whole constraint Jacobian from its singular values, an independent method. Briefs whose
 * random numbers do not fit each other (a hole off the part) are marked and counted out.
 */
describe.each(Object.entries(kinds))('random briefs of a %s', (kind, make) => {
  it('are complete, not over-stated, and miss every size', () => {
    let fitting = 0
    for (let seed = 1; seed <= RUNS; seed++) {
      const text = make(numbers(seed * 7919 + kind.length * 104729))
      const s = iso(text)
      if ([...s.part.brief.marks, ...s.part.marks].some((m) => m.weight === 'must change')) continue
      fitting++
      auditSizes(s, text)
    }
    expect(fitting).toBeGreaterThan(RUNS / 2)
  })
})
