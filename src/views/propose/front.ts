import type { Side } from '../../brief/brief.ts'
import type { Mark } from '../../brief/mark.ts'
import type { Part } from '../../part/part.ts'
import { axisOf } from '../frames.ts'
import type { Sight } from './plan.ts'
import type { Want } from './wants.ts'

/** What a side tells as the front: features in true shape with a line to be seen, and hidden lines. */
interface Telling {
  readonly side: Side
  readonly shown: number
  readonly hidden: number
}

/**
 * The front as the brief names it, counted against the other sides. Its words hold, for left and right, front and rear
 * are the part's own in every statement; but where the rear tells as much with fewer hidden lines, that is marked.
 *
 * `aside`: the sides that tell the part without the top, if they do: beside the rear a top view would stand upside down.
 * The rear costs a projection of its own and is looked at only where the front leaves something to wish.
 */
export function judgeFront(
  part: Part,
  all: readonly Want[],
  sight: Sight,
  drawn: readonly Side[],
  aside: readonly Side[] | undefined,
): { readonly reason: string; readonly marks: readonly Mark[] } {
  const wants = shapesOf(all)
  const front = tellingOf('front', wants, sight)
  const said = `Front, as the brief names it: ${counts(front, wants)}`
  if (wants.length === 0) return { reason: `${said}.`, marks: [] }
  const perfect = front.hidden === 0 && front.shown === wants.length
  const others: Side[] = ['left', 'right', ...drawn.filter((s) => s === 'top'), ...(perfect ? [] : (['rear'] as const))]
  const ranked = others.map((side) => tellingOf(side, wants, sight)).sort(better)
  const best = ranked[0]!
  const rear = ranked.find((t) => t.side === 'rear' && tellsMore(t, front))
  if (!tellsMore(best, front)) {
    return {
      reason: `${said}; from the ${best.side} it would be ${best.shown} and ${best.hidden}.`,
      marks: [],
    }
  }
  const place = drawn.includes(best.side) ? ', which is drawn too,' : ''
  return {
    reason: `${said}; from the ${best.side}${place} it would be ${best.shown} and ${best.hidden}.`,
    marks: rear ? [rearMark(part, front, rear, wants, aside)] : [],
  }
}

/** `shows 3 of 4 features in true shape, 2 hidden lines`. */
export function countsOf(side: Side, wants: readonly Want[], sight: Sight): string {
  const shapes = shapesOf(wants)
  return counts(tellingOf(side, shapes, sight), shapes)
}

const shapesOf = (wants: readonly Want[]) => wants.filter((w) => w.faces)

const counts = (t: Telling, wants: readonly Want[]) =>
  `shows ${features(t.shown, wants)} in true shape, ${lines(t.hidden)}`

const features = (n: number, of: readonly Want[]) => `${n} of ${of.length} feature${of.length === 1 ? '' : 's'}`

const lines = (n: number) => `${n} hidden line${n === 1 ? '' : 's'}`

function tellingOf(side: Side, wants: readonly Want[], sight: Sight): Telling {
  const shown = wants.filter(
    (w) => (w.along.length === 0 || w.along.includes(axisOf[side])) && (!w.faces?.length || sight.shows(side, w.faces)),
  )
  return { side, shown: shown.length, hidden: sight.hiddenLines(side) }
}

/** As many features with fewer hidden lines, or more with no more. */
const tellsMore = (a: Telling, b: Telling) =>
  (a.shown >= b.shown && a.hidden < b.hidden) || (a.shown > b.shown && a.hidden <= b.hidden)

const better = (a: Telling, b: Telling) => b.shown - a.shown || a.hidden - b.hidden

function rearMark(
  part: Part,
  front: Telling,
  rear: Telling,
  wants: readonly Want[],
  aside: readonly Side[] | undefined,
): Mark {
  const { text } = part.brief
  const sides = ['rear', ...(aside ?? []).filter((s) => s !== 'front')].join(', ')
  const statement = `views     ${sides}; pictorial`
  const end = text.length
  return {
    rule: 'better-front',
    weight: 'remark',
    text: `From the rear the part would show ${features(rear.shown, wants)} with ${lines(rear.hidden)}; from the front it shows ${front.shown} with ${front.hidden}.`,
    expected: aside
      ? `the statement \`${statement}\``
      : 'the part described from its other side, so that its rear is the front',
    source:
      'ISO 128-3:2022 and ASME Y14.3-2012: the principal view tells most, with the fewest hidden lines (from memory)',
    ...(aside && text !== ''
      ? {
          mends: [
            {
              label: 'draw it from the rear',
              span: { from: end, to: end },
              text: `${text.endsWith('\n') ? '' : '\n'}${statement}\n`,
            },
          ],
        }
      : {}),
  }
}
