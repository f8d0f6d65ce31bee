import type { KeyseatFeature } from '../../../brief/brief.ts'
import type { Size } from '../../../brief/size.ts'
import type { Part } from '../../../part/part.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

/** Shaft up to (mm), key width, depth in the shaft, depth in the hub. DIN 6885-1 / ISO/R 773, from memory. */
const metric = [
  [8, 2, 1.2, 1],
  [10, 3, 1.8, 1.4],
  [12, 4, 2.5, 1.8],
  [17, 5, 3, 2.3],
  [22, 6, 3.5, 2.8],
  [30, 8, 4, 3.3],
  [38, 10, 5, 3.3],
  [44, 12, 5, 3.3],
  [50, 14, 5.5, 3.8],
  [58, 16, 6, 4.3],
  [65, 18, 7, 4.4],
  [75, 20, 7.5, 4.9],
  [85, 22, 9, 5.4],
  [95, 25, 9, 5.4],
  [110, 28, 10, 6.4],
] as const

/** Shaft up to (in), width of a square key. ANSI B17.1 table 1, from memory. */
const inch = [
  [7 / 16, 3 / 32],
  [9 / 16, 1 / 8],
  [7 / 8, 3 / 16],
  [1.25, 1 / 4],
  [1.375, 5 / 16],
  [1.75, 3 / 8],
  [2.25, 1 / 2],
  [2.75, 5 / 8],
  [3.25, 3 / 4],
  [3.75, 7 / 8],
  [4.5, 1],
] as const

export const rule: DrawingRule = {
  name: 'key-size',
  weight: 'look again',
  source: 'DIN 6885-1:1968 (ISO/R 773); ANSI B17.1-1967 (R2013), table 1 (from memory)',
  about: 'Key stock is bought to the width that belongs to the shaft. A keyseat of another width has no key.',
  reads: 'drawing',
  check: ({ part }) =>
    part.features.flatMap((f) => {
      if (f.feature?.kind !== 'keyseat') return []
      const { width, span } = f.feature
      const shaft = shaftOf(part, f.members[0]?.point)
      if (shaft === undefined) return []
      const { size: depth, mm, hub } = depthOf(f.feature, shaft)
      if (!depth) return []
      const wanted =
        width.unit === 'inch'
          ? inch.map(([to, w]): [number, number, number] => [to * 25.4, w * 25.4, (w * 25.4) / 2])
          : metric.map(([to, w, t1, t2]): [number, number, number] => [to, w, hub ? t2 : t1])
      const row = wanted.find(([to]) => shaft <= to + 1e-6)
      if (!row) return []
      const [, w, t] = row
      const wrong =
        Math.abs(width.mm - w) > 0.02
          ? { size: width, is: w, what: 'wide' }
          : Math.abs(mm - t) > 0.25 * t
            ? {
                size: depth,
                is: hub && depth === f.feature.over ? shaft + t : t,
                what: depth === f.feature.over ? 'over the bore' : 'deep',
              }
            : undefined
      if (!wrong) return []
      return [
        {
          text: `The keyseat is ${wrong.size.text} ${wrong.what}; the key for a ${hub ? 'bore' : 'shaft'} of ${said(shaft, width.unit)} takes ${said(wrong.is, width.unit)}.`,
          span: wrong.size.span ?? span,
          expected: `${said(wrong.is, width.unit)} ${wrong.what}`,
          feature: f.id,
          numbers: [width.text, depth.text, said(shaft, width.unit)],
        },
      ]
    }),
}

/** Its depth, and whether it is one in a hub: a size over the bore is the bore more. */
function depthOf({ depth, over, face }: KeyseatFeature, bore: number): { size?: Size; mm: number; hub: boolean } {
  const size = depth ?? over
  return {
    ...(size ? { size } : {}),
    mm: depth?.mm ?? (over?.mm ?? 0) - bore,
    hub: /\b(bore|inside|hole)\b/.test(face.text),
  }
}

/** Diameter of the step in which the keyseat is cut: its point lies on the surface. */
function shaftOf(part: Part, point: readonly [number, number, number] | undefined): number | undefined {
  if (!point || !part.axis) return undefined
  const k = part.axis.direction.findIndex((c) => Math.abs(c) > 0.5)
  const [a, b] = [0, 1, 2].filter((i) => i !== k) as [0 | 1 | 2, 0 | 1 | 2]
  return 2 * Math.hypot(point[a], point[b])
}
