import type { Curve2 } from '../geometry/curve2.ts'
import { endOf, minorOf, piece, startOf } from '../geometry/evaluate.ts'
import type { Vec2 } from '../geometry/vec.ts'
import { cubics } from './beziers.ts'

/** Path data; a new subpath wherever a curve does not start where the last one ended. */
export function pathOf(curves: readonly Curve2[], flip: (p: Vec2) => Vec2): string {
  let d = ''
  let last = ''
  for (const curve of curves) {
    const start = xy(flip(startOf(curve)))
    if (start !== last) d += `M${start}`
    d += segment(curve, flip)
    last = xy(flip(endOf(curve)))
  }
  return d
}

function segment(curve: Curve2, flip: (p: Vec2) => Vec2): string {
  switch (curve.kind) {
    case 'line':
      return `L${xy(flip(curve.b))}`
    case 'arc':
    case 'ellipse': {
      // One command cannot say a full turn; half turns are safe.
      if (Math.abs(curve.sweep) > Math.PI * 1.0001)
        return segment(piece(curve, 0, 0.5), flip) + segment(piece(curve, 0.5, 1), flip)
      const [rx, ry, tilt] =
        curve.kind === 'arc'
          ? [curve.r, curve.r, 0]
          : [
              Math.hypot(...curve.major),
              Math.hypot(...minorOf(curve)),
              (-Math.atan2(curve.major[1], curve.major[0]) * 180) / Math.PI,
            ]
      const mirrored = curve.kind === 'ellipse' && curve.ratio < 0
      // Flipping the sheet upside down turns counter-clockwise into clockwise.
      const way = curve.sweep > 0 !== mirrored ? 0 : 1
      return `A${num(rx)} ${num(ry)} ${num(tilt)} 0 ${way} ${xy(flip(endOf(curve)))}`
    }
    case 'spline':
      return cubics(curve)
        .map(([, b, c, e]) => `C${xy(flip(b))} ${xy(flip(c))} ${xy(flip(e))}`)
        .join('')
  }
}

function xy([x, y]: Vec2): string {
  return `${num(x)} ${num(y)}`
}

/** Millimetres to a hundredth of a micrometre, without an exponent. */
export function num(n: number): string {
  const rounded = Math.round(n * 1e5) / 1e5
  return rounded === 0 ? '0' : String(Math.abs(rounded) < 1e-4 ? rounded.toFixed(5) : rounded)
}
