import { expect, it } from 'vitest'
import { allMarks, iso } from './sized.ts'

it('a hole said to stand on the axis of an arc needs no place of its own', () => {
  const s = iso(`outline 12 thick, face front
  right 110; arc R 10 to 110 across, 20 up, turning left; left 70; slope left 14 up 14
  arc R 22 to 0 across, 0 up, turning left; close
hole front: ⌀8 THRU
  on axis of side 1
hole front: ⌀10 THRU
  across 14 from corner 1; 14 from bottom
`)
  expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
  expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
})
