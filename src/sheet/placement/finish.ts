import type { Vec2 } from '../../geometry/vec.ts'
import type { SheetItem, Tie } from '../sheet.ts'
import type { Stand } from './board.ts'
import { blockItems } from './callout-block.ts'
import type { PlacementFigures } from './figures.ts'
import { headItem } from './form.ts'
import { type Bar, entersSlab, type Slab } from './shapes.ts'

/** Clear space each side of an arrowhead that an extension line is broken for, mm. */
const BREAK = 0.6

/** Prints what has been decided: extension lines once where they coincide, broken at arrowheads they cross, then the rest. */
export function finished(stands: readonly Stand[], figures: PlacementFigures): SheetItem[] {
  const items: SheetItem[] = []
  const extensions: { bar: Bar; tie: Tie }[] = []
  const heads: Slab[] = []
  const settled = stands.flatMap((s) => s.settled)
  for (const s of settled) {
    for (const shape of s.shapes) {
      if (shape.shape === 'bar') {
        if (shape.role === 'extension' && !shape.unseen) extensions.push({ bar: shape, tie: s.member.tie })
      } else if (shape.role === 'arrow') heads.push(shape)
    }
  }
  items.push(...extensionItems(extensions, heads, figures))
  const headsDrawn: Slab[] = []
  for (const { member, alternative } of settled) {
    for (const drawn of [member.fixed, alternative]) {
      for (const { kind, curve } of drawn.strokes)
        items.push({ item: 'stroke', kind, curve, width: figures.line, tie: member.tie })
      for (const shape of drawn.shapes) {
        if (shape.shape !== 'slab' || shape.role === 'text') continue
        if (headsDrawn.some((h) => same(h, shape))) continue
        headsDrawn.push(shape)
        items.push(headItem(shape, member.tie))
      }
      for (const t of drawn.texts) items.push(...blockItems(t.block, t.centre, t.angle, t.justify, figures, member.tie))
    }
  }
  return items
}

function same(a: Slab, b: Slab): boolean {
  return a.role === b.role && Math.hypot(a.cx - b.cx, a.cy - b.cy) < 0.05 && a.ux * b.ux + a.uy * b.uy > 0.99
}

interface Run {
  from: number
  to: number
}

/** Extension lines: the longest first; what another has already drawn is not drawn again. */
function extensionItems(
  extensions: readonly { bar: Bar; tie: Tie }[],
  heads: readonly Slab[],
  figures: PlacementFigures,
): SheetItem[] {
  const items: SheetItem[] = []
  const sorted = [...extensions].sort((a, b) => lengthOf(b.bar) - lengthOf(a.bar))
  const drawn: { bar: Bar; run: Run; u: Vec2; origin: Vec2 }[] = []
  for (const { bar, tie } of sorted) {
    const length = lengthOf(bar)
    if (length < 0.05) continue
    const origin: Vec2 = [bar.ax, bar.ay]
    const u: Vec2 = [(bar.bx - bar.ax) / length, (bar.by - bar.ay) / length]
    let runs: Run[] = [{ from: 0, to: length }]
    for (const d of drawn) {
      if (Math.abs(d.u[0] * u[1] - d.u[1] * u[0]) > 1e-6) continue
      const [wx, wy] = [d.bar.ax - origin[0], d.bar.ay - origin[1]]
      if (Math.abs(wx * u[1] - wy * u[0]) > 0.02) continue
      const s = wx * u[0] + wy * u[1]
      const e = (d.bar.bx - origin[0]) * u[0] + (d.bar.by - origin[1]) * u[1]
      runs = without(runs, Math.min(s, e), Math.max(s, e))
    }
    for (const h of heads) {
      // A line that only touches the tip is the head's own.
      if (!entersSlab(bar.ax, bar.ay, bar.bx, bar.by, h, -0.15)) continue
      const [tx, ty] = [h.cx + h.ux * h.hw - bar.ax, h.cy + h.uy * h.hw - bar.ay]
      if (Math.abs(tx * u[1] - ty * u[0]) < 0.05) continue
      if (Math.abs(h.ux * u[0] + h.uy * u[1]) > 0.99) continue
      const s = (h.cx - origin[0]) * u[0] + (h.cy - origin[1]) * u[1]
      const across = Math.abs(h.ux * u[0] + h.uy * u[1]) * h.hw + Math.abs(h.ux * u[1] - h.uy * u[0]) * h.hh
      runs = without(runs, s - across - BREAK, s + across + BREAK)
    }
    drawn.push({ bar, run: { from: 0, to: length }, u, origin })
    for (const r of runs) {
      if (r.to - r.from < 0.1) continue
      const p = (s: number): Vec2 => [origin[0] + u[0] * s, origin[1] + u[1] * s]
      items.push({
        item: 'stroke',
        kind: 'extension',
        curve: { kind: 'line', a: p(r.from), b: p(r.to) },
        width: figures.line,
        tie,
      })
    }
  }
  return items
}

function without(runs: readonly Run[], from: number, to: number): Run[] {
  return runs.flatMap((r) => {
    if (to <= r.from || from >= r.to) return [r]
    const out: Run[] = []
    if (from > r.from) out.push({ from: r.from, to: from })
    if (to < r.to) out.push({ from: to, to: r.to })
    return out
  })
}

function lengthOf(b: Bar): number {
  return Math.hypot(b.bx - b.ax, b.by - b.ay)
}
