import type { Name } from '../brief/brief.ts'
import type { Size } from '../brief/size.ts'
import { nearestWord } from '../brief/spelling.ts'
import type { Vec3 } from '../geometry/vec.ts'
import { dot, negate } from '../geometry/vec3.ts'
import type { BodyFace } from '../kernel/body.ts'
import { bothCalled, plainName } from './find-name.ts'
import type { NamedFeature, NamedFeatures } from './named-feature.ts'
import type { Part, PartFeature } from './part.ts'

type Named = Pick<Part, 'brief' | 'body' | 'data' | 'features' | 'chosen'>
type MarkName = (rule: string, name: Name, text: string, expected: string) => void
type Aliases = ReadonlyMap<string, readonly string[]>
/** The plane at the end of a turned step, even where the neighbour is the larger and gives it its name. */
export type Shoulder = (text: string) => string | undefined

/** Looks the names up; one that means nothing, or several things, is marked. Undefined where the brief names none. */
export function namedFeatures(
  part: Named,
  aliases: Aliases,
  shoulder: Shoulder,
  mark: MarkName,
): NamedFeatures | undefined {
  const { datums, frames, textures, stacks } = part.brief
  if (!datums && !frames && !textures && !stacks) return undefined
  const find = ({ of }: { readonly of: Name }) => namedFeature(part, aliases, shoulder, of, mark)
  return {
    datums: (datums ?? []).map(find),
    frames: (frames ?? []).map(find),
    textures: (textures ?? []).map(find),
    stacks: (stacks ?? []).map(({ from, to }) => [find({ of: withoutEdge(from) }), find({ of: withoutEdge(to) })]),
  }
}

function namedFeature(
  part: Named,
  aliases: Aliases,
  shoulder: Shoulder,
  name: Name,
  mark: MarkName,
): NamedFeature | undefined {
  const text = singular(plainName(name.text))
  const own = part.features.filter(
    (f) => bothCalled(text).includes(f.id.toLowerCase()) || f.feature?.label?.text.toLowerCase() === text,
  )
  const alike = own.length > 0 ? own : part.features.filter((f) => kindWords(part, f).includes(text))
  const [feature] = alike
  if (feature && alike.length > 1) {
    const ids = alike.map((f) => f.id)
    const write = `${ids.slice(0, 3).join(' or ')}, or a letter at the one that is meant, such as ${kindWords(part, feature)[0]} A, and that letter here`
    mark('name-of-several', name, `“${name.text}” could be any of ${ids.length}: ${ids.join(', ')}.`, write)
    return undefined
  }
  const found =
    (feature && ofFeature(part, feature)) ??
    planeNamed(part, aliases, text) ??
    planeNamed(part, aliases, shoulder(text)?.toLowerCase() ?? '') ??
    cutPlaneNamed(part, text) ??
    surfaceNamed(part, aliases, text) ??
    extentNamed(part, text)
  if (found) return found
  const beside = edgeBetween(part, text)
  if (beside) {
    const write = beside.length > 0 ? `the surface itself: ${beside.join(' or ')}` : 'the surface at one side of it'
    const why = `“${name.text}” is an edge; tolerances, datums and textures are of surfaces, axes and middle planes.`
    mark('edge-not-held', name, why, write)
    return undefined
  }
  const known = knownNames(part, aliases)
  const near = nearestWord(text, known)
  const why = feature
    ? `${feature.id} has neither a flat, a round nor a width that could be held.`
    : `There is no surface, hole or other feature called “${name.text}” on this part${near ? `; the nearest name is “${near}”` : ''}.`
  mark('unknown-name', name, why, near ?? known.slice(0, 12).join(', '))
  return undefined
}

