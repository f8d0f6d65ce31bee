import type { Size } from '../../brief/size.ts'
import type { Span } from '../../brief/span.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { add, cross, dot, scale, sub } from '../../geometry/vec3.ts'
import type { Member } from '../../part/part.ts'
import { lengthCallout } from '../callout/shapes.ts'
import type { Statement, Stretch } from '../dimension.ts'
import { type Context, type Mooring, mooringOf } from './context.ts'
import { type Draft, directionWords, type Showing } from './draft.ts'
import type { Chosen } from './kinds.ts'
import { facesSquareTo, pairApart } from './levels.ts'
import { type LinearWish, showLinear } from './show.ts'

/** The same stretch with its direction running from the first to the second. */
export function stretchOf(from: Mooring, to: Mooring, direction: Vec3): Stretch {
  const backward = dot(to.at, direction) < dot(from.at, direction)
  return { direction: backward ? [-direction[0], -direction[1], -direction[2]] : direction, from, to }
}

/** Where the stock's own section or outline is seen true. */
function profileOf(context: Context): Vec3 | undefined {
  const { stock } = context.part.brief
  switch (stock?.kind) {
    case 'angle':
      return stock.uprightAt === 'rear' || stock.uprightAt === 'front' ? [1, 0, 0] : [0, 1, 0]
    case 'channel':
    case 'tee':
      return { 'left-right': [1, 0, 0], 'front-rear': [0, 1, 0], 'up-down': [0, 0, 1] }[stock.lie] as unknown as Vec3
    case 'outline':
    case 'plate':
    case 'flat':
      return {
        left: [1, 0, 0],
        right: [1, 0, 0],
        front: [0, 1, 0],
        rear: [0, 1, 0],
        top: [0, 0, 1],
        bottom: [0, 0, 1],
      }[stock.face] as unknown as Vec3
    default:
      return undefined
  }
}

interface Linear {
  readonly id: string
  readonly size: Size
  readonly stretches: readonly Stretch[]
  readonly moorings: readonly [Mooring, Mooring]
  readonly direction: Vec3
  readonly wish: LinearWish
  readonly feature?: string | undefined
  readonly count?: number
}

function linearDraft(context: Context, linear: Linear): Draft {
  const { id, size, stretches, moorings, direction, wish, feature } = linear
  const [first, ...also] = stretches
  return {
    id,
    callout: lengthCallout(size, context.writing, linear.count ?? 1),
    value: size.mm,
    size,
    direction: directionWords(direction),
    states: [{ kind: 'distance', ...first!, ...(also.length > 0 ? { also } : {}) }],
    shows: showLinear(moorings[0], moorings[1], direction, wish),
    span: size.span,
    ...(feature ? { feature } : {}),
  }
}

/** A size whose data cannot be found says so instead of vanishing. */
function lost(context: Context, chosen: { readonly span: Span }, what: string): undefined {
  context.marks.push({
    rule: 'size-reaches-nothing',
    weight: 'must change',
    text: `This size reaches ${what}, which does not stand on the part.`,
    span: chosen.span,
    expected: 'a face, edge or axis that is there',
    source: 'common practice, no source',
  })
  return undefined
}

export function distanceDraft(context: Context, chosen: Chosen<'distance'> | Chosen<'thickness'>): Draft | undefined {
  const { size, from, to, direction, group } = chosen
  const a = mooringOf(context, from, direction)
  const b = mooringOf(context, to, direction)
  if (!a) return lost(context, chosen, from)
  if (!b) return lost(context, chosen, to)
  // What stands flush is one plane, and what stands in line is drawn in line: neither needs a size.
  if (size.mm === 0) return undefined
  const axis = b.axis ?? a.axis
  const profile = profileOf(context)
  const feature = group === 'stock' || group === 'lengths' ? undefined : group
  const also = feature ? atOtherMembers(context, feature, from, to, size.mm, direction) : []
  const parted = chosen.kind === 'thickness' ? atOtherPieces(context, a, b, direction) : []
  const draft = linearDraft(context, {
    id: `${group ?? 'stock'}/${chosen.kind}/${from} to ${to}`,
    size,
    stretches: [stretchOf(a, b, direction), ...also, ...parted],
    moorings: [a, b],
    direction,
    wish: { ...(axis && feature ? { facing: axis } : {}), ...(profile && !feature ? { profile } : {}), own: !!feature },
    feature,
    count: also.length + 1,
  })
  return chosen.kind === 'thickness' ? { ...draft, shows: allRound(context, draft.shows, a, b, direction) } : draft
}

