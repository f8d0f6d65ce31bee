import type { TurnedStep } from '../../brief/brief.ts'
import type { Contour, ContourPiece } from '../model.ts'
import type { Workshop } from '../workshop.ts'

/** Whether a groove has taken the circle in which two steps would meet at a height: each has its own diameter then. */
export const isGrooved = (contour: Contour, h: number): boolean =>
  contour.grooves.some((g) => g.h0 < h + 1e-9 && g.h1 > h - 1e-9)

/**
 * Whether a step runs on into the next as one surface, so that no line shows where the one ends: cylinders of one
 * diameter, tapers of one slope. A thread ends visibly.
 */
export function runsOn(pieces: readonly ContourPiece[], steps: readonly TurnedStep[], i: number): boolean {
  const [own, next] = [pieces[i], pieces[i + 1]]
  if (!own || !next || steps[i]?.thread || steps[i + 1]?.thread) return false
  const slope = ({ h0, h1, r0, r1 }: ContourPiece) => (r1 - r0) / (h1 - h0)
  return Math.abs(own.r1 - next.r0) < 1e-9 && Math.abs(slope(own) - slope(next)) < 1e-9
}

/** The mark for two steps that are one surface. */
export function oneSurface(shop: Workshop, step: TurnedStep, next: TurnedStep): void {
  const [a, b] = [step.name.text, next.name.text]
  shop.must(
    'steps-run-on',
    next.span,
    `${b} runs on from ${a} in one surface: no line shows where the one ends, and no size can say it.`,
    `one step for both; or a groove between them, or another ${next.endDiameter || next.taper ? 'taper' : 'diameter'}`,
  )
}