/** The surfaces that meet at what the words call an edge or a corner; undefined where they call it nothing of the kind. */
function edgeBetween(part: Named, text: string): string[] | undefined {
  const words = /^(.*?) ?\b(edges?|corners?)$/.exec(text)
  if (!words) return undefined
  const planes = part.data.flatMap((d) => (d.kind === 'plane' ? [d.id] : []))
  const own = part.features.filter((f) => f.id.toLowerCase() === singular(words[1]!)).map((f) => f.id)
  return [...own, ...planes.filter((id) => words[1]!.split(/[ ,]+/).includes(id))]
}

/** The edge of a round stands where its axis is named. */
const withoutEdge = (name: Name): Name => ({ ...name, text: name.text.replace(/ edge$/, '') })

/** `holes A` is the feature `hole A`. */
function singular(text: string): string {
  const [first = '', ...rest] = text.split(' ')
  const one = /^(bosses|notches)$/.test(first) ? first.slice(0, -2) : first.replace(/(?<=[a-z]{2})s$/, '')
  return /^(hole|bore|slot|pocket|boss|notche?|spigot|groove|keyseat|flat)$/.test(one)
    ? [one === 'spigot' ? 'boss' : one, ...rest].join(' ')
    : text
}

/** What the feature is called by its kind; a bore of a part that is not turned is a hole that was written as `bore`. */
function kindWords({ brief }: Named, { kind, feature }: PartFeature): string[] {
  if (kind === 'flat-cut') return ['flat']
  const written = kind === 'hole' && feature && /^bores?\b/i.test(brief.text.slice(feature.span.from))
  return written ? ['bore'] : [kind]
}

const INTERNAL: ReadonlySet<PartFeature['kind']> = new Set([
  'hole',
  'bore',
  'slot',
  'pocket',
  'notch',
  'groove',
  'keyseat',
])

function ofFeature(part: Named, feature: PartFeature): NamedFeature | undefined {
  const mine = new Set(feature.members.flatMap((m) => m.faces))
  const common = { id: feature.id, internal: INTERNAL.has(feature.kind), feature: feature.id }
  const diameter = part.chosen.find(
    (c) =>
      c.kind === 'diameter' &&
      (c.role ?? 'hole') === 'hole' &&
      (c.group === feature.id || c.of === feature.id || (c.faces.length > 0 && c.faces.every((f) => mine.has(f)))),
  )
  if (diameter?.kind === 'diameter') {
    const tapped = feature.feature?.kind === 'hole' && feature.feature.thread !== undefined
    const threaded = tapped || isThreadedStep(part, feature.id)
    return {
      ...common,
      kind: 'round',
      faces: diameter.faces,
      direction: feature.outward,
      size: diameter.size,
      ...(threaded ? { threaded } : {}),
    }
  }
  const width = part.chosen.find((c) => c.kind === 'width' && c.group === feature.id)
  if (width?.kind === 'width') {
    const { direction, size } = width
    const sides = facesOf(part, [...mine]).filter(
      (f) => f.surface.kind === 'plane' && Math.abs(dot(f.surface.axes.z, direction)) > 1 - 1e-9,
    )
    return { ...common, kind: 'width', faces: sides.map((f) => f.id), direction, size }
  }
  const flats = facesOf(part, [...mine]).filter((f) => f.surface.kind === 'plane')
  return flats.length === 1 ? { ...plane(flats[0]!, feature.id), feature: feature.id } : undefined
}

function planeNamed(part: Named, aliases: Aliases, text: string): NamedFeature | undefined {
  const short = text.replace(/ face$/, '')
  const ids = [text, short, `${short} face`, ...(aliases.get(short) ?? [])].map((id) => id.toLowerCase())
  for (const id of ids) {
    const datum = part.data.find((d) => d.kind === 'plane' && d.id.toLowerCase() === id)
    const faces = part.body.faces.filter(
      (f) => f.surface.kind === 'plane' && (f.name?.toLowerCase() === id || isFace(datum, f)),
    )
    const [first] = faces
    if (first) return { ...plane(first, datum?.id ?? first.name ?? id), faces: faces.map((f) => f.id) }
  }
  return undefined
}

