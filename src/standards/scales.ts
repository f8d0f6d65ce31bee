/** A drawing scale: `paper` to `part`. */
export interface Scale {
  readonly paper: number
  readonly part: number
}

const of = (paper: number, part: number): Scale => ({ paper, part })

/** ISO 5455:1979 Table, largest first; the series goes on by factors of ten beyond. */
export const isoScales: readonly Scale[] = [
  ...[50, 20, 10, 5, 2].map((n) => of(n, 1)),
  of(1, 1),
  ...[2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000].map((n) => of(1, n)),
]

/** Customary scales of inch drawings, largest first (common practice; the architect's and engineer's fractions are not for details). */
export const inchScales: readonly Scale[] = [
  ...[20, 10, 4, 2].map((n) => of(n, 1)),
  of(1, 1),
  ...[2, 4, 8, 16, 32, 64, 128].map((n) => of(1, n)),
]

/** As printed: `1:2`, `2:1` (ISO 5455 §4; ASME Y14.100 accepts the same form). */
export function scaleText(scale: Scale): string {
  return `${plain(scale.paper)}:${plain(scale.part)}`
}

function plain(n: number): string {
  return String(Math.round(n * 1e6) / 1e6)
}
