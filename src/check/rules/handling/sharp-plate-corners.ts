import { materialAngle } from '../../measure/faces.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'sharp-plate-corners',
  weight: 'remark',
  source: 'common practice, no source; ISO 12100:2010, 6.2.2.1: no sharp corners that can be reached (from memory)',
  about: 'Thin plates cut hands at their corners. Rounded or clipped corners cost nothing in a cut blank.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const { flat } = part
    if (
      !flat ||
      flat.thickness.mm > 5 ||
      brief.header.edgeBreak ||
      brief.header.notes.some((n) => /corner|edge|burr/i.test(n.text))
    )
      return []
    const corners = part.body.edges.filter((e) => {
      const angle = e.curve.kind === 'line' && !e.smooth ? materialAngle(part.body, e) : undefined
      if (angle === undefined || angle > 91 || e.curve.kind !== 'line') return false
      const { a, b } = e.curve
      return Math.abs(Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]) - flat.thickness.mm) < 1e-6
    })
    return corners.length === 0
      ? []
      : [
          {
            text: `${corners.length === 1 ? 'One corner of the plate is' : `${corners.length} corners of the plate are`} sharp.`,
            expected: 'round     corners: 4X R3, or a note on edges and corners',
          },
        ]
  },
}
