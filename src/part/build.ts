import type { Brief, Feature, Stock } from '../brief/brief.ts'
import type { Size } from '../brief/size.ts'
import type { Body } from '../kernel/body.ts'
import type { OcctKernel } from '../kernel/open.ts'
import type { SolidProperties } from '../kernel/properties.ts'
import { densityOf } from '../standards/materials.ts'
import { assemble } from './assemble.ts'
import { contourFault } from './contour.ts'
import { nameDatumFaces } from './datum-faces.ts'
import { blendName, faceNames } from './face-names.ts'
import { workFeature } from './features/work-feature.ts'
import { shoulderOf } from './find-name.ts'
import { namedFeatures } from './find-named.ts'
import type { MassProperties, Part } from './part.ts'
import { profileProperties } from './profile-mass.ts'
import { depthsStand } from './relief.ts'
import { sideOfDirection, unitAxis } from './sides.ts'
import { buildStock } from './stock/build-stock.ts'
import { type FaceIds, Workshop } from './workshop.ts'

/**
 * Works a brief into a solid part. Never throws on what a brief says: what cannot be built is left out and marked.
 * Without a usable stock the body has no faces. The solid stays in the kernel until `kernel.free(part.solid)`.
 */
export function buildPart(brief: Brief, kernel: OcctKernel): Part {
  const shop = new Workshop(brief)
  const { stock } = brief
  if (!stock || !sizesStand(shop, stock) || !buildStock(shop, stock)) return emptyPart(shop)
  // steps first: depths of what is drilled run from the surfaces that they leave
  const [steps, others] = [true, false].map((step) => brief.features.filter((f) => (f.kind === 'step') === step))
  for (const feature of [...steps!, ...others!]) if (featureSizesStand(shop, feature)) workFeature(shop, feature)
  depthsStand(shop)
  if (shop.contour) {
    const fault = contourFault(shop.contour)
    if (fault) {
      shop.must('bore-too-large', stock.span, `${fault.inner} reaches the outside at ${fault.outer}.`, 'a smaller bore')
      return emptyPart(shop)
    }
  }
  const shape = assemble(shop, kernel.oc)
  if (!shape) return emptyPart(shop)
  const solid = kernel.keep(shape)
  kernel.setNames(solid, faceNames(shop))
  let body = kernel.body(solid)
  const blends = body.faces.flatMap((f) => {
    const name = f.name ? undefined : blendName(shop, f.surface)
    return name ? [{ name, surface: f.surface }] : []
  })
  if (blends.length > 0) {
    kernel.setNames(solid, [...faceNames(shop), ...blends])
    body = kernel.body(solid)
  }
  const ids = idsByName(body)
  const axisDatum = shop.contour && unitAxis[shop.contour.axis]
  const solved = {
    data: nameDatumFaces(shop, body, ids),
    features: shop.features.map((make) => make(ids)),
    chosen: shop.chosen.flatMap((make) => make(ids) ?? []),
  }
  const named = namedFeatures(
    { brief, body, ...solved },
    shop.aliases,
    (text) => shoulderOf(shop, text)?.id,
    (rule, name, text, expected) => shop.must(rule, name.span, text, expected),
  )
  return {
    brief,
    solid,
    body,
    ...solved,
    ...(named ? { named } : {}),
    implied: shop.implied,
    properties: weigh(brief, profileProperties(shop) ?? kernel.properties(solid)),
    ...(axisDatum ? { axis: { point: [0, 0, 0], direction: axisDatum, lie: shop.contour!.lie } } : {}),
    ...flatness(shop, stock),
    marks: shop.marks,
  }
}

function idsByName(body: Body): FaceIds {
  const map = new Map<string, number[]>()
  for (const face of body.faces) {
    if (!face.name) continue
    const list = map.get(face.name)
    if (list) list.push(face.id)
    else map.set(face.name, [face.id])
  }
  return (...names) => names.flatMap((n) => map.get(n) ?? [])
}

function weigh(brief: Brief, measured: SolidProperties): MassProperties {
  const density = densityOf(brief.header.material?.text ?? '')
  return density ? { ...measured, density, mass: measured.volume * density.gPerCm3 * 1e-6 } : measured
}

/** Uniform thickness: a plate-like stock on which nothing stands up or goes part way in. */
function flatness(shop: Workshop, stock: Stock): Pick<Part, 'flat'> {
  if (stock.kind !== 'plate' && stock.kind !== 'flat' && stock.kind !== 'outline') return {}
  if (shop.steps.length > 0 || !shop.profile) return {}
  return { flat: { side: sideOfDirection(unitAxis[shop.profile.axis]), thickness: stock.thickness } }
}

function emptyPart(shop: Workshop): Part {
  return {
    brief: shop.brief,
    solid: { key: 0 },
    body: { faces: [], edges: [], box: { min: [0, 0, 0], max: [0, 0, 0] } },
    data: [],
    features: [],
    chosen: [],
    implied: [],
    properties: { volume: 0, area: 0, centroid: [0, 0, 0] },
    marks: shop.marks,
  }
}

const isSize = (v: unknown): v is Size => typeof v === 'object' && v !== null && 'mm' in v

/** Every length of the stock must be greater than zero. */
function sizesStand(shop: Workshop, stock: Stock): boolean {
  const own = Object.entries(stock).filter(([, v]) => isSize(v)) as [string, Size][]
  const steps =
    stock.kind === 'turned'
      ? stock.steps.flatMap((s): [string, Size][] => [
          [`${s.name.text} diameter`, s.diameter],
          ...(s.endDiameter ? [[`${s.name.text} far diameter`, s.endDiameter] as [string, Size]] : []),
          [`${s.name.text} length`, s.length.size],
        ])
      : []
  return allPositive(shop, [...own, ...steps])
}

function allPositive(shop: Workshop, sizes: readonly (readonly [string, Size])[]): boolean {
  const bad = sizes.filter(([, s]) => !(s.mm > 0) || !Number.isFinite(s.mm) || s.mm > LARGEST)
  for (const [what, size] of bad) {
    const word = what.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`)
    if (size.mm > 0)
      shop.must('size-too-large', size.span, `A ${word} of ${size.text} is beyond any sheet.`, 'a length under 100 m')
    else shop.must('size-zero', size.span, `The ${word} must be greater than zero.`, 'a length greater than zero')
  }
  return bad.length === 0
}

/** 100 m, in mm. */
const LARGEST = 1e5

function featureSizesStand(shop: Workshop, feature: Feature): boolean {
  const sizes = Object.entries(feature).filter(([, v]) => isSize(v)) as [string, Size][]
  return allPositive(shop, sizes)
}
