import type { Brief, Header, Lie, Side, Stock, ViewRequest } from '../../src/brief/brief.ts'
import type { Size } from '../../src/brief/size.ts'
import type { Vec3 } from '../../src/geometry/vec.ts'
import type { SolidKey } from '../../src/kernel/kernel.ts'
import type { OcctKernel } from '../../src/kernel/open.ts'
import type { Datum, Part, PartFeature } from '../../src/part/part.ts'
import { isAbout } from '../../src/views/centre-lines/round-features.ts'

const span = { from: 0, to: 0 }

export interface PartWords {
  readonly solid: SolidKey
  readonly features?: readonly PartFeature[]
  readonly data?: readonly Datum[]
  readonly axis?: { readonly point: Vec3; readonly direction: Vec3; readonly lie: Lie }
  readonly flat?: { readonly side: Side; readonly thickness: Size }
  readonly header?: Partial<Header>
  readonly stock?: Stock
  readonly views?: readonly ViewRequest[]
}

/** A part with just what the views room reads, without a brief's text. */
export function handMade(kernel: OcctKernel, words: PartWords): Part {
  const header: Header = {
    units: 'mm',
    practice: 'ISO',
    projection: 'first angle',
    general: [],
    notes: [],
    ...words.header,
  }
  const brief: Brief = {
    text: '',
    header,
    features: [],
    shows: [],
    places: [],
    schemes: [],
    marks: [],
    ...(words.stock ? { stock: words.stock } : {}),
    ...(words.views ? { views: words.views } : {}),
  }
  return {
    brief,
    solid: words.solid,
    body: kernel.body(words.solid),
    data: words.data ?? [],
    features: words.features ?? [],
    chosen: [],
    implied: [],
    properties: { volume: 0, area: 0, centroid: [0, 0, 0] },
    marks: [],
    ...(words.axis ? { axis: words.axis } : {}),
    ...(words.flat ? { flat: words.flat } : {}),
  }
}

/** A feature whose members are the round faces about the given axes: hollow ones, or full ones for a boss. */
export function roundFeature(
  kernel: OcctKernel,
  solid: SolidKey,
  id: string,
  kind: PartFeature['kind'],
  outward: Vec3,
  members: readonly (readonly Vec3[])[],
  pattern?: PartFeature['pattern'],
): PartFeature {
  const body = kernel.body(solid)
  return {
    id,
    kind,
    outward,
    members: members.map((points, i) => ({
      id: `${id}/${i + 1}`,
      axes: [],
      faces: body.faces
        .filter((f) => f.reversed === (kind !== 'boss') && points.some((p) => isAbout(f.surface, p, outward)))
        .map((f) => f.id),
      point: points[0]!,
    })),
    ...(pattern ? { pattern } : {}),
  }
}

export function size(text: string, unit: 'mm' | 'inch' = 'mm'): Size {
  const value = Number(text)
  const decimals = text.includes('.') ? text.split('.')[1]!.length : 0
  const mm = unit === 'mm' ? value : value * 25.4
  return { text, value, form: decimals > 0 ? 'decimal' : 'whole', decimals, span, unit, unitTyped: false, mm }
}

export const section = (letter: string, extent: 'full' | 'half' = 'full'): ViewRequest => ({
  kind: 'section',
  letter,
  extent,
  span,
})
export const view = (side: Side): ViewRequest => ({ kind: 'view', side, span })
