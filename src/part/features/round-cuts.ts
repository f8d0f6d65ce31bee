import type { Anchor, KeyseatFeature, Name, Side } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { add, scale } from '../../geometry/vec3.ts'
import { cutLoop, stadium } from '../cut-loop.ts'
import { faceWords, findOrigin, findRound, markUnknown } from '../find-name.ts'
import type { Contour, ProfileCurve, RoundFace, WorkFace } from '../model.ts'
import { axisOf, endSides, faceAxes, outwardOf, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { locate } from './along-axis.ts'
import { addBoreKeyseat } from './bore-keyseat.ts'
import { boreOf } from './bore-of.ts'
import { stretchFrom } from './groove.ts'

/** The outside surface and the side a flat or keyseat is cut into; marks what is missing. */
export function surfaceOf(shop: Workshop, name: Name, side: Side, word: string): RoundFace | undefined {
  if (!shop.contour) {
    shop.must('wrong-stock', name.span, `A ${word} is cut into round stock.`, 'a slot, a step or a notch')
    return undefined
  }
  const round = findRound(shop, name)
  if (!round || round.inside) {
    markUnknown(shop, name, 'round surface', faceWords(shop))
    return undefined
  }
  if (axisOf[side] === shop.contour.axis) {
    shop.must(
      'wrong-side',
      name.span,
      `The ${side} is an end of the part; a ${word} is cut from the outside.`,
      'a side along the axis',
    )
    return undefined
  }
  return round
}

export function addKeyseat(shop: Workshop, feature: KeyseatFeature): void {
  const { side } = feature
  const bore = boreOf(shop, feature)
  if (bore) {
    addBoreKeyseat(shop, feature, bore)
    return
  }
  if (!shop.contour && shop.roundCuts.length > 0) {
    markUnknown(shop, feature.face, 'hole', [...new Set(shop.roundCuts.map((c) => c.name))])
    return
  }
  const round = surfaceOf(shop, feature.face, side, 'keyseat')
  if (!round) return
  if (!feature.depth || !feature.length || !feature.anchor) {
    shop.must(
      'size-missing',
      feature.span,
      `A keyseat in the ${round.name} needs its depth, its length and a place.`,
      '6 wide × 3.5 deep × 22 long, left end 4 from left face',
    )
    return
  }
  cutKeyseat(shop, { ...feature, depth: feature.depth, length: feature.length, anchor: feature.anchor }, round)
}

type Sunk = KeyseatFeature & { readonly depth: Size; readonly length: Size; readonly anchor: Anchor }

function cutKeyseat(shop: Workshop, feature: Sunk, round: RoundFace): void {
  const { side } = feature
  const contour = shop.contour!
  const origin = findOrigin(shop, feature.anchor.from, [contour.axis])
  if (!origin) return
  const id = shop.nameOf('keyseat', feature)
  const [w, l, depth] = [feature.width.mm, feature.length.mm, feature.depth.mm]
  if (w >= 2 * round.r || depth >= 2 * round.r) {
    const at = w >= 2 * round.r ? feature.width.span : feature.depth.span
    shop.must('keyseat-too-large', at, `${id} is larger than the ${round.name} it is cut into.`, 'a smaller keyseat')
    return
  }
  const place = stretchFrom(feature.anchor, origin, (round.from + round.to) / 2, l)
  if (place.from < round.from - 1e-9 || place.to > round.to + 1e-9) {
    shop.must('keyseat-off-part', feature.span, `${id} runs off the ${round.name}.`, 'a place on the surface')
    return
  }
  const beyond = [radiusBeyond(contour, place.from, -1), radiusBeyond(contour, place.to, 1)] as const
  // against a shoulder the cutter's own round end stands
  const openLow = Math.abs(place.from - round.from) < 1e-9 && beyond[0] < round.r - 1e-9
  const openHigh = Math.abs(place.to - round.to) < 1e-9 && beyond[1] < round.r - 1e-9
  const r = w / 2
  if (l <= w && !openLow && !openHigh) {
    shop.must('slot-too-short', feature.length.span, `${id} is no longer than it is wide.`, 'a longer keyseat')
    return
  }
  const normal = axisOf[side]
  const { across } = faceAxes(normal)
  const level = across === contour.axis ? 0 : 1
  const outward = outwardOf[side]
  const face = tangentFace(round, side)
  // nothing is taken of a smaller step that stands higher than the floor
  const overrun = beyond.map((b) => (b < round.r - depth - 1e-9 ? 1 : 0)) as unknown as Vec2
  const loop = keyseatLoop(place, [openLow, openHigh], overrun, level, r, id)
  cutLoop(shop, { feature: id, span: feature.span, face, loop, depth, floor: `${id} floor`, clear: false })
  const z = unitAxis[contour.axis]
  const [low, high] = endSides[contour.axis]!
  const crown = scale(outward, round.r)
  const ends = [openLow ? [] : [place.from + r], openHigh ? [] : [place.to - r]].flat()
  const axes = ends.map((h, i) => shop.axis(`${id} end ${i + 1} axis`, add(scale(z, h), crown), outward))
  shop.plane(`${id} ${low} end`, scale(z, place.from), scale(z, -1))
  shop.plane(`${id} ${high} end`, scale(z, place.to), z)
  shop.middle(`${id} middle`, scale(z, (place.from + place.to) / 2), z, [`${id} ${low} end`, `${id} ${high} end`])
  shop.plane(`${id} floor`, add(scale(z, place.from), scale(outward, round.r - depth)), outward)
  const wide = unitAxis[(3 - normal - contour.axis) as 0 | 1 | 2]
  shop.choose({ kind: 'width', size: feature.width, of: id, direction: wide, span: feature.width.span, group: id })
  shop.choose({ kind: 'depth', size: feature.depth, of: id, span: feature.depth.span, group: id })
  shop.choose({
    kind: 'length',
    size: feature.length,
    of: id,
    direction: z,
    measured: 'overall',
    span: feature.length.span,
    group: id,
  })
  locate(shop, id, { ...place, origin }, feature.anchor.distance, z, [low, high])
  shop.imply('centred', `${id} in the middle of the ${round.name}`, [id, 'axis'])
  shop.features.push((faces) => ({
    id,
    feature,
    kind: 'keyseat',
    outward,
    members: [
      {
        id,
        axes,
        faces: faces(`${id} wall`, `${id} end`, `${id} floor`),
        point: add(scale(z, (place.from + place.to) / 2), crown),
      },
    ],
    pattern: { kind: 'single' },
  }))
}

/** The plane that touches the surface on a side, as a face to cut from. */
function tangentFace(round: RoundFace, side: Side): WorkFace {
  return {
    name: `${round.name} ${side}`,
    side,
    at: outwardOf[side][axisOf[side]] * round.r,
    min: [-round.r, -round.r],
    max: [round.r, round.r],
    depth: 2 * round.r,
  }
}

/** The outside radius just beyond a station of the axis, on its lower or higher side, mm; 0 past the part's end. */
function radiusBeyond(contour: Contour, at: number, way: -1 | 1): number {
  const piece = contour.outer.find((p) => Math.abs((way > 0 ? p.h0 : p.h1) - at) < 1e-9)
  return piece ? (way > 0 ? piece.r0 : piece.r1) : 0
}

/** Half-round ends, or square ones a little beyond an end that is open. */
function keyseatLoop(
  place: { readonly from: number; readonly to: number },
  open: readonly [boolean, boolean],
  overrun: Vec2,
  level: 0 | 1,
  r: number,
  id: string,
): ProfileCurve[] {
  const whole = !open[0] && !open[1]
  const middle = (place.from + place.to) / 2
  if (whole) {
    const c: Vec2 = level === 0 ? [middle, 0] : [0, middle]
    return stadium(c, level, (place.to - place.from) / 2 - r, r, `${id} wall`, `${id} end`)
  }
  const q = Math.PI / 2
  const a = open[0] ? place.from - overrun[0] : place.from + r
  const b = open[1] ? place.to + overrun[1] : place.to - r
  const at = (along: number, side: number): Vec2 => (level === 0 ? [along, side] : [-side, along])
  const turn = level === 0 ? 0 : q
  const curves: ProfileCurve[] = [{ curve: { kind: 'line', a: at(a, -r), b: at(b, -r) }, face: `${id} wall` }]
  if (open[1]) curves.push({ curve: { kind: 'line', a: at(b, -r), b: at(b, r) }, face: '' })
  else curves.push({ curve: { kind: 'arc', c: at(b, 0), r, from: turn - q, sweep: 2 * q }, face: `${id} end` })
  curves.push({ curve: { kind: 'line', a: at(b, r), b: at(a, r) }, face: `${id} wall` })
  if (open[0]) curves.push({ curve: { kind: 'line', a: at(a, r), b: at(a, -r) }, face: '' })
  else curves.push({ curve: { kind: 'arc', c: at(a, 0), r, from: turn + q, sweep: 2 * q }, face: `${id} end` })
  return curves
}
