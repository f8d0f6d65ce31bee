import type { DiscStock, Lie, RoundStock, Side, TubeStock, TurnedStock } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { scale } from '../../geometry/vec3.ts'
import type { Contour, ContourPiece } from '../model.ts'
import { axisLie, axisOf, endSides, lieAxis, oppositeOf, unitAxis } from '../sides.ts'
import type { Workshop } from '../workshop.ts'
import { isGrooved, oneSurface, runsOn } from './run-on.ts'
import { givesLowEnd, stepEnds } from './taper.ts'

/** Starts a turned half section about the axis through the origin. */
function startContour(shop: Workshop, lie: Lie, outer: ContourPiece[]): Contour {
  const axis = lieAxis[lie]
  const contour: Contour = { lie, axis, outer, grooves: [], bores: [], planes: [], corners: [] }
  shop.contour = contour
  shop.axis('axis', [0, 0, 0], unitAxis[axis])
  const [low, high] = endSides[axis]!
  addEnd(shop, contour, `${low} face`, low, outer[0]!.h0, outer[0]!.r0)
  addEnd(shop, contour, `${high} face`, high, outer[outer.length - 1]!.h1, outer[outer.length - 1]!.r1)
  for (const piece of outer) addRound(shop, piece)
  return contour
}

/** A flat round face square to the axis, with its datum. */
export function addEnd(shop: Workshop, contour: Contour, name: string, side: Side, at: number, r: number): void {
  const axis = contour.axis
  const direction: Vec3 = scale(unitAxis[axis], side === endSides[axis]![1] ? 1 : -1)
  shop.plane(name, scale(unitAxis[axis], at), direction)
  contour.planes.push({ name, h: at, up: side === endSides[axis]![1] })
  const whole = contour.outer[contour.outer.length - 1]!.h1 - contour.outer[0]!.h0
  shop.faces.push({ name, side, at, min: [-r, -r], max: [r, r], radius: r, depth: whole })
}

function addRound(shop: Workshop, piece: ContourPiece): void {
  shop.rounds.push({
    name: piece.name,
    r: Math.max(piece.r0, piece.r1),
    from: piece.h0,
    to: piece.h1,
    inside: false,
  })
}

export function buildBar(shop: Workshop, stock: RoundStock): void {
  const r = stock.diameter.mm / 2
  const contour = startContour(shop, stock.lie, [{ name: 'outside', h0: 0, h1: stock.length.mm, r0: r, r1: r }])
  chooseDiameter(shop, stock.diameter, 'outside')
  chooseLength(shop, contour, stock.length, 'distance')
}

export function buildTube(shop: Workshop, stock: TubeStock): boolean {
  const r = stock.outside.mm / 2
  const inner = stock.inside ? stock.inside.mm / 2 : r - (stock.wall?.mm ?? 0)
  if (!stock.inside && !stock.wall) {
    shop.must('size-missing', stock.span, 'The tube needs an inside diameter or a wall.', '⌀ inside, or wall')
  }
  if (inner >= r || inner < 0) {
    const at = stock.inside ?? stock.wall
    shop.must(
      'bore-too-large',
      at?.span ?? stock.span,
      `The bore leaves nothing of the outside ⌀${stock.outside.text}.`,
      'an inside diameter less than the outside',
    )
    return false
  }
  const length = stock.length.mm
  const contour = startContour(shop, stock.lie, [{ name: 'outside', h0: 0, h1: length, r0: r, r1: r }])
  chooseDiameter(shop, stock.outside, 'outside')
  if (inner > 0) {
    shop.aliases.set('inside', ['bore'])
    contour.bores.push({ name: 'bore', h0: -Infinity, h1: Infinity, r0: inner, r1: inner })
    shop.rounds.push({ name: 'bore', r: inner, from: 0, to: length, inside: true })
    shop.imply('coaxial', 'bore and outside on one axis', ['bore', 'outside'])
    if (stock.inside) chooseDiameter(shop, stock.inside, 'bore')
    else if (stock.wall) {
      const size = stock.wall
      shop.choose({
        kind: 'thickness',
        size,
        from: 'bore',
        to: 'outside',
        direction: unitAxis[contour.axis === 2 ? 0 : 2],
        span: size.span,
        group: 'stock',
      })
    }
  }
  chooseLength(shop, contour, stock.length, 'distance')
  return true
}

