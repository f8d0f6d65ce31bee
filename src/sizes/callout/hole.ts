import type { HoleFeature } from '../../brief/brief.ts'
import type { Callout, CalloutPart } from '../dimension.ts'
import type { Habit, SheetWriting } from './habit.ts'
import { angleParts, sizeParts, tidy } from './numbers.ts'

/**
 * The note at a hole: count, diameter or thread, through or depth, then counterbore, countersink and spotface, each on
 * its own line in the order worked. `into`: what a hole through one wall ends in, as the sheet's reader knows it.
 */
export function holeCallout(hole: HoleFeature, count: number, writing: SheetWriting, into?: string): Callout {
  const { habit } = writing
  const lines: CalloutPart[][] = []
  const through = hole.depth.kind === 'through'
  const depth =
    hole.depth.kind === 'blind' ? [' ↧ ', ...sizeParts(hole.depth.size, writing)] : [throughWords(hole, habit, into)]
  if (hole.thread) {
    const deep = hole.threadDepth ? [' ↧ ', ...sizeParts(hole.threadDepth, writing)] : depth
    lines.push([habit.times(count), hole.thread.text, ...deep])
    if (hole.threadDepth || isDrill(hole)) {
      lines.push([
        `${habit.drill} `,
        ...sizeParts(hole.diameter, writing, '⌀'),
        ...(hole.threadDepth && !through ? depth : []),
      ])
    }
  } else lines.push([habit.times(count), ...sizeParts(hole.diameter, writing, '⌀'), ...depth])
  if (!through && hole.point) {
    lines.push(hole.point.value === 180 ? [habit.flatBottom] : [...angleParts(hole.point, writing), ` ${habit.point}`])
  }
  if (hole.spotface) {
    const { diameter, depth: deep } = hole.spotface
    lines.push([
      habit.spotface,
      ...sizeParts(diameter, writing, '⌀'),
      ...(deep ? [' ↧ ', ...sizeParts(deep, writing)] : []),
    ])
  }
  if (hole.counterbore) {
    const { diameter, depth: deep } = hole.counterbore
    lines.push(['⌴ ', ...sizeParts(diameter, writing, '⌀'), ' ↧ ', ...sizeParts(deep, writing)])
  }
  if (hole.countersink) {
    const { diameter, angle } = hole.countersink
    lines.push(['⌵ ', ...sizeParts(diameter, writing, '⌀'), habit.by, ...angleParts(angle, writing)])
  }
  if (isAround(hole)) lines.push([habit.equallySpacedUnseen])
  return { lines: lines.map(tidy) }
}

/** Round the axis of a turned surface, the angles between them said by the words. */
const isAround = ({ placement }: HoleFeature): boolean => placement.kind === 'runs' && placement.around !== undefined

/** What stands for a depth. Holes through both flanges are counted by their axes, so the words say that there are two. */
function throughWords(hole: HoleFeature, habit: Habit, into: string | undefined): string {
  const { depth, face } = hole
  if (depth.kind === 'blind') return ''
  // each of a ring goes through its own wall, whatever stands opposite
  if (isAround(hole) && !depth.oneWall) return habit.throughOneWall(undefined)
  if (depth.oneWall) return habit.throughOneWall(into ?? depth.oneWall.into?.text)
  return face.text === 'flanges' ? habit.throughBothFlanges : habit.through
}

/** A drill typed beside the thread, rather than the thread's own nominal size. */
export function isDrill(hole: HoleFeature): boolean {
  return (
    !!hole.thread && (hole.diameter.span.from >= hole.thread.span.to || hole.diameter.span.to <= hole.thread.span.from)
  )
}
