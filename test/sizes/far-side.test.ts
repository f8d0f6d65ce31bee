import { describe, expect, it } from 'vitest'
import { asme, iso } from './sized.ts'

// A callout stands where the feature shows true (ASME Y14.5-2018 4.1, ISO 129-1; from memory); of a counterbore or
// countersink seen only from behind the words say which side (FAR SIDE: common practice, no source).
const plate = (sink: string, views = '') => `plate 6.00 × 4.00 × .75
holes bottom: 4X ⌀.281 THRU, ${sink}
  2 across 5.000 apart, centred; 2 up 3.000 apart, centred
hole top: ⌀1.00 ↧ .25, flat bottom
  centred both ways
${views}`

describe.each(['⌴ ⌀.50 ↧ .25', '⌵ ⌀.50 × 82°'])('a hole from below with %s', (sink) => {
  it('has its note in the bottom view', () => {
    const s = asme(plate(sink))
    expect(s.views.views.map((v) => v.id)).toEqual(['front', 'top', 'bottom', 'pictorial'])
    expect(s.find(`4X ⌀.281 THRU, ${sink}`).view).toBe('bottom')
    expect(s.find('⌀1.00 ↧ .25, FLAT BOTTOM, CENTERED BOTH WAYS').view).toBe('top')
  })

  it('is told to be from the far side where the brief’s views show it from above alone', () => {
    const s = asme(plate(sink, 'views front, top\n'))
    expect(s.find(`4X ⌀.281 THRU, ${sink}, FAR SIDE`).view).toBe('top')
    expect(s.sizes.proof.complete).toBe(true)
  })
})

it('a plain hole through has neither', () => {
  const s = iso('block 120 × 80 × 20\nhole bottom: ⌀9 THRU\n  20 from left; 20 from front\n')
  expect(s.views.views.map((v) => v.id)).toEqual(['front', 'top', 'pictorial'])
  expect(s.texts).toContain('⌀9')
})
