import { dot } from '../../../geometry/vec3.ts'
import type { BodyFace } from '../../../kernel/body.ts'
import { holesOf, offAxis } from '../../measure/cuts.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

/** Part of the radius within which a hole is taken to have been meant at the centre. */
const NEAR = 0.25

export const rule: DrawingRule = {
  name: 'hole-beside-centre',
  weight: 'look again',
  source: 'common practice, no source: a quarter of the radius',
  about:
    'A hole in a rounded end stands on the centre of the round. A little beside it is mostly a slip: the middle of the whole outline taken for the middle of the round.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    if (brief.stock?.kind !== 'outline') return []
    const rounds = part.body.faces.filter((f) => !f.reversed && /^side \d+$/.test(f.name ?? '') && isWide(f))
    const seen = new Set<string>()
    return holesOf(part).flatMap((hole) => {
      if (seen.has(hole.of.id) || hole.of.members.length > 1) return []
      const { placement } = hole.callout
      if (placement.kind === 'axis' && placement.of) return []
      const beside = rounds.flatMap((face) => {
        if (face.surface.kind !== 'cylinder') return []
        const { axes, r } = face.surface
        if (Math.abs(dot(axes.z, hole.inward)) < 1 - 1e-9 || hole.r >= r) return []
        const off = offAxis(hole, axes.origin)
        return off > 1e-6 * r && off < NEAR * r ? [{ face, off, r }] : []
      })[0]
      if (!beside) return []
      seen.add(hole.of.id)
      const unit = brief.header.units
      return [
        {
          text: `${hole.of.id} stands ${said(beside.off, unit)} beside the centre of the R ${said(beside.r, unit)} about it.`,
          span: hole.callout.span,
          feature: hole.of.id,
          expected: `on axis of ${beside.face.name}, if it is meant there; else accepted with the reason`,
          numbers: [said(beside.r, unit), said(beside.off, unit)],
        },
      ]
    })
    /** A quarter turn at least: a rounded end, not a corner's round. */
    function isWide(face: BodyFace): boolean {
      return face.loops.flat().some(({ edge }) => {
        const { curve } = part.body.edges[edge]!
        return curve.kind === 'circle' && Math.abs(curve.sweep) > Math.PI / 2 + 1e-9
      })
    }
  },
}
