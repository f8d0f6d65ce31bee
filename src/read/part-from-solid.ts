import type { Brief, Header } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import type { Unit } from '../brief/size.ts'
import type { Body } from '../kernel/body.ts'
import type { SolidKey } from '../kernel/kernel.ts'
import type { SolidProperties } from '../kernel/properties.ts'
import type { AssemblyItem, Part, PartFeature } from '../part/part.ts'
import { axisLie } from '../part/sides.ts'
import { basesOf, levelsOf, planeData } from './part/data.ts'
import { blendFeatures, slopeFeatures } from './part/edge-features.ts'
import { Listing } from './part/listing.ts'
import { NOWHERE, type PartDraft } from './part/part-draft.ts'
import { axisData, bossFeatures, groupsOf, holeFeatures, slotFeatures } from './part/round-features.ts'
import { overall, plainSteps, steps, turnedDiameters } from './part/stock.ts'
import { axisAlong, type Line3, sameLine } from './recognise/borders.ts'
import { recognise } from './recognise/recognise.ts'
import { isRound, wallsOf } from './recognise/walls.ts'

/** A solid that nobody described, as it came from a file. */
export interface ReadSolid {
  readonly name: string
  readonly unit: Unit
  readonly solid: SolidKey
  readonly body: Body
  readonly properties: SolidProperties
  readonly marks: readonly Mark[]
}

const MEASURED = 'Read from a solid model: sizes are measured, tolerances are not stated.'

/**
 * A part with what a drafter would say of it: planes and axes as data, features by their faces, and measured sizes from
 * the left, front and bottom faces (of a turned part from its axis). It stands as it does in the file, z up. Practice
 * goes by the file's unit: inch ASME, third angle; millimetres ISO, first angle.
 */
export function partFromSolid(read: ReadSolid): Part {
  const { body, unit } = read
  const listing = new Listing(unit)
  const header = headerOf(read, listing)
  const found = recognise(body)
  const levels = levelsOf(body, unit)
  const draft: PartDraft = {
    body,
    found,
    listing,
    levels,
    bases: [],
    data: planeData(body, levels),
    features: [],
    chosen: [],
  }
  if (found.axis) draft.data.unshift({ id: 'axis', kind: 'axis', name: 'axis', ...found.axis })
  const groups = groupsOf(found)
  axisData(draft, groups)
  const rounds = draft.data.flatMap((d) =>
    d.kind === 'axis' ? [{ id: d.id, line: { point: d.point, direction: d.direction } }] : [],
  )
  draft.bases = basesOf(body, levels, found.axis, rounds)
  const extents = overall(draft)
  turnedDiameters(draft)
  steps(draft)
  slopeFeatures(draft)
  bossFeatures(draft, groups)
  holeFeatures(draft, groups)
  slotFeatures(draft, groups)
  blendFeatures(draft)
  plainSteps(draft)
  const thickness = found.flat === undefined ? undefined : extents[found.flat]
  const lie = found.axis && axisAlong(found.axis.direction)
  return {
    brief: briefOf(header, listing),
    solid: read.solid,
    body,
    data: draft.data,
    features: draft.features,
    chosen: draft.chosen,
    implied: [],
    properties: read.properties,
    ...(found.axis && lie !== undefined ? { axis: { ...found.axis, lie: axisLie[lie] } } : {}),
    ...(thickness && found.flat !== undefined
      ? { flat: { side: (['right', 'front', 'top'] as const)[found.flat], thickness } }
      : {}),
    marks: [...read.marks, ...measuredMarks(listing)],
  }
}

/** Several solids in their places: overall sizes and centre lines, no features. */
export function partFromAssembly(read: ReadSolid, items: readonly AssemblyItem[]): Part {
  const { body, unit } = read
  const listing = new Listing(unit)
  const header = headerOf(read, listing)
  const levels = levelsOf(body, unit)
  const found = {
    holes: [],
    slots: [],
    bosses: [],
    hollows: [],
    blends: [],
    chamfers: [],
    slopes: [],
    beside: new Map(),
  }
  const draft: PartDraft = {
    body,
    found,
    listing,
    levels,
    bases: [],
    data: planeData(body, levels),
    features: [],
    chosen: [],
  }
  overall(draft)
  return {
    brief: briefOf(header, listing),
    solid: read.solid,
    body,
    data: draft.data,
    features: axesOf(body),
    chosen: draft.chosen,
    implied: [],
    properties: read.properties,
    items,
    marks: [...read.marks, ...measuredMarks(listing)],
  }
}

/** One feature for each axis that whole rounds turn about, whatever solid they are on. */
function axesOf(body: Body): PartFeature[] {
  const lines: { line: Line3; faces: number[] }[] = []
  for (const wall of wallsOf(body).filter((w) => isRound(w) && (w.kind === 'cylinder' || w.kind === 'cone'))) {
    const home = lines.find((l) => sameLine(l.line, wall.line))
    if (home) home.faces.push(...wall.faces)
    else lines.push({ line: wall.line, faces: [...wall.faces] })
  }
  return lines.map(({ line, faces }, i) => ({
    id: `axis ${i + 1}`,
    kind: 'boss',
    outward: line.direction,
    members: [{ id: `axis ${i + 1}`, axes: [], faces, point: line.point }],
    pattern: { kind: 'single' },
  }))
}

function headerOf({ name, unit }: ReadSolid, listing: Listing): Header {
  const inch = unit === 'inch'
  return {
    part: listing.words('part', name),
    units: unit,
    practice: inch ? 'ASME' : 'ISO',
    projection: inch ? 'third angle' : 'first angle',
    general: [],
    notes: [{ text: MEASURED, span: NOWHERE }],
  }
}

function briefOf(header: Header, listing: Listing): Brief {
  return { text: listing.text, header, features: [], shows: [], places: [], schemes: [], marks: [] }
}

function measuredMarks(listing: Listing): Mark[] {
  const marks: Mark[] = [
    {
      rule: 'measured-from-solid',
      weight: 'look again',
      text: 'Read from a solid model: sizes are measured, tolerances are not stated. The sheet stays preliminary until they are.',
      expected: 'a brief with the sizes and tolerances that are meant; sheetwright begin writes its first lines',
      source: 'common practice, no source',
    },
  ]
  const { unevenSizes: n } = listing
  if (n > 0)
    marks.push({
      rule: 'uneven-measures',
      weight: 'look again',
      text: `${n === 1 ? 'One size is' : `${n} sizes are`} no round number of ${listing.unit === 'inch' ? 'ten-thousandths of an inch' : 'thousandths of a millimetre'}; the digits on the sheet are rounded.`,
      source: 'common practice, no source',
    })
  return marks
}