export function buildDisc(shop: Workshop, stock: DiscStock): void {
  const r = stock.diameter.mm / 2
  const axis = axisOf[stock.face]
  const contour = startContour(shop, axisLie[axis], [{ name: 'rim', h0: 0, h1: stock.thickness.mm, r0: r, r1: r }])
  shop.aliases.set('outer', [`${stock.face} face`])
  shop.aliases.set('inner', [`${oppositeOf[stock.face]} face`])
  shop.aliases.set('outside', ['rim'])
  chooseDiameter(shop, stock.diameter, 'rim')
  chooseLength(shop, contour, stock.thickness, 'thickness')
}

/** The diameter of a face, on the finished part only where `isOwn` says so. */
function chooseDiameter(shop: Workshop, size: Size, of: string, isOwn?: () => boolean, face = of): void {
  shop.choose((faces) =>
    (isOwn && !isOwn()) || isSquared(shop, face, faces)
      ? undefined
      : { kind: 'diameter', size, of, faces: faces(face), count: 1, span: size.span, group: 'stock' },
  )
}

/** Flats that meet in sharp corners left nothing round: the diameter is then the bar's, not the part's. */
function isSquared(shop: Workshop, face: string, faces: (name: string) => readonly number[]): boolean {
  const many = shop.flats.some((f) => f.round.name === face && f.feature.count.value > 2)
  return many && faces(face).length === 0
}

function chooseLength(shop: Workshop, contour: Contour, size: Size, kind: 'distance' | 'thickness'): void {
  const [low, high] = endSides[contour.axis]!
  shop.choose({
    kind,
    size,
    from: `${low} face`,
    to: `${high} face`,
    direction: unitAxis[contour.axis],
    span: size.span,
    group: 'stock',
  })
  shop.imply('square', 'ends square to the axis', [`${low} face`, `${high} face`, 'axis'])
}

interface Placed {
  readonly h0: number
  readonly h1: number
}

export function buildTurned(shop: Workshop, stock: TurnedStock): boolean {
  const { steps } = stock
  const axis = lieAxis[stock.lie]
  const [low, high] = endSides[axis]!
  const datum = datumOf(shop, stock, low, high)
  const places = placeSteps(shop, stock, datum)
  if (!places) return false
  const start = places[0]!.h0
  const ends = stepEnds(shop, stock, places, [low, high])
  if (!ends) return false
  const outer = steps.map(
    (step, i): ContourPiece => ({
      name: step.name.text,
      h0: places[i]!.h0 - start,
      h1: places[i]!.h1 - start,
      ...ends[i]!,
    }),
  )
  const contour = startContour(shop, stock.lie, outer)
  const planes = boundaryNames(outer, low, high)
  for (let i = 1; i < outer.length; i++) {
    const [before, after] = [outer[i - 1]!, outer[i]!]
    if (before.r1 > after.r0) addEnd(shop, contour, planes[i]!, high, after.h0, before.r1)
    else if (before.r1 < after.r0) addEnd(shop, contour, planes[i]!, low, after.h0, after.r0)
    else shop.plane(planes[i]!, scale(unitAxis[axis], after.h0), unitAxis[axis])
  }
  const datumPlane = planes[datum.index]!
  steps.forEach((step, i) => {
    const { size, kind } = step.length
    const name = step.name.text
    const [before, own, after] = [outer[i - 1], outer[i]!, outer[i + 1]]
    // a taper that runs out into its neighbour has that one's diameter there, two tapers that meet have one: given once
    const meetsBefore = before !== undefined && Math.abs(before.r1 - own.r0) < 1e-9
    const meetsRound = after !== undefined && after.r0 === after.r1 && Math.abs(after.r0 - own.r1) < 1e-9
    const [onBefore, onAfter] = [runsOn(outer, steps, i - 1), runsOn(outer, steps, i)]
    const isTaper = step.endDiameter !== undefined || step.taper !== undefined
    const atLow = givesLowEnd(step, [low, high])
    const given = onBefore || (isTaper && (atLow ? meetsBefore : meetsRound))
    chooseDiameter(shop, step.diameter, name, given ? () => isGrooved(contour, atLow ? own.h0 : own.h1) : undefined)
    if (step.taper) {
      const { rate } = step.taper
      shop.choose(() =>
        onBefore && !isGrooved(contour, own.h0)
          ? undefined
          : { kind: 'angle', angle: rate, from: 'axis', to: name, span: rate.span, group: 'stock' },
      )
    }
    if (step.endDiameter) {
      const isOwn = meetsRound || onAfter ? () => isGrooved(contour, own.h1) : undefined
      chooseDiameter(shop, step.endDiameter, `${name} far end`, isOwn, name)
    }
    const far = i < datum.index ? planes[i]! : planes[i + 1]!
    shop.choose(() => {
      const [before, after] = [onBefore && !isGrooved(contour, own.h0), onAfter && !isGrooved(contour, own.h1)]
      if (before) oneSurface(shop, steps[i - 1]!, step)
      if (kind === 'to' ? (far === planes[i] ? before : after) : before || after) return undefined
      return {
        kind: 'distance',
        size,
        from: kind === 'to' ? datumPlane : planes[i]!,
        to: kind === 'to' ? far : planes[i + 1]!,
        direction: unitAxis[axis],
        span: size.span,
        group: kind === 'to' ? 'lengths' : 'stock',
      }
    })
    shop.features.push((faces) => ({
      id: name,
      kind: 'step-diameter',
      outward: unitAxis[axis],
      members: [
        {
          id: name,
          axes: ['axis'],
          faces: faces(name),
          point: scale(unitAxis[axis], (outer[i]!.h0 + outer[i]!.h1) / 2),
        },
      ],
    }))
  })
  if (steps.length > 1)
    shop.imply(
      'coaxial',
      'all steps on one axis',
      steps.map((s) => s.name.text),
    )
  shop.imply('square', 'shoulders and ends square to the axis', [...planes, 'axis'])
  return true
}

