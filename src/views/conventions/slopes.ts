import { dot } from '../../geometry/vec3.ts'
import type { Body, BodyFace } from '../../kernel/body.ts'
import type { Frame, ViewLine } from '../view.ts'

/**
 * Tells of each line which chamfers, countersinks and other slanting faces it borders. Where such a face is so slight
 * that its two edges would run together on paper, the sheet shows one of them only.
 */
export function withSlopes(lines: readonly ViewLine[], body: Body, frame: Frame): ViewLine[] {
  const slanting = new Set(body.faces.filter((f) => slants(f, frame)).map((f) => f.id))
  return lines.map((line) => {
    const slopes = [...new Set(line.sources.flatMap((s) => s.faces))].filter((id) => slanting.has(id))
    return slopes.length > 0 ? { ...line, slopes } : line
  })
}

/** Neither along nor across the line of sight: its breadth is foreshortened. */
function slants({ surface }: BodyFace, frame: Frame): boolean {
  if (surface.kind === 'cone') return true
  if (surface.kind !== 'plane') return false
  const square = Math.abs(dot(surface.axes.z, frame.toViewer))
  return square > 1e-6 && square < 1 - 1e-6
}
