import type { AngleStock } from '../../brief/brief.ts'
import type { Arc2, Curve2 } from '../../geometry/curve2.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import type { Legs, Profile, ProfileCurve } from '../model.ts'
import { profilePlane, startProfile } from '../prism-stock.ts'
import { polygon } from '../profile-edit.ts'
import { endSides, faceAxes, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'

/**
 * Angle: an L profile thickened along its length. The heel is the outer corner of the two legs.
 * Returns false where the sizes leave no section.
 */
export function buildAngle(shop: Workshop, stock: AngleStock): boolean {
  const t = stock.thickness.mm
  const height = stock.uprightHeight.mm
  const depth = stock.baseDepth.mm
  const make = stock.make ?? 'formed'
  let inside = stock.insideRadius?.mm ?? 0
  if (!stock.make) {
    const heel = stock.insideRadius
      ? `; heel taken as formed: ${stock.insideRadius.text} + ${stock.thickness.text} = ${heelText(stock)}`
      : ''
    shop.mark(
      'look again',
      'angle-make',
      stock.span,
      `Rolled, formed or machined? The brief does not say; taken as formed${heel}.`,
      'angle formed, angle rolled or angle machined',
    )
  }
  if (!stock.insideRadius && make !== 'machined') {
    shop.must(
      'size-missing',
      stock.span,
      make === 'formed'
        ? 'The inside bend radius is missing; the heel stands sharp until it is given.'
        : 'The fillet radius inside the angle is missing; it stands sharp until it is given.',
      'inside R and a size',
    )
  }
  const heel = make === 'formed' && inside > 0 ? inside + t : 0
  const leg = Math.min(height, depth)
  if (t >= leg) {
    shop.must(
      'thickness-too-large',
      stock.thickness.span,
      `The thickness ${stock.thickness.text} leaves nothing of the shorter leg.`,
      'a thickness less than either leg',
    )
    return false
  }
  if (t + inside > leg) {
    shop.must(
      'radius-too-large',
      stock.insideRadius!.span,
      `The inside radius ${stock.insideRadius!.text} and the thickness ${stock.thickness.text} together are larger than the shorter leg.`,
      'a radius that leaves a flat on both legs',
    )
    inside = 0
  }
  let toe = make === 'formed' ? 0 : (stock.toeRadius?.mm ?? 0)
  if (stock.toeRadius && make === 'formed') {
    shop.mark(
      'look again',
      'toe-radius',
      stock.toeRadius.span,
      'A formed angle has square toes; the toe radius is left out.',
      'angle rolled, or no toe radius',
    )
  }
  if (toe > t || t + inside + toe > leg) {
    shop.must(
      'radius-too-large',
      stock.toeRadius!.span,
      `The toe radius ${stock.toeRadius!.text} does not fit the leg's thickness ${stock.thickness.text}.`,
      'a toe radius no larger than the thickness',
    )
    toe = 0
  }

  const place = placing(stock, depth)
  const round = inside > 0 && heel > 0 ? heel : 0
  const curves: ProfileCurve[] = []
  const line = (a: Vec2, b: Vec2, face: string) => {
    if (Math.hypot(b[0] - a[0], b[1] - a[1]) > 1e-9) {
      curves.push({ curve: place.curve({ kind: 'line', a, b }), face })
    }
  }
  const arc = (c: Vec2, r: number, from: number, sweep: number, face: string) => {
    if (r > 0) curves.push({ curve: place.curve({ kind: 'arc', c, r, from, sweep }), face })
  }
  const { toeEnd, uprightInner, uprightOuter } = place
  const q = Math.PI / 2
  line([round, 0], [depth, 0], 'bottom')
  line([depth, 0], [depth, t - toe], toeEnd)
  arc([depth - toe, t - toe], toe, 0, q, 'base toe round')
  line([depth - toe, t], [t + inside, t], 'base top')
  arc([t + inside, t + inside], inside, -q, -q, 'inside bend')
  line([t, t + inside], [t, height - toe], uprightInner)
  arc([t - toe, height - toe], toe, 0, q, 'upright toe round')
  line([t - toe, height], [0, height], 'top')
  line([0, height], [0, round], uprightOuter)
  arc([round, round], round, 2 * q, q, 'heel')

  startProfile(shop, place.axis, [0, stock.length.mm], curves)
  // toe rounds run along the whole leg: no flat profile of the leg can carry them
  if (toe === 0) shop.legs = takenApart(shop, place, { t, inside, heel: round, height, depth, length: stock.length.mm })
  const { uprightOuter: outer, uprightInner: inner, toeEnd: tip } = place
  shop.aliases.set('upright', [inner, outer])
  shop.aliases.set('base', ['base top', 'bottom'])
  shop.aliases.set('heel', [outer, 'bottom'])
  shop.aliases.set('toe', [tip, 'top'])
  shop.aliases.set('inside', [inner, 'base top'])
  chooseAngleSizes(shop, stock, place, { inside, toe, formed: round > 0 })
  return true
}

/** The two legs as flat profiles from the end of the bend to the toe, and the corner between them. */
function takenApart(
  shop: Workshop,
  place: Placing,
  s: { t: number; inside: number; heel: number; height: number; depth: number; length: number },
): Legs {
  const q = Math.PI / 2
  const z0 = s.t + s.inside
  const core: ProfileCurve[] = []
  const line = (a: Vec2, b: Vec2, face: string) => core.push({ curve: place.curve({ kind: 'line', a, b }), face })
  const arc = (c: Vec2, r: number, from: number, sweep: number, face: string) => {
    if (r > 0) core.push({ curve: place.curve({ kind: 'arc', c, r, from, sweep }), face })
  }
  if (z0 - s.heel > 1e-9) line([s.heel, 0], [z0, 0], 'bottom')
  line([z0, 0], [z0, s.t], '')
  arc([z0, z0], s.inside, -q, -q, 'inside bend')
  line([s.t, z0], [0, z0], '')
  if (z0 - s.heel > 1e-9) line([0, z0], [0, s.heel], place.uprightOuter)
  arc([s.heel, s.heel], s.heel, 2 * q, q, 'heel')

  const [low, high] = endSides[place.axis]!
  const leg = (axis: 0 | 1 | 2, span: Vec2, min: Vec2, max: Vec2, names: readonly string[]): Profile => ({
    plane: profilePlane(axis, span),
    axis,
    thickness: span[1] - span[0],
    caps: ['', ''],
    curves: polygon([min, [max[0], min[1]], max, [min[0], max[1]]], names),
    holes: [],
  })
  const outerLow = place.mirrored ? s.depth - s.t : 0
  const upright = leg(place.baseAxis, [outerLow, outerLow + s.t], [0, z0], [s.length, s.height], ['', high, 'top', low])
  const [near, far] = place.mirrored ? [0, s.depth - z0] : [z0, s.depth]
  const [lowName, highName] = place.mirrored ? [place.toeEnd, ''] : ['', place.toeEnd]
  const base =
    place.axis === 0
      ? leg(2, [0, s.t], [0, near], [s.length, far], [lowName, high, highName, low])
      : leg(2, [0, s.t], [near, 0], [far, s.length], [low, highName, high, lowName])
  return {
    core,
    legs: [
      { profile: upright, faces: [place.uprightInner, place.uprightOuter] },
      { profile: base, faces: ['base top', 'bottom'] },
    ],
    whole: shop.profile!.curves,
  }
}

type Placing = ReturnType<typeof placing>

/** Where the upright stands: section coordinates (from the heel along the base, up) to the part's own. */
function placing(stock: AngleStock, depth: number) {
  const axis: 0 | 1 = stock.uprightAt === 'rear' || stock.uprightAt === 'front' ? 0 : 1
  const mirrored = stock.uprightAt === 'rear' || stock.uprightAt === 'right'
  const [low, high] = endSides[faceAxes(axis).across]!
  const point = (p: Vec2): Vec2 => (mirrored ? [depth - p[0], p[1]] : p)
  const curve = (c: Curve2): Curve2 => {
    if (!mirrored) return c
    if (c.kind === 'line') return { kind: 'line', a: point(c.a), b: point(c.b) }
    const a = c as Arc2
    return { ...a, c: point(a.c), from: Math.PI - a.from, sweep: -a.sweep }
  }
  const [at, toward] = mirrored ? [high, low] : [low, high]
  return {
    axis,
    baseAxis: faceAxes(axis).across,
    mirrored,
    curve,
    uprightOuter: at as string,
    uprightInner: `upright ${toward}`,
    toeEnd: toward as string,
  }
}

function chooseAngleSizes(
  shop: Workshop,
  stock: AngleStock,
  place: Placing,
  corner: { readonly inside: number; readonly toe: number; readonly formed: boolean },
): void {
  const group = 'stock'
  const along = unitAxis[place.axis]
  const deep = unitAxis[place.baseAxis]
  const up = unitAxis[2]
  const [low, high] = endSides[place.axis]!
  shop.choose({
    kind: 'thickness',
    size: stock.thickness,
    from: place.uprightInner,
    to: place.uprightOuter,
    direction: deep,
    span: stock.thickness.span,
    group,
  })
  shop.imply('equal', 'both legs of one thickness', ['base top', 'bottom', place.uprightInner, place.uprightOuter])
  const distance = (size: AngleStock['length'], from: string, to: string, direction: typeof up) =>
    shop.choose({ kind: 'distance', size, from, to, direction, span: size.span, group })
  distance(stock.uprightHeight, 'bottom', 'top', up)
  distance(stock.baseDepth, place.uprightOuter, place.toeEnd, deep)
  distance(stock.length, low, high, along)
  if (stock.insideRadius && corner.inside > 0) {
    const size = stock.insideRadius
    shop.choose((faces) => ({
      kind: 'radius',
      size,
      of: 'inside bend',
      faces: faces('inside bend'),
      count: 1,
      span: size.span,
      group,
    }))
    shop.imply('tangent', 'inside radius tangent to both legs', ['inside bend', 'base top', place.uprightInner])
    if (corner.formed) {
      shop.imply('coaxial', 'heel and inside radius about one centre', ['heel', 'inside bend'])
      shop.imply('tangent', 'heel radius tangent to both legs', ['heel', 'bottom', place.uprightOuter])
    }
  }
  if (stock.toeRadius && corner.toe > 0) {
    const size = stock.toeRadius
    shop.choose((faces) => ({
      kind: 'radius',
      size,
      of: 'toe rounds',
      faces: faces('base toe round', 'upright toe round'),
      count: 2,
      span: size.span,
      group,
    }))
    shop.imply('tangent', 'toe radius tangent to leg and toe', ['base toe round', 'upright toe round'])
  }
  shop.imply('square', 'legs and ends square to each other', ['bottom', place.uprightOuter, low, high])
  if (corner.inside > 0) {
    const { inside } = corner
    shop.features.push((faces) => ({
      id: 'bend',
      kind: 'bend',
      outward: up,
      members: [{ id: 'bend', axes: [], faces: faces('inside bend', 'heel'), point: [inside, inside, inside] }],
    }))
  }
}

function heelText(stock: AngleStock): string {
  const sum = (stock.insideRadius?.value ?? 0) + stock.thickness.value
  const places = Math.max(stock.insideRadius?.decimals ?? 0, stock.thickness.decimals)
  const text = sum.toFixed(places)
  return stock.thickness.text.startsWith('.') ? text.replace(/^0/, '') : text
}
