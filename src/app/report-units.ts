import type { Report } from './report.ts'

const INCH = 25.4
const POUND = 0.45359237

/** A report whose lengths, areas, volumes and masses are in the units it names. */
export interface ReportInUnits extends Report {
  /** Of `solid.mass`. */
  readonly massUnits: 'kg' | 'lb'
}

/**
 * The report in the brief's own units: lengths in `units`, areas and volumes in their square and cube, mass in
 * `massUnits`. Angles stay in degrees; the sheet's own width and height are paper, and stay in mm.
 */
export function inBriefUnits(report: Report): ReportInUnits {
  if (report.units === 'mm') return { ...report, massUnits: 'kg' }
  const { solid } = report
  return {
    ...report,
    massUnits: 'lb',
    ...(solid
      ? {
          solid: {
            ...solid,
            volume: plain(solid.volume / INCH ** 3),
            area: plain(solid.area / INCH ** 2),
            centreOfGravity: triple(solid.centreOfGravity),
            overall: triple(solid.overall),
            mass: solid.mass === undefined ? undefined : plain(solid.mass / POUND),
          },
        }
      : {}),
    views: report.views.map((view) => ({
      ...view,
      visible: { ...view.visible, length: inches(view.visible.length) },
      hidden: { ...view.hidden, length: inches(view.hidden.length) },
      centre: { ...view.centre, length: inches(view.centre.length) },
    })),
    sizes: report.sizes.map((size) => {
      if (size.direction === 'angle') return size
      const { tolerance } = size
      const held = tolerance && { ...tolerance, upper: inches(tolerance.upper), lower: inches(tolerance.lower) }
      return { ...size, value: inches(size.value), tolerance: held }
    }),
    envelopes: report.envelopes.map(({ at, form, ...envelope }) => ({
      ...envelope,
      at: inches(at),
      form: inches(form),
    })),
    frames: report.frames.map(({ tolerance, limits, bonus, boundaries, ...frame }) => ({
      ...frame,
      tolerance: inches(tolerance),
      ...(limits ? { limits: lengths(limits) } : {}),
      ...(bonus === undefined ? {} : { bonus: inches(bonus) }),
      ...(boundaries ? { boundaries: lengths(boundaries) } : {}),
    })),
    stacks: report.stacks.map(({ nominal, worstCase, rootSumSquare, wanted, ...stack }) => ({
      ...stack,
      ...(nominal === undefined ? {} : { nominal: inches(nominal) }),
      ...(worstCase ? { worstCase: lengths(worstCase) } : {}),
      ...(rootSumSquare ? { rootSumSquare: lengths(rootSumSquare) } : {}),
      ...(wanted ? { wanted: lengths(wanted) } : {}),
    })),
  }
}

/** Without the noise of the division. */
const plain = (value: number): number => Number(value.toFixed(9))
const inches = (mm: number): number => plain(mm / INCH)
const triple = ([a, b, c]: readonly [number, number, number]) => [inches(a), inches(b), inches(c)] as const

/** Every length of a record. */
function lengths<T extends object>(record: T): T {
  return Object.fromEntries(Object.entries(record).map(([k, v]) => [k, typeof v === 'number' ? inches(v) : v])) as T
}
