import { sizesOf } from '../../measure/all-sizes.ts'
import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'stock-size-odd',
  weight: 'remark',
  source:
    'EN 10029 and EN 10058 ranges; mill lists of inch plate and bar in sixteenths, sheet by decimal (from memory)',
  about: 'A stock size is what the mill rolls. Another one has to be machined, and then the size is not the mill’s.',
  reads: 'brief',
  check: ({ brief }) =>
    sizesOf(brief).flatMap(({ size, what }) => {
      if (size.tolerance?.kind !== 'stock' || what !== 'thickness' || isRolled(size.mm, size.unit)) return []
      return [
        {
          text: `No mill rolls ${size.text} ${size.unit === 'mm' ? 'mm' : 'inch'}.`,
          span: size.span,
          expected:
            size.unit === 'mm'
              ? '1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20 …'
              : 'sixteenths of an inch, or a sheet gauge',
          numbers: [size.text],
        },
      ]
    }),
}

const metric = [
  0.5, 0.6, 0.75, 0.8, 1, 1.2, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 15, 16, 18, 20, 22, 25, 28, 30,
  35, 40, 45, 50, 60, 70, 80, 90, 100,
]
/** Manufacturers' standard gauge for sheet steel, 8 to 24, and aluminium sheet, inches. */
const gauges = [
  0.164, 0.149, 0.135, 0.12, 0.105, 0.09, 0.075, 0.067, 0.06, 0.054, 0.048, 0.042, 0.036, 0.03, 0.024, 0.016, 0.02,
  0.025, 0.032, 0.04, 0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.19,
]

function isRolled(mm: number, unit: 'inch' | 'mm'): boolean {
  if (unit === 'mm')
    return metric.some((t) => Math.abs(t - mm) < 1e-6) || (mm > 100 && Math.abs(mm / 10 - Math.round(mm / 10)) < 1e-6)
  const inch = mm / 25.4
  const sixteenth = Math.round(inch * 16) / 16
  return Math.abs(inch - sixteenth) < 0.0011 || gauges.some((g) => Math.abs(g - inch) < 0.0011)
}
