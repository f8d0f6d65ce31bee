import { describe, expect, it } from 'vitest'
import { rule as onItself } from '../../src/check/rules/frames/datum-on-itself.ts'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import { asme, iso, type Sized } from './sized.ts'

/*
 * A profile all around holds the sides along the border of the view that its leader points in: the circle stands at the
 * leader of that outline, whose true shape is given by basic sizes; the thickness keeps its own tolerance (ASME
 * Y14.5-2018 clause 11, profile all around; ISO 1101:2017 clause 8; from memory).
 */
const PLATE = `plate 4.00 × 3.00 × .375
round corners: 4X R.50
datum A bottom
datum B left
datum C front
`
const LEVER = `outline .75 thick, face front
  right 4.00; up .75; left 2.50; arc R 1.00 to .50 across, 1.75 up, turning right; to 0 across, 1.50 up; close
hole A front: ⌀.5000 +.0008 -.0000 THRU
  .50 from left; .50 from bottom
datum A front
`
const basics = ({ sizes }: Sized) => sizes.dimensions.flatMap((d) => (d.basic ? [plainText(d.callout)] : [])).sort()
const plain = ({ sizes }: Sized) => sizes.dimensions.flatMap((d) => (d.basic ? [] : [plainText(d.callout)])).sort()
const stands = ({ sizes }: Sized) => sizes.annotations?.find((a) => a.id === 'frame 1')

describe('a profile all around', () => {
  it('points at the outline in the view that looks onto the face, at every straight side of it', () => {
    const s = asme(`${PLATE}frame top: profile .030 A B C, all around\n`)
    expect(stands(s)?.view).toBe('top')
    const outs = stands(s)!.places.map((p) => (p.kind === 'line' ? p.out.map((x) => Math.round(x)).join() : p.kind))
    expect(outs.sort()).toEqual(['-1,0', '0,-1', '0,1', '1,0'])
  })

  it('makes the sizes of the outline basic and leaves the thickness its tolerance', () => {
    const s = asme(`${PLATE}frame top: profile .030 A B C, all around\n`)
    expect(basics(s)).toEqual(['3.00', '4.00', '4X R.50'])
    expect(plain(s)).toEqual(['.375'])
    expect(s.sizes.proof.complete).toBe(true)
  })

  it('does so beyond a chamfered rim, and leaves a hole inside the border alone', () => {
    const hole = 'hole top: ⌀.250 THRU\n  1.00 from left; 1.00 from front\n'
    const s = asme(`${PLATE}${hole}chamfer top edges: .03 × 45°\nframe top: profile .030 A, all around\n`)
    expect(basics(s)).toEqual(['3.00', '4.00', '4X R.50'])
    expect(stands(s)?.view).toBe('top')
  })

  it('shapes an outline with an arc, and may be held to the very face it goes round', () => {
    const s = asme(`${LEVER}frame front: profile .020 A, all around\n`)
    expect(stands(s)?.view).toBe('front')
    expect(basics(s)).toEqual(['.50', '.75', '1.50', '1.75', '4.00', 'R1.00'])
    expect(plain(s)).toEqual(['.50', '.50', '.75', '⌀.5000 +.0008/−.0000 THRU'])
    expect(onItself.check({ ...s, brief: s.part.brief } as never)).toEqual([])
  })

  it('leaves a frame of the face itself at its edge, and that may not be held to itself', () => {
    const s = asme(`${LEVER}frame front: profile .020 A\n`)
    expect(stands(s)?.view).not.toBe('front')
    expect(onItself.check({ ...s, brief: s.part.brief } as never)).toHaveLength(1)
  })

  it('goes round a disc at its circle, for which a view is drawn', () => {
    const s = iso('disc ⌀80 × 10, outer face front\ndatum A rear\nframe front: profile 0.2 A, all around\n')
    expect(basics(s)).toEqual(['⌀80'])
    expect(stands(s)?.places).toMatchObject([{ kind: 'circle', radius: 40 }])
  })

  it('asks for the view that shows the border where the brief leaves it out', () => {
    const s = asme(`${PLATE}frame right: profile .030 A, all around\nviews front, top\n`)
    const mark = s.sizes.marks.find((m) => m.rule === 'no-view-for-sign')
    expect(mark?.expected).toBe('a view that looks onto the face, by `views`, or no “all around”')
  })
})
