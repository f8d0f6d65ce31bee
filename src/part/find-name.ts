import type { Name, Side } from '../brief/brief.ts'
import { nearestWord } from '../brief/spelling.ts'
import { endOf, startOf } from '../geometry/evaluate.ts'
import type { Vec3 } from '../geometry/vec.ts'
import type { RoundFace, WorkFace } from './model.ts'
import { axisOf, faceAxes, SIDES } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** Lower case, single blanks, without the words that add nothing. */
export function plainName(text: string): string {
  return text
    .toLowerCase()
    .replace(/[,;]/g, ' ')
    .replace(/\b(the|of|surface)\b/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
}

/** A labelled hole is found as hole and as bore, whichever word its statement has. */
export function bothCalled(text: string): readonly string[] {
  const [, kind, rest] = /^(hole|bore)( [a-z].*)$/.exec(text) ?? []
  return kind ? [text, `${kind === 'hole' ? 'bore' : 'hole'}${rest}`] : [text]
}

/** Also `left edge` and `left side`, where a distance from the left is meant. */
const withoutFace = (text: string) =>
  text.replace(/ face$/, '').replace(/^(left|right|front|rear|top|bottom) (edge|side)$/, '$1')

function candidates<T extends { readonly name: string }>(all: readonly T[], shop: Workshop, text: string): T[] {
  const short = withoutFace(text)
  const exact = all.filter((f) => {
    const name = f.name.toLowerCase()
    return name === text || name === short || withoutFace(name) === short
  })
  const other = shop.aliases.get(short) ?? []
  const found = [...exact, ...other.flatMap((n) => all.filter((f) => f.name === n && !exact.includes(f)))]
  return found.length > 0 ? found : ofTheOnly(all, shop, short)
}

/** `step top` where the part has one step: that of `step 1 top`. A step's floor is its face that lies level. */
function ofTheOnly<T extends { readonly name: string }>(all: readonly T[], shop: Workshop, text: string): T[] {
  const [, kind, own, rest] = /^(step|notch|slot|pocket|groove)( \S+)? (floor|[a-z]+)$/.exec(text) ?? []
  if (kind === undefined || rest === undefined) return []
  if (!own && shop.brief.features.filter((f) => f.kind === kind).length > 1) return []
  const ends = kind === 'step' && rest === 'floor' ? ['top', 'bottom'] : [rest]
  const names = ends.map((end) => `${kind}${own ?? ' 1'} ${end}`)
  return all.filter((f) => names.includes(withoutFace(f.name.toLowerCase())))
}

/** The flat face worked on; `from` is the side of the tool. Leaves a mark where there is none. */
export function findWorkFace(shop: Workshop, name: Name, from?: Side): WorkFace | undefined {
  const text = plainName(name.text)
  const found = candidates(shop.faces, shop, text)
  if (from) {
    const fitting = found.find((f) => f.side === from)
    if (fitting) return fitting
    if (found.length > 0) {
      shop.must(
        'wrong-side',
        name.span,
        `The ${name.text} cannot be worked from the ${from}.`,
        `from ${[...new Set(found.map((f) => f.side))].join(' or ')}`,
      )
      return undefined
    }
    const side = shop.faces.find((f) => f.name === from && text === '')
    if (side) return side
  }
  return found[0] ?? endFace(shop, text) ?? (from && endFace(shop, `${text} ${from}`))
}

/** `hub left face`, where the step's end is an end or a shoulder that has another name: the same face. */
function endFace(shop: Workshop, text: string): WorkFace | undefined {
  const end = shoulderOf(shop, text)
  const side = SIDES.find((s) => text.split(' ').includes(s))
  return end && shop.faces.find((f) => f.side === side && axisOf[f.side] === end.axis && Math.abs(f.at - end.at) < 1e-9)
}

/** The round surface of that name. */
export function findRound(shop: Workshop, name: Name): RoundFace | undefined {
  const text = plainName(name.text)
  const exact = shop.rounds.find((f) => f.name.toLowerCase() === text)
  return exact ?? candidates(shop.rounds, shop, text)[0]
}

/** Marks a name that means nothing on this part, with the nearest that does. */
export function markUnknown(shop: Workshop, name: Name, what: string, known: readonly string[]): void {
  const text = plainName(name.text)
  if (markNotSquare(shop, name, text)) return
  // what was just refused is no advice, nor is a name that no statement can hold
  const offers = [...new Set(known)].filter((k) => withoutFace(plainName(k)) !== withoutFace(text) && !/\.\d/.test(k))
  // one number is as near as another
  const near = /^(side|corner) \d+$/.test(text) ? undefined : nearestWord(text, offers)
  shop.must(
    'unknown-name',
    name.span,
    `There is no ${what} called “${name.text}” on this part${near ? `; the nearest name is “${near}”` : ''}.`,
    near
      ? placedName(shop, near)
      : offers
          .slice(0, 12)
          .map((k) => placedName(shop, k))
          .join(', ') || 'another statement',
  )
}

/** A name that is no axis: the axes of the part are offered, and where they stand. */
export function markNoAxis(shop: Workshop, name: Name): void {
  const axes = [...shop.data.values()].flatMap((d) => (d.kind === 'axis' && !d.id.startsWith('corner ') ? [d.id] : []))
  markUnknown(shop, name, 'axis', axes)
}

/** A side of the outline that is there, but neither worked nor counted from: it slopes, or it is round. */
function markNotSquare(shop: Workshop, name: Name, text: string): boolean {
  const side = shop.profile?.curves.find((c) => c.face === withoutFace(text))
  if (!side || side.face === '' || shop.faces.some((f) => f.name === side.face)) return false
  const slopes = side.curve.kind === 'line'
  const flat = [...new Set(shop.faces.map((f) => f.name))].slice(0, 12).join(', ')
  shop.must(
    'side-not-square',
    name.span,
    `The outline’s ${side.face} ${slopes ? 'slopes' : 'is round'}: features are worked into the faces that stand square to the part’s directions, and counted from those.`,
    slopes
      ? `one of ${flat}; where most is worked on the slope, an outline laid so that this side runs right or up`
      : `one of ${flat}; for a hole about its centre: on axis of ${side.face}`,
  )
  return true
}

/** Numbered sides and corners of an outline with their place, counted from its first point. */
function placedName(shop: Workshop, name: string): string {
  const { profile } = shop
  const number = /^(side|corner) \d+( axis)?$/.exec(name)
  if (!profile || !number) return name
  const { across, up } = faceAxes(profile.axis)
  const unit = shop.brief.header.units === 'inch' ? 25.4 : 1
  const figure = (mm: number) => Number((mm / unit).toFixed(3))
  if (number[1] === 'corner' || number[2]) {
    const point = shop.data.get(name)?.point
    return point ? `${name} (at ${figure(point[across])} across, ${figure(point[up])} up)` : name
  }
  const curve = profile.curves.find((c) => c.face === name)?.curve
  if (!curve) return name
  const [p, q] = [startOf(curve), endOf(curve)].map((e) => `${figure(e[0])}, ${figure(e[1])}`)
  return `${name} (${curve.kind === 'arc' ? 'arc ' : ''}from ${p} to ${q})`
}

export function faceWords(shop: Workshop): string[] {
  return [...shop.faces.map((f) => f.name), ...shop.rounds.map((f) => f.name), ...shop.aliases.keys()]
}

/** Something a distance is measured from: a datum and its coordinate along one axis of space. */
export interface Origin {
  readonly id: string
  readonly axis: 0 | 1 | 2
  readonly at: number
}

/**
 * The plane that a distance along one of the given axes is measured from. A feature's or the part's axis serves where
 * `way` says along which axis. Leaves a mark where the name means nothing there.
 */
export function findOrigin(
  shop: Workshop,
  name: Name,
  axes: readonly (0 | 1 | 2)[],
  way?: 0 | 1 | 2,
): Origin | undefined {
  const text = plainName(name.text)
  const allowed = way === undefined ? axes : [way]
  for (const face of candidates(shop.faces, shop, text)) {
    const axis = axisOf[face.side]
    if (allowed.includes(axis)) return { id: face.name, axis, at: face.at }
  }
  const planes = [...shop.data.values()].filter((d) => d.kind === 'plane')
  for (const datum of candidates(planes, shop, text)) {
    const axis = squareAxis(datum.normal)
    if (axis !== undefined && allowed.includes(axis)) return { id: datum.id, axis, at: datum.point[axis] }
  }
  const shoulder = shoulderOf(shop, text)
  if (shoulder && allowed.includes(shoulder.axis)) return shoulder
  const line = axisDatum(shop, text)
  if (line) {
    const axis = way ?? (axes.length === 1 ? axes[0] : undefined)
    if (axis !== undefined) return { id: line.id, axis, at: line.point[axis] }
    shop.must(
      'direction-missing',
      name.span,
      `Across or up from ${name.text}? An axis alone does not say.`,
      'across or up before the distance',
    )
    return undefined
  }
  const right = candidates(shop.faces, shop, text).length > 0
  if (right) {
    const words = ['left-right', 'front-rear', 'up-down']
    const free = shop.faces.filter((f) => allowed.includes(axisOf[f.side])).map((f) => f.name)
    shop.must(
      'wrong-direction',
      name.span,
      `A distance ${allowed.map((a) => words[a]).join(' or ')} cannot be measured from ${name.text}.`,
      free.join(', '),
    )
  } else markUnknown(shop, name, 'face or axis', [...faceWords(shop), ...shop.data.keys()])
  return undefined
}

/** The axis of the part or of a feature, by name or label. */
export function axisDatum(shop: Workshop, text: string): { readonly id: string; readonly point: Vec3 } | undefined {
  for (const wanted of bothCalled(withoutFace(text))) {
    for (const d of shop.data.values()) {
      if (d.kind !== 'axis') continue
      const id = d.id.toLowerCase()
      if (id === wanted || id === `${wanted} axis` || id === `${wanted}.1 axis`) return d
    }
  }
  return undefined
}

/** `collar left face`: the plane at an end of a turned step, even where the neighbour is the larger. */
export function shoulderOf(shop: Workshop, text: string): Origin | undefined {
  const { contour } = shop
  if (!contour) return undefined
  for (const piece of contour.outer) {
    const name = piece.name.toLowerCase()
    if (!text.startsWith(`${name} `)) continue
    const side = SIDES.find((s) => withoutFace(text) === `${name} ${s}`)
    if (!side || axisOf[side] !== contour.axis) continue
    const at = side === 'left' || side === 'front' || side === 'bottom' ? piece.h0 : piece.h1
    const datum = [...shop.data.values()].find(
      (d) => d.kind === 'plane' && squareAxis(d.normal) === contour.axis && Math.abs(d.point[contour.axis] - at) < 1e-9,
    )
    if (datum) return { id: datum.id, axis: contour.axis, at }
  }
  return undefined
}

function squareAxis(normal: Vec3): 0 | 1 | 2 | undefined {
  return ([0, 1, 2] as const).find((k) => Math.abs(normal[k]) > 1 - 1e-12)
}
