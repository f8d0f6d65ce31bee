import type { Span } from '../../brief/span.ts'
import type { Part } from '../../part/part.ts'
import type { ViewSet } from '../../views/view.ts'
import type { Proof } from '../dimension.ts'
import { isWhole, lineFor } from './advice.ts'
import { SAME } from './elements.ts'
import { featureOf } from './feature-of.ts'
import type { Model, Unknown } from './model.ts'

const DIRECTIONS = ['left-right', 'front-rear', 'up-down'] as const

/** The element in a drafter's words: its face's name, its feature, or where it stands. */
export function nameOf(part: Part, model: Model, element: number): string {
  const { faces, surface, along } = model.elements[element]!
  const own = featureOf(part, faces)
  const named = part.body.faces.find((f) => faces.includes(f.id) && f.name)?.name
  if (named) return named
  if (surface.kind === 'plane' && along !== undefined) {
    const at = surface.axes.origin[along]
    const datum = part.data.find(
      (d) =>
        d.kind === 'plane' && Math.abs(Math.abs(d.normal[along]) - 1) < 1e-9 && Math.abs(d.point[along] - at) < SAME,
    )
    if (datum) return datum.name
    const away = part.brief.header.units === 'inch' ? `${round(at / 25.4)} in` : `${round(at)} mm`
    return `the plane ${away} from the middle, ${DIRECTIONS[along]}`
  }
  if (own) return own.id
  return surface.kind === 'plane' ? 'a sloping plane' : `a ${surface.kind}`
}

const round = (n: number): number => Math.round(n * 1000) / 1000

/** A set of unknowns that can still move together, as the sheet's reader would say it, with the line that mends it. */
export function missingWords(
  part: Part,
  model: Model,
  loose: readonly number[],
  views: ViewSet | undefined,
): Proof['missing'][number] {
  const lead = model.unknowns[leadOf(model, loose)]!
  const others = loose.filter((u) => u !== lead.id)
  const names = unique(lead.elements.map((e) => nameOf(part, model, e)))
  const name = names.length === 0 ? 'the centre of the bolt circle' : names.slice(0, 3).join(', ')
  const text = sentence(part, model, lead, name, others)
  const feature = lead.elements.map((e) => featureOf(part, model.elements[e]!.faces)).find((f) => f)
  const span: Span | undefined = feature?.feature?.span ?? part.brief.stock?.span
  const view = viewFor(model, lead, views)
  const write = lineFor(part, model, lead)
  return {
    text: view ? `${text}; the size would stand in the ${view} view` : text,
    ...(view ? { view } : {}),
    ...(span ? { span } : {}),
    write,
    element: feature?.id ?? name,
  }
}

/** Free-form surfaces, one mark for all that lie between the same features: what ran into what made them. */
export function freeFormWords(part: Part, model: Model): Proof['missing'][number][] {
  const said = new Map<string, Proof['missing'][number]>()
  for (const { id, faces } of model.freeForm) {
    const beside = model.body.edges.flatMap((e) => (e.faces.some((f) => faces.includes(f!)) ? e.faces : []))
    const features = part.features.filter(
      (f) => f.feature && f.members.some((m) => m.faces.some((face) => beside.includes(face) || faces.includes(face))),
    )
    const names = features.map((f) => f.id)
    const last = features.at(-1)?.feature
    const text =
      names.length > 0
        ? `where ${names.slice(0, 3).join(' and ')} meet${names.length === 1 ? 's its neighbours' : ''} there is a free-form surface, which no size here can fix`
        : `${nameOf(part, model, id)} is a free-form surface, which no size here can fix`
    if (said.has(names.join() || text)) continue
    said.set(names.join() || text, {
      text,
      ...(last ? { span: last.span, write: 'a smaller size, or a place where they do not meet' } : {}),
      ...(features[0] ? { element: features[0].id } : {}),
    })
  }
  return [...said.values()]
}

/** The plainest of the unknowns to speak of: a round's position, then a plane's, then a radius. */
function leadOf(model: Model, loose: readonly number[]): number {
  const weight = (u: Unknown): number => {
    if (u.kind === 'position') return u.elements.some((e) => model.elements[e]!.surface.kind !== 'plane') ? 0 : 1
    return u.kind === 'radius' ? 2 : 3
  }
  return [...loose].sort((a, b) => weight(model.unknowns[a]!) - weight(model.unknowns[b]!) || a - b)[0]!
}

function sentence(part: Part, model: Model, lead: Unknown, name: string, others: readonly number[]): string {
  const also = unique(others.flatMap((u) => model.unknowns[u]!.elements.map((e) => nameOf(part, model, e))))
    .filter((n) => n !== name)
    .slice(0, 3)
  const together = also.length > 0 ? ` (with ${also.join(', ')})` : ''
  switch (lead.kind) {
    case 'position':
      return `no size says where ${name}${together} stands ${DIRECTIONS[lead.along!]}`
    case 'radius':
      return `${name} has no ${isWhole(model, lead) ? 'diameter' : 'radius'}`
    case 'angle':
      return `${name} has no angle`
    case 'place along its axis':
      return `no size says where ${name} ends along its axis`
    case 'direction':
      return `no angle or second size says how ${name}${together} slopes`
    case 'place off the axes':
      return `no size says where ${name}${together} stands`
  }
}

function viewFor(model: Model, lead: Unknown, views: ViewSet | undefined): string | undefined {
  if (!views) return undefined
  const axis = lead.elements.map((e) => model.elements[e]!).find((e) => e.surface.kind !== 'plane')?.along
  const squareTo = (toViewer: readonly number[], k: number | undefined) =>
    k !== undefined && Math.abs(toViewer[k]!) > 0.99
  const flat = views.views.filter((v) => v.kind !== 'pictorial')
  const across = flat.filter((v) => lead.along === undefined || !squareTo(v.frame.toViewer, lead.along))
  return (across.find((v) => squareTo(v.frame.toViewer, axis)) ?? across[0])?.id
}

const unique = (list: readonly string[]): string[] => [...new Set(list)]

/** Words for a size that says again what others have said. */
export function repeatedWords(what: string, earlier: readonly string[]): string {
  if (earlier.length === 0) return `${what} fixes nothing that the shape does not already imply`
  return `${what} is already fixed by ${earlier.join(', ')}: leave one out, or show one in brackets`
}
