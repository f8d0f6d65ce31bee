import type { Curve2 } from '../../geometry/curve2.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { Frame, ViewLine } from '../view.ts'
import { byPrecedence } from './precedence.ts'
import type { ShownView } from './showing.ts'

/** True where visible lines of the opposite view that belong to the same faces cover the whole of the hidden line. */
export function isShownFromBehind(line: ViewLine, frame: Frame, opposite: ShownView, tolerance: number): boolean {
  const faces = new Set(line.sources.flatMap((s) => s.faces))
  const same = opposite.lines.filter(
    (l) => l.kind === 'visible' && l.sources.some((s) => s.faces.some((id) => faces.has(id))),
  )
  if (same.length === 0) return false
  const image: ViewLine = { ...line, curve: mirrored(line.curve, frame, opposite.frame) }
  return byPrecedence([image, ...same], tolerance).every((l) => l.kind !== 'hidden')
}

/** The curve as the opposite viewer sees it. */
function mirrored(curve: Curve2, from: Frame, to: Frame): Curve2 {
  const [a, b] = [dot(from.right, to.right), dot(from.up, to.right)]
  const [c, d] = [dot(from.right, to.up), dot(from.up, to.up)]
  const image = (p: Vec2): Vec2 => [a * p[0] + b * p[1], c * p[0] + d * p[1]]
  switch (curve.kind) {
    case 'line':
      return { kind: 'line', a: image(curve.a), b: image(curve.b) }
    case 'arc': {
      const start = image([Math.cos(curve.from), Math.sin(curve.from)])
      return { ...curve, c: image(curve.c), from: Math.atan2(start[1], start[0]), sweep: -curve.sweep }
    }
    case 'ellipse':
      return { ...curve, c: image(curve.c), major: image(curve.major), ratio: -curve.ratio }
    case 'spline':
      return { ...curve, poles: curve.poles.map(image) }
  }
}