/** `hole A counterbore floor`, `groove left side`: flats of a feature's members, the number left out where there is one of a kind. */
function cutPlaneNamed(part: Named, text: string): NamedFeature | undefined {
  const [first, ...rest] = text.split(' ')
  const wanted = [singular(first ?? ''), ...rest].join(' ')
  const flats = part.body.faces.filter((f) => f.surface.kind === 'plane' && f.name !== undefined)
  const full = (f: BodyFace) => f.name!.toLowerCase().replace(/\.\d+(?= )/, '')
  const short = (f: BodyFace) => full(f).replace(/^([a-z]+) 1 /, '$1 ')
  const several = part.features.some((f) => f.id === `${first} 2`)
  const faces = flats.filter((f) => full(f) === wanted || (!several && short(f) === wanted))
  const [one] = faces
  return one && { ...plane(one, full(one)), faces: faces.map((f) => f.id) }
}

const isFace = (datum: Named['data'][number] | undefined, face: BodyFace) =>
  datum?.kind === 'plane' && datum.face === face.id

function surfaceNamed(part: Named, aliases: Aliases, text: string): NamedFeature | undefined {
  // A tube's inside is its bore.
  const ids = [text, ...(aliases.get(text) ?? (text === 'inside' ? ['bore'] : []))]
  const faces = part.body.faces.filter((f) => f.surface.kind !== 'plane' && ids.includes(f.name?.toLowerCase() ?? ''))
  const [first] = faces
  if (!first || first.surface.kind === 'spline') return undefined
  const own = faces.map((f) => f.id)
  const diameter = part.chosen.find((c) => c.kind === 'diameter' && c.faces.some((f) => own.includes(f)))
  const threaded = isThreadedStep(part, first.name ?? '')
  return {
    id: first.name ?? text,
    kind: 'round',
    faces: own,
    direction: first.surface.axes.z,
    ...(diameter?.kind === 'diameter' ? { size: diameter.size } : {}),
    ...(threaded ? { threaded } : {}),
    internal: first.reversed,
  }
}

/** A turned step with an outside thread: its number is the thread's. */
function isThreadedStep({ brief: { stock } }: Named, name: string): boolean {
  if (stock?.kind !== 'turned') return false
  return stock.steps.some((s) => s.thread !== undefined && s.name.text.toLowerCase() === name.toLowerCase())
}

/** `width`, `length`, `height`, `thickness` of the stock, between its two sides. */
function extentNamed(part: Named, text: string): NamedFeature | undefined {
  const stock: Partial<Record<string, unknown>> = { ...part.brief.stock }
  const size = stock[text] as Size | undefined
  const extent = part.chosen.find(
    (c) => (c.kind === 'distance' || c.kind === 'thickness') && size !== undefined && c.size === size,
  )
  if (extent?.kind !== 'distance' && extent?.kind !== 'thickness') return undefined
  const faces = [extent.from, extent.to].flatMap((id) => planeNamed(part, new Map(), id.toLowerCase())?.faces ?? [])
  if (faces.length < 2) return undefined
  return { id: text, kind: 'width', faces, direction: extent.direction, size: extent.size, internal: false }
}

function plane(face: BodyFace, id: string): NamedFeature {
  const z: Vec3 = face.surface.kind === 'plane' ? face.surface.axes.z : [0, 0, 1]
  return { id, kind: 'plane', faces: [face.id], direction: face.reversed ? negate(z) : z, internal: false }
}

function facesOf({ body }: Named, ids: readonly number[]): BodyFace[] {
  return body.faces.filter((f) => ids.includes(f.id))
}

function knownNames(part: Named, aliases: Aliases): string[] {
  return [
    ...new Set([
      ...part.features.map((f) => f.id),
      ...part.data.filter((d) => d.kind === 'plane').map((d) => d.id),
      ...part.body.faces.flatMap((f) =>
        f.surface.kind !== 'plane' && f.name && !/ (wall|corner)$/.test(f.name) ? [f.name] : [],
      ),
      ...aliases.keys(),
    ]),
  ]
}
