import type { PlaceRequest } from '../../brief/brief.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Dimension } from '../dimension.ts'
import type { Context } from './context.ts'
import { type Draft, showings } from './draft.ts'

/** The drafter's own places for sizes: another view, a side, a row. They hold by the size's words, not by its order. */
export function withPlaces(context: Context, drafts: readonly Draft[], dimensions: readonly Dimension[]): Dimension[] {
  let result = [...dimensions]
  for (const request of context.part.brief.places) {
    if (request.kind !== 'size') continue
    const wanted = plain(request.size.text)
    const matching = result.filter((d) => {
      const draft = drafts.find((one) => one.id === d.id)
      return (
        plain(plainText(d.callout)) === wanted ||
        (draft?.size && plain(draft.size.text) === wanted) ||
        d.id === request.size.text
      )
    })
    if (matching.length === 0) {
      context.marks.push(notFound(request))
      continue
    }
    const ids = new Set(matching.map((d) => d.id))
    result = result.map((d) => (ids.has(d.id) ? moved(context, drafts, d, request) : d))
  }
  return result
}

type SizePlace = Extract<PlaceRequest, { kind: 'size' }>

const plain = (text: string): string =>
  text
    .replace(/[\s()]/g, '')
    .replace(/^(S?[⌀R]|[↧□⌲⌳⌒])/, '')
    .replace(/^0(?=[.,])/, '')
    .replace(',', '.')
    .toLowerCase()

function moved(context: Context, drafts: readonly Draft[], dimension: Dimension, request: SizePlace): Dimension {
  const wish = {
    ...dimension.wish,
    ...(request.side ? { side: request.side } : {}),
    ...(request.row ? { row: request.row.value } : {}),
  }
  const own: Dimension = { ...dimension, ...(Object.keys(wish).length > 0 ? { wish } : {}) }
  if (!request.view) return own
  const draft = drafts.find((d) => d.id === dimension.id)
  const there = draft
    ? showings(draft, context.sights).find(
        ({ sight }) => sight.view.side === request.view || sight.view.id === request.view,
      )
    : undefined
  const isDrawn = context.sights.some(({ view }) => view.side === request.view || view.id === request.view)
  if (!there) {
    context.marks.push({
      rule: 'size-not-in-view',
      weight: 'must change',
      text: isDrawn
        ? `${plainText(dimension.callout)} cannot stand in the ${viewWords(request.view)}: what it measures is not seen true there.`
        : `No ${viewWords(request.view)} is drawn, so ${plainText(dimension.callout)} cannot stand there.`,
      span: request.span,
      expected: draft
        ? `one of: ${showings(draft, context.sights)
            .map(({ sight }) => sight.view.id)
            .join(', ')}`
        : 'a view of the sheet',
      source: 'ASME Y14.5-2018 4.1, ISO 129-1 (from memory)',
    })
    return own
  }
  const { measured, callout } = there.showing
  return { ...own, view: there.sight.view.id, measured, callout: callout ?? draft?.callout ?? own.callout }
}

/** `top view`, and a section or the pictorial by its own words. */
const viewWords = (view: string): string => (/^section |^pictorial$/.test(view) ? view : `${view} view`)

function notFound(request: SizePlace) {
  return {
    rule: 'size-not-found',
    weight: 'must change',
    text: `No size on the sheet reads ${request.size.text}.`,
    span: request.size.span,
    expected: 'a size as it stands on the sheet',
    source: 'common practice, no source',
  } as const
}
