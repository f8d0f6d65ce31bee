import { expect, it } from 'vitest'
import { allMarks, iso } from './sized.ts'

const HUB = `turned axis left-right
  hub ⌀60, 30 long
  rim ⌀120, 20 long
bore left: ⌀30 H7 THRU
`

// width, and bottom to the opposite side of the bore: what can be measured (common practice, no source)
it.each(['8 JS9 wide × 3.3 +0.2 0 deep', '8 JS9 wide × 33.3 +0.2 0 over bore'])('%s', (size) => {
  const s = iso(`${HUB}keyseat bore, top: ${size}\n`)
  const own = s.sizes.dimensions.filter((d) => d.feature === 'keyseat 1')
  expect(own.map((d) => d.value)).toEqual([8, expect.closeTo(33.3, 9)])
  expect(own.map((d) => s.views.views.find((v) => v.id === d.view)!.kind)).toEqual(['principal', 'principal'])
  expect(own[1]!.tolerance).toMatchObject({ upper: 0.2, lower: 0 })
  expect(s.sizes.proof).toMatchObject({ complete: true, missing: [], repeated: [] })
  expect(allMarks(s).filter((m) => m.weight === 'must change')).toEqual([])
  // seen from the end, so that no section is cut for it
  expect(s.views.views.filter((v) => v.kind === 'section')).toHaveLength(1)
})