/** A wall of a round part is as thick all round: it may also stand a quarter turn or more on, where another view or section shows it. */
function allRound({ part }: Context, shows: Draft['shows'], a: Mooring, b: Mooring, direction: Vec3): Draft['shows'] {
  const isRound = (m: Mooring) => part.body.faces.some((f) => m.faces.includes(f.id) && f.surface.kind === 'cylinder')
  const { axis } = part
  if (!axis || !isRound(a) || !isRound(b)) return shows
  const turn = (v: Vec3): Vec3 => add(cross(axis.direction, v), scale(axis.direction, dot(v, axis.direction)))
  const turned = (m: Mooring): Mooring => ({ ...m, at: add(axis.point, turn(sub(m.at, axis.point))) })
  const places = [shows]
  let [p, q, way] = [a, b, direction]
  for (let quarter = 1; quarter < 4; quarter++) {
    ;[p, q, way] = [turned(p), turned(q), turn(way)]
    places.push(showLinear(p, q, way))
  }
  return (sight) => {
    const found = places.flatMap((place) => place(sight) ?? [])
    return found.reduce<Showing | undefined>((best, own) => (best && best.score >= own.score ? best : own), undefined)
  }
}

/** A wall between two rounds holds for all that a groove has left of them. */
function atOtherPieces({ model }: Context, a: Mooring, b: Mooring, direction: Vec3): Stretch[] {
  const pieces = (m: Mooring): Mooring[] => {
    const elements = [...new Set(m.faces.flatMap((f) => model.elementOf.get(f) ?? []))]
    return elements
      .filter((e) => e.surface.kind === 'cylinder')
      .slice(1)
      .map(({ faces }) => ({ ...m, faces }))
  }
  return [
    ...pieces(a).map((piece) => stretchOf(piece, b, direction)),
    ...pieces(b).map((piece) => stretchOf(a, piece, direction)),
  ]
}

/** A depth said of a feature's first member holds for the others, each from the edge it opens to. */
function atOtherMembers(
  context: Context,
  feature: string,
  from: string,
  to: string,
  mm: number,
  direction: Vec3,
): Stretch[] {
  const members = context.features.get(feature)?.members ?? []
  const [first, ...others] = members
  if (!first || !to.startsWith(`${first.id} `) || !to.endsWith('floor')) return []
  return others.flatMap((m): Stretch[] => {
    const floor = mooringOf(context, m.id + to.slice(first.id.length), direction)
    const base = mooringOf(context, from, direction)
    if (!floor || !base) return []
    const apart = (p: Mooring) => Math.abs(dot(p.at, direction) - dot(floor.at, direction))
    if (Math.abs(apart(base) - mm) < 1e-5) return [stretchOf(base, floor, direction)]
    const pair = pairApart(context, floor.faces, direction, mm, m.id, 'overall', facesSquareTo(context, direction))
    return pair ? [stretchOf(pair[0], pair[1], direction)] : []
  })
}

export function pitchDraft(context: Context, chosen: Chosen<'pitch'>): Draft | undefined {
  const { size, members, direction, group, span } = chosen
  const moorings = members.map((m) => mooringOf(context, m, direction))
  const missing = members.find((_, i) => !moorings[i])
  if (missing) return lost(context, chosen, missing)
  const known = moorings as Mooring[]
  const [a, b] = [known[0]!, known[1]!]
  const statement: Statement = { kind: 'pitch', direction, members: known }
  return {
    id: `${group}/pitch/${directionWords(direction)}`,
    callout: lengthCallout(size, context.writing, members.length - 1),
    value: size.mm,
    size,
    direction: directionWords(direction),
    states: [statement],
    shows: showLinear(a, b, direction, a.axis ? { facing: a.axis } : {}),
    span,
    ...(group ? { feature: group } : {}),
  }
}