/** Names of the planes before, between and after the steps; a shoulder belongs to the larger step. */
function boundaryNames(outer: readonly ContourPiece[], low: Side, high: Side): string[] {
  const names = [`${low} face`]
  for (let i = 1; i < outer.length; i++) {
    const [before, after] = [outer[i - 1]!, outer[i]!]
    names.push(before.r1 >= after.r0 ? `${before.name} ${high} face` : `${after.name} ${low} face`)
  }
  return [...names, `${high} face`]
}

/** Index of the boundary that lengths count from: 0 before the first step. */
function datumOf(shop: Workshop, stock: TurnedStock, low: Side, high: Side): { readonly index: number } {
  if (!stock.datum) return { index: 0 }
  const text = stock.datum.text
    .toLowerCase()
    .replace(/\s+face$/, '')
    .trim()
  const { steps } = stock
  for (let i = 0; i < steps.length; i++) {
    const name = steps[i]!.name.text.toLowerCase()
    if (text === `${name} ${low}`) return { index: i }
    if (text === `${name} ${high}`) return { index: i + 1 }
  }
  if (text === low) return { index: 0 }
  if (text === high) return { index: steps.length }
  shop.must(
    'unknown-name',
    stock.datum.span,
    `There is no face called “${stock.datum.text}” to count lengths from; they are taken from the ${low} face.`,
    steps.map((s) => `${s.name.text} ${low} face`).join(', '),
  )
  return { index: 0 }
}

/** Where each step lies, counted from the datum face. */
function placeSteps(shop: Workshop, stock: TurnedStock, datum: { readonly index: number }): Placed[] | undefined {
  const { steps } = stock
  const places: Placed[] = []
  let good = true
  const short = (i: number) => {
    good = false
    const step = steps[i]!
    shop.must(
      'length-not-positive',
      step.length.size.span,
      `${step.name.text} to ${step.length.size.text} ends before it begins.`,
      'a length from the datum face beyond the step before',
    )
  }
  let h = 0
  for (let i = datum.index; i < steps.length; i++) {
    const { size, kind } = steps[i]!.length
    const end = kind === 'long' ? h + size.mm : size.mm
    if (end <= h + 1e-9) short(i)
    places[i] = { h0: h, h1: end }
    h = end
  }
  h = 0
  for (let i = datum.index - 1; i >= 0; i--) {
    const { size, kind } = steps[i]!.length
    const start = kind === 'long' ? h - size.mm : -size.mm
    if (start >= h - 1e-9) short(i)
    places[i] = { h0: start, h1: h }
    h = start
  }
  return good ? places : undefined
}
