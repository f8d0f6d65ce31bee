import { dot, sub } from '../../../geometry/vec3.ts'
import { holesOf, offAxis, type RoundCut, slotEndsOf } from '../../measure/cuts.ts'
import { samples } from '../../measure/faces.ts'
import { said } from '../../measure/said.ts'
import type { DrawingRule } from '../../rule.ts'

export const rule: DrawingRule = {
  name: 'hole-near-bend',
  weight: 'must change',
  source:
    'Machinery’s Handbook, bending: hole to bend at least twice the thickness from where the bend begins (from memory)',
  about: 'A hole close to a bend is pulled out of round when the sheet is formed.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const { stock } = brief
    if (stock?.kind !== 'angle' || stock.make !== 'formed') return []
    const bend = new Set(
      part.features.filter((f) => f.kind === 'bend').flatMap((f) => f.members.flatMap((m) => m.faces)),
    )
    const edges = part.body.edges.filter((e) => e.smooth && e.faces.some((f) => f !== undefined && bend.has(f)))
    const points = edges.flatMap((e) => samples(e))
    const lines = edges.flatMap((e) => (e.curve.kind === 'line' ? [e.curve] : []))
    const far = (cut: RoundCut) =>
      lines.reduce((least, { a, b }) => {
        const d = sub(b, a)
        // The bend runs along the part; the cut's foot on the line is what counts.
        const t = Math.max(0, Math.min(1, dot(sub(cut.at, a), d) / dot(d, d)))
        const foot = [a[0] + t * d[0], a[1] + t * d[1], a[2] + t * d[2]] as const
        return Math.min(least, offAxis(cut, foot) - cut.r)
      }, Number.POSITIVE_INFINITY)
    if (points.length === 0) return []
    const worst = new Map<string, { cut: RoundCut; mm: number }>()
    for (const cut of [...holesOf(part), ...slotEndsOf(part)]) {
      const mm = far(cut)
      if (mm < (worst.get(cut.of.id)?.mm ?? 2 * stock.thickness.mm - 1e-6)) worst.set(cut.of.id, { cut, mm })
    }
    const unit = brief.header.units
    return [...worst.values()].map(({ cut, mm }) => ({
      text: `${cut.id} stands ${said(Math.max(0, mm), unit)} from the bend and will be pulled out of shape.`,
      span: cut.callout.span,
      expected: `at least twice the thickness, ${said(2 * stock.thickness.mm, unit)}, or holes made after forming`,
      feature: cut.of.id,
      numbers: [said(mm, unit), stock.thickness.text],
    }))
  },
}
