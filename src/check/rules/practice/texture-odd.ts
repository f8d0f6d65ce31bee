import type { Words } from '../../../brief/brief.ts'
import type { Span } from '../../../brief/span.ts'
import { localRoughness, roughnessIn } from '../../measure/texture.ts'
import type { BriefRule } from '../../rule.ts'

/** R10, the steps of a decade: every value of Ra in use is one of them, first choice or second. */
const R10 = [1, 1.25, 1.6, 2, 2.5, 3.2, 4, 5, 6.3, 8, 10]
/** Finest and roughest surface that is asked for, µm. */
const [LEAST, MOST] = [0.006, 50]
/** Microinches are rounded to whole ones: 63 is 1.6 µm, 32 is 0.8. */
const ROUNDED = 0.03

export const rule: BriefRule = {
  name: 'texture-odd',
  weight: 'look again',
  source: 'ISO 3 and ISO 21920-3, ASME B46.1: Ra in steps of the R10 series, 0.006 to 50 µm (from memory)',
  about: 'Roughness goes in steps. A value between them, or rougher than a flame cut, was mistyped.',
  reads: 'brief',
  check: ({ brief: { header, textures } }) => {
    const words = [header.texture, ...header.notes].flatMap((w): Words[] => (w ? [w] : []))
    const said = [
      ...words.flatMap(({ text, span }) => roughnessIn(text).map((ra) => ({ ra, span }))),
      ...(textures ?? []).flatMap((t): { ra: number; span: Span }[] => {
        const ra = localRoughness(t)
        return ra === undefined ? [] : [{ ra, span: t.value.span }]
      }),
    ]
    return said.flatMap(({ ra, span }) => {
      if (ra >= LEAST && ra <= MOST * (1 + ROUNDED) && isStep(ra)) return []
      const near = [...decades()].reduce((a, b) => (Math.abs(Math.log(b / ra)) < Math.abs(Math.log(a / ra)) ? b : a))
      return [
        {
          text: `Ra ${Number(ra.toPrecision(3))} µm is no step of roughness.`,
          span,
          expected: `Ra ${Number(near.toPrecision(3))}`,
          numbers: [String(Number(ra.toPrecision(3)))],
        },
      ]
    })
  },
}

const isStep = (ra: number): boolean => {
  const lead = ra / 10 ** Math.floor(Math.log10(ra))
  return R10.some((step) => Math.abs(lead / step - 1) < ROUNDED)
}

/** First-choice values: doubling from 0.025 µm. */
function* decades(): Generator<number> {
  yield* [0.0125, 0.025, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.3, 12.5, 25, 50]
}
