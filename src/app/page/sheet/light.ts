import type { Span } from '../../../brief/span.ts'
import type { SheetItem, Tie } from '../../../sheet/sheet.ts'
import type { Drawn } from '../engine/messages.ts'

/** What is lit at once: items of the sheet, words of the brief, faces and edges of the solid. */
export interface Light {
  /** Items meant themselves, and items of the same feature. */
  readonly items: ReadonlySet<number>
  readonly beside: ReadonlySet<number>
  readonly words: readonly Span[]
  readonly statement?: Span
  readonly faces: ReadonlySet<number>
  readonly edges: ReadonlySet<number>
  /** The item of the sheet that was pointed at. */
  readonly item?: number
}

/** Which feature made each line, worked out once for a drawing. */
export interface Ties {
  readonly drawn: Drawn
  /** Features by item. */
  readonly features: readonly (readonly string[])[]
}

export function tiesOf(drawn: Drawn): Ties {
  const owners = new Map<number, string[]>()
  for (const f of drawn.features) for (const face of f.faces) owners.set(face, [...(owners.get(face) ?? []), f.id])
  return {
    drawn,
    features: (drawn.sheet?.items ?? []).map((item) => featuresOfTie(item.tie, drawn, owners)),
  }
}

/** A line is a feature's when every piece of the solid that it shows touches the feature; else it is the stock's. */
function featuresOfTie(tie: Tie | undefined, drawn: Drawn, owners: ReadonlyMap<number, readonly string[]>): string[] {
  if (!tie) return []
  if (tie.features) return [...tie.features]
  const sources = tie.sources ?? []
  if (sources.length === 0) return []
  const each = sources.map((s) => {
    const faces = s.edge === undefined ? s.faces : [...(drawn.edges[s.edge]?.faces ?? []), ...s.faces]
    return new Set(faces.flatMap((f) => (f === undefined ? [] : (owners.get(f) ?? []))))
  })
  const shared = [...each[0]!].filter((id) => each.every((set) => set.has(id)))
  const worked = shared.filter((id) => id !== 'stock')
  return worked.length > 0 ? worked : ['stock']
}

/** A cursor at either end of the words is at them. */
const touches = (a: Span, b: Span): boolean => a.from <= b.to && b.from <= a.to
const within = (inner: Span, outer: Span): boolean => inner.from >= outer.from && inner.to <= outer.to
const same = (a: Span, b: Span): boolean => a.from === b.from && a.to === b.to

const NONE: ReadonlySet<number> = new Set()

/** The light that an item of the sheet sheds. */
export function lightOfItem(ties: Ties, index: number): Light {
  const { drawn } = ties
  const items = drawn.sheet?.items ?? []
  const tie = items[index]?.tie
  if (!tie) return { items: NONE, beside: NONE, words: [], faces: NONE, edges: NONE }
  if (tie.dimension !== undefined) {
    const own = indices(items, (i) => i.tie?.dimension === tie.dimension)
    const feature = drawn.dimensions.find((d) => d.id === tie.dimension)?.feature ?? tie.features?.[0]
    const light = feature === undefined ? undefined : lightOfFeatures(ties, [feature])
    return {
      items: own,
      beside: light ? new Set([...light.items].filter((i) => items[i]?.tie?.dimension === undefined)) : NONE,
      words: tie.span ? [tie.span] : [],
      ...(light?.statement ? { statement: light.statement } : {}),
      faces: light?.faces ?? NONE,
      edges: light?.edges ?? NONE,
    }
  }
  if (tie.span && !tie.sources && !tie.features) {
    const { span } = tie
    return {
      items: indices(items, (i) => i.tie?.span !== undefined && same(i.tie.span, span)),
      beside: NONE,
      words: [span],
      faces: NONE,
      edges: NONE,
    }
  }
  const features = ties.features[index]!
  const edges = new Set((tie.sources ?? []).flatMap((s) => (s.edge === undefined ? [] : [s.edge])))
  if (features.length === 1 && features[0] === 'stock') {
    const shared = indices(
      items,
      (i) => i.tie?.sources?.some((s) => s.edge !== undefined && edges.has(s.edge)) ?? false,
    )
    const span = drawn.features.find((f) => f.id === 'stock')?.span
    return {
      items: new Set([index]),
      beside: shared,
      words: [],
      ...(span ? { statement: span } : {}),
      faces: NONE,
      edges,
    }
  }
  const light = lightOfFeatures(ties, features)
  return { ...light, items: new Set([index]), beside: light.items, edges: edges.size > 0 ? edges : light.edges }
}

/** Everything that features made: their lines in all views, their sizes, their statement. */
function lightOfFeatures(ties: Ties, ids: readonly string[]): Light {
  const { drawn } = ties
  const links = drawn.features.filter((f) => ids.includes(f.id))
  const faces = new Set(links.flatMap((l) => l.faces))
  const items = new Set<number>()
  ties.features.forEach((list, i) => {
    if (list.some((id) => ids.includes(id))) items.add(i)
  })
  const statement = links.find((l) => l.span)?.span
  return {
    items,
    beside: NONE,
    words: [],
    ...(statement ? { statement } : {}),
    faces,
    edges: new Set(
      drawn.edges.flatMap((e, i) => (e.faces.some((f) => f !== undefined && faces.has(f)) && !e.smooth ? [i] : [])),
    ),
  }
}

/** The light that a face of the solid sheds: its feature's, or its own. */
export function lightOfFace(ties: Ties, face: number): Light {
  const owner = ties.drawn.features.find((f) => f.faces.includes(face) && f.id !== 'stock')
  if (owner) return lightOfFeatures(ties, [owner.id])
  return { items: NONE, beside: NONE, words: [], faces: new Set([face]), edges: NONE }
}

/** The light that an edge of the solid sheds: a line that shows it in each view, with what lights by the line. */
export function lightOfEdge(ties: Ties, edge: number): Light {
  const items = ties.drawn.sheet?.items ?? []
  const own = indices(items, (i) => i.tie?.sources?.some((s) => s.edge === edge) ?? false)
  const [first] = own
  const edges = new Set([edge])
  if (first === undefined) return { items: NONE, beside: NONE, words: [], faces: NONE, edges }
  const { item: _, ...light } = lightOfItem(ties, first)
  return { ...light, items: own, edges }
}

/** The light that a place in the brief sheds: the size under it, else its statement's feature, else its text. */
export function lightOfWords(ties: Ties, at: Span): Light | undefined {
  const { drawn } = ties
  const items = drawn.sheet?.items ?? []
  const size = drawn.dimensions.find((d) => d.span && at.from >= d.span.from && at.to <= d.span.to)
  if (size?.span) {
    const index = items.findIndex((i) => i.tie?.dimension === size.id)
    if (index >= 0) return lightOfItem(ties, index)
  }
  const feature = drawn.features.find((f) => f.span && within(at, f.span))
  if (feature && feature.id !== 'stock') {
    const ids = drawn.features.filter((f) => f.span && feature.span && same(f.span, feature.span)).map((f) => f.id)
    return lightOfFeatures(ties, ids)
  }
  const text = indices(
    items,
    (i) => i.tie?.span !== undefined && i.tie.dimension === undefined && touches(i.tie.span, at),
  )
  if (text.size > 0) return { items: text, beside: NONE, words: [], faces: NONE, edges: NONE }
  return undefined
}

function indices(items: readonly SheetItem[], wanted: (item: SheetItem) => boolean): Set<number> {
  const found = new Set<number>()
  items.forEach((item, i) => {
    if (wanted(item)) found.add(i)
  })
  return found
}
