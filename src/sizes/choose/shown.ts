import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { computedText, sizeParts, tidy } from '../callout/numbers.ts'
import { plainText } from '../callout/plain-text.ts'
import { bracketed } from '../callout/shapes.ts'
import type { Context, Mooring } from './context.ts'
import { type Draft, directionWords } from './draft.ts'
import { showLinear } from './show.ts'

const WORDS: readonly (readonly [RegExp, 0 | 1 | 2])[] = [
  [/length|long|across|left.?right/i, 0],
  [/width|deep|depth|front.?rear/i, 1],
  [/height|high|up.?down/i, 2],
]

/**
 * Reference sizes asked for by `show`: in brackets, outside the proof. One that a size on the sheet gives already is left
 * out and marked.
 */
export function shownDrafts(
  context: Context,
  given: readonly Pick<Draft, 'states' | 'reference' | 'callout'>[],
): Draft[] {
  const { min, max } = context.part.body.box
  return context.part.brief.shows.flatMap((request): Draft[] => {
    const extent = ([0, 1, 2] as const).map((k) => max[k] - min[k])
    const { size } = request
    const word = WORDS.find(([test]) => test.test(request.what.text))?.[1]
    const fits = size
      ? ([0, 1, 2] as const).filter((k) => Math.abs(extent[k]! - size.mm) < 1e-3 * Math.max(1, size.mm))
      : []
    const longest = extent.indexOf(Math.max(...extent)) as 0 | 1 | 2
    const axis = context.part.axis?.direction
    const along = axis ? ([0, 1, 2] as const).find((k) => Math.abs(axis[k]) > 0.999) : undefined
    if (!/overall|whole|total|length|width|height|long|wide|high/i.test(request.what.text)) {
      context.marks.push({
        rule: 'show-unknown',
        weight: 'look again',
        text: `“${request.what.text}” cannot be shown as a reference size.`,
        span: request.span,
        expected: 'overall, overall length, overall width or overall height',
        source: 'common practice, no source',
      })
      return []
    }
    const k = word ?? (fits.length > 0 ? fits[0]! : (along ?? longest))
    const actual = extent[k]!
    const contradicts = size !== undefined && Math.abs(actual - size.mm) > 1e-3 * Math.max(1, actual)
    if (contradicts) {
      context.marks.push({
        rule: 'sizes-contradict',
        weight: 'must change',
        text: `The reference size ${size.text} does not agree with the part, which measures ${computedText(actual, context.writing)} ${directionWords(unitOf(k))}.`,
        span: size.span,
        expected: computedText(actual, context.writing),
        mends: [
          { label: 'Write what the part measures', span: size.span, text: computedText(actual, context.writing) },
        ],
        source: 'common practice, no source',
      })
    }
    const already = contradicts ? undefined : given.find((d) => !d.reference && spans(d, k, min, max))
    if (already) {
      context.marks.push({
        rule: 'reference-repeats-size',
        weight: 'look again',
        text: `${plainText(already.callout)} gives the ${directionWords(unitOf(k))} length already: the reference size is left out.`,
        ...(request.span ? { span: request.span } : {}),
        expected: 'a length that follows from others, or the statement left out',
        source: 'ASME Y14.5-2018 4.1(c) and ISO 129-1: each size once (from memory)',
      })
      return []
    }
    return [referenceDraft(context, k, min, max, size, request.span)]
  })
}

/** Whether the size by itself gives the part's whole extent in the direction. */
function spans({ states }: Pick<Draft, 'states'>, k: 0 | 1 | 2, min: Vec3, max: Vec3): boolean {
  return states.some((said) => {
    if (said.kind !== 'distance' || Math.abs(said.direction[k]) < 1 - 1e-9) return false
    const ends = [said.from.at[k], said.to.at[k]]
    return Math.abs(Math.min(...ends) - min[k]) < 1e-5 && Math.abs(Math.max(...ends) - max[k]) < 1e-5
  })
}

function unitOf(k: 0 | 1 | 2): Vec3 {
  return [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
}

function referenceDraft(
  context: Context,
  k: 0 | 1 | 2,
  min: Vec3,
  max: Vec3,
  size: Size | undefined,
  span: Draft['span'],
): Draft {
  const direction = unitOf(k)
  const faces = (at: number) =>
    context.model.elements.flatMap((e) =>
      e.surface.kind === 'plane' && e.along === k && Math.abs(e.surface.axes.origin[k] - at) < 1e-5 ? e.faces : [],
    )
  const a: Mooring = { at: min, name: 'one end', faces: faces(min[k]) }
  const b: Mooring = { at: max, name: 'other end', faces: faces(max[k]) }
  const value = max[k] - min[k]
  const text = size
    ? sizeParts({ ...size, tolerance: undefined } as unknown as Size, context.writing)
    : [computedText(value, context.writing)]
  return {
    id: `show/overall ${directionWords(direction)}`,
    callout: bracketed({ lines: [tidy(text)] }),
    value,
    direction: directionWords(direction),
    states: [{ kind: 'distance', direction, from: a, to: b }],
    shows: showLinear(a, b, direction),
    reference: true,
    ...(span ? { span } : {}),
  }
}