/** The faces and those that run on smoothly from them: the round ends of a slot's sides. */
function withRunOns(context: Context, faces: readonly number[]): number[] {
  const all = new Set(faces)
  for (const { faces: sides, smooth } of context.part.body.edges) {
    const [a, b] = sides
    if (!smooth || b === undefined) continue
    if (faces.includes(a)) all.add(b)
    if (faces.includes(b)) all.add(a)
  }
  return [...all]
}

const touches = ({ part }: Context, face: number, members: readonly Member[]): boolean =>
  part.body.edges.some((e) => e.faces.includes(face) && members.some((m) => m.faces.some((f) => e.faces.includes(f))))

const isOnCone = ({ part }: Context, { faces }: Mooring): boolean =>
  part.body.faces.some((f) => f.surface.kind === 'cone' && faces.includes(f.id))

/** Width, length or depth of a feature, found on the feature's own faces, at all its members. */
export function extentDraft(
  context: Context,
  chosen: Chosen<'width'> | Chosen<'length'> | Chosen<'depth'>,
  direction: Vec3,
): Draft | undefined {
  const { size, of, group } = chosen
  const feature = context.features.get(of) ?? context.features.get(group ?? '')
  const members = feature?.members ?? []
  const measured = chosen.kind === 'length' ? (chosen.measured ?? 'overall') : 'overall'
  const square = facesSquareTo(context, direction)
  // A keyseat's depth is from the surface that it is cut into, not from another as large beside it.
  const cutInto = feature?.kind === 'keyseat' ? square.filter((f) => touches(context, f, members)) : []
  const outer = cutInto.length > 0 ? cutInto : square
  const pairs = members.flatMap((m) => {
    const faces = withRunOns(context, m.faces)
    const pair = pairApart(context, faces, direction, size.mm, m.id, measured, outer)
    return pair ? [pair] : []
  })
  const first = pairs[0]
  if (!first) return lost(context, chosen, `${of} ${chosen.kind}`)
  const stretches = pairs.map(([a, b]) => stretchOf(a, b, direction))
  // A keyseat's own section across the shaft shows its width and depth true (common practice, no source).
  // In a taper its depth counts from the taper's sharp edge, which only a view along the shaft holds.
  const axis = context.part.axis?.direction
  const onRim = chosen.kind === 'depth' && first.some((m) => isOnCone(context, m))
  const across =
    feature?.kind === 'keyseat' && axis && chosen.kind !== 'length'
      ? onRim
        ? cross(axis, direction)
        : axis
      : undefined
  const facing = across ?? (chosen.kind === 'depth' ? undefined : feature?.outward)
  const draft = linearDraft(context, {
    id: `${group ?? of}/${chosen.kind}/${directionWords(direction)}`,
    size,
    stretches,
    moorings: first,
    direction,
    wish: { own: true, ...(facing ? { facing } : {}), ...(across ? { cut: members.flatMap((m) => m.faces) } : {}) },
    feature: feature?.id,
    // flats in pairs are one cut from several sides: what holds for one needs no count
    count: feature?.kind === 'flat-cut' ? 1 : pairs.length,
  })
  const ends = chosen.kind === 'length' && feature ? endAtShoulder(context, feature.id, first, direction) : []
  return { ...draft, states: [...draft.states, ...ends] }
}

/** The round end of a keyseat that stands against a shoulder is drawn there: its length counts from the shoulder. */
function endAtShoulder(context: Context, feature: string, ends: readonly Mooring[], direction: Vec3): Statement[] {
  return context.part.implied.flatMap(({ kind, between: [own, other] }): Statement[] => {
    if (kind !== 'aligned' || !own?.startsWith(`${feature} `) || !own.endsWith(' end') || !other) return []
    const shoulder = mooringOf(context, other, direction)
    const level = (m: Mooring) => dot(m.at, direction)
    const end = shoulder && ends.find((e) => Math.abs(level(e) - level(shoulder)) < 1e-5)
    const isRound = end?.faces.every((f) => isCylinder(context, f))
    return shoulder && end && isRound ? [{ kind: 'aligned', direction, reaches: [shoulder, end] }] : []
  })
}

const isCylinder = ({ part }: Context, face: number): boolean =>
  part.body.faces.some((f) => f.id === face && f.surface.kind === 'cylinder')
