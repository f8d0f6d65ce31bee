import type { Vec3 } from '../../geometry/vec.ts'
import { cross, unit } from '../../geometry/vec3.ts'
import type { Body } from '../../kernel/body.ts'
import { type AxisLine, nearestLine } from './axis-line.ts'
import { arcsOf, byChanceOf, clansOf, type Making, PLANES, planeClansOf, STOCK } from './clans.ts'
import { type AxisIndex, apexOf, type Element, elementsOf, SAME } from './elements.ts'

export type { Making } from './clans.ts'

export type Values = ArrayLike<number>

/** A length of the solid as a function of its unknowns (mm). */
export interface Expression {
  readonly uses: readonly number[]
  readonly of: (x: Values) => number
  /** Set when the expression is one unknown and nothing else. */
  readonly bar?: number
}

/** One unknown number of the solid. */
export interface Unknown {
  readonly id: number
  readonly kind: 'position' | 'radius' | 'angle' | 'place along its axis' | 'place off the axes' | 'direction'
  readonly along?: AxisIndex
  readonly elements: number[]
}

export interface PlaneReading {
  readonly form: 'plane'
  readonly uses: readonly number[]
  readonly normal: (x: Values) => Vec3
  /** normal · point of the plane */
  readonly offset: (x: Values) => number
  readonly bar?: number
}

export interface RoundReading {
  readonly form: 'cylinder' | 'cone' | 'sphere' | 'torus'
  readonly uses: readonly number[]
  /** A point of the axis; apex of a cone, centre of a sphere or torus. */
  readonly point: (x: Values) => Vec3
  readonly direction: (x: Values) => Vec3
  /** Unknowns of the axis's position by direction; -1 along the axis or off the axes. */
  readonly bars: readonly [number, number, number]
  /** Unknowns: radius (minor radius of a torus), half angle (scaled), major radius; -1 where there is none. */
  readonly radius: number
  readonly half: number
  readonly major: number
}

export type Reading = PlaneReading | RoundReading

/** The solid as unknowns: what must be fixed, before any size is heard. */
export interface Model {
  readonly body: Body
  readonly elements: readonly Element[]
  readonly elementOf: ReadonlyMap<number, Element>
  /** By element; undefined for free-form surfaces. */
  readonly readings: readonly (Reading | undefined)[]
  readonly unknowns: readonly Unknown[]
  /** The unknowns' values on the solid as it stands. */
  readonly values: readonly number[]
  /** Angles are held as radians × scale, so that all unknowns are millimetres. */
  readonly scale: number
  /**
   * The position at a coordinate: of the axis that `at` lies on (that of `faces` before others), else of a plane there,
   * else of any axis level with it.
   */
  readonly level: (along: AxisIndex, coordinate: number, at: Vec3, faces?: readonly number[]) => Expression | undefined
  /** Freedoms of all elements, less those of the part as a whole (3 of place, 2 or 3 of turning). */
  readonly freedoms: number
  readonly square: number
  readonly coaxial: number
  readonly aligned: number
  readonly freeForm: readonly Element[]
  /** Elements whose tangency must be said on the sheet. */
  readonly roundEnds: ReadonlySet<Element>
  /** Faces of rounds, fillets and chamfers. */
  readonly edged: ReadonlySet<number>
  /** Whether faces that touch along a line do so by chance, which is no tangency of the drawing. */
  readonly byChance: (a: readonly number[], b: readonly number[]) => boolean
}

export const DOF = { plane: 3, cylinder: 5, cone: 6, sphere: 4, torus: 7, spline: 0 } as const

interface Bar {
  readonly at: number
  readonly unknown: number
  readonly clan: string
}

export function modelOf(body: Body, making: Making): Model {
  const clanOf = clansOf(making)
  const arcOf = arcsOf(making)
  const planeClan = planeClansOf(making)
  const elements = elementsOf(body, making.together, making.floors)
  const elementOf = new Map(elements.flatMap((e) => e.faces.map((face) => [face, e] as const)))
  const size = Math.max(...[0, 1, 2].map((k) => body.box.max[k]! - body.box.min[k]!), 1e-3)

  const unknowns: Unknown[] = []
  const values: number[] = []
  const add = (kind: Unknown['kind'], value: number, element: number, along?: AxisIndex): number => {
    const id = unknowns.length
    unknowns.push({ id, kind, elements: element < 0 ? [] : [element], ...(along === undefined ? {} : { along }) })
    values.push(value)
    return id
  }

  const bars: [Map<number, Bar[]>, Map<number, Bar[]>, Map<number, Bar[]>] = [new Map(), new Map(), new Map()]
  const barsNear = (k: AxisIndex, at: number): Bar[] => {
    const key = Math.round(at / SAME)
    return [key, key - 1, key + 1].flatMap((n) => bars[k].get(n) ?? []).filter((bar) => Math.abs(bar.at - at) < SAME)
  }
  const barFor = (k: AxisIndex, at: number, element: number, clan: string): number => {
    const known = barsNear(k, at).find((bar) => bar.clan === clan)
    if (known) {
      if (element >= 0) unknowns[known.unknown]!.elements.push(element)
      return known.unknown
    }
    const unknown = add('position', at, element, k)
    const key = Math.round(at / SAME)
    bars[k].set(key, [...(bars[k].get(key) ?? []), { at, unknown, clan }])
    return unknown
  }
  // Everything on one line is coaxial and shares both positions, but for arcs that stand by themselves.
  const lines: AxisLine[] = []
  const linesAt = new Map<string, AxisLine[]>()
  const axisLine = (k: AxisIndex, at: Vec3, element: number, clan: string, centre?: AxisLine): AxisLine => {
    const arc = element < 0 ? undefined : arcOf(elements[element]!.faces)
    const others = ([0, 1, 2] as const).filter((i) => i !== k)
    const cell = (p: number, q: number) =>
      `${k}/${Math.round(at[others[0]!] / SAME) + p}/${Math.round(at[others[1]!] / SAME) + q}`
    const near = [0, 1, -1].flatMap((p) => [0, 1, -1].flatMap((q) => linesAt.get(cell(p, q)) ?? []))
    let line = near.find((l) => l.arc === arc && others.every((i) => Math.abs(l.at[i] - at[i]) < SAME))
    if (!line) {
      const own: [number, number, number] = [-1, -1, -1]
      for (const i of others) {
        // A member on a centre line of its bolt circle stands level with the centre.
        const level = centre && Math.abs(centre.at[i] - at[i]) < SAME ? centre.bars[i] : undefined
        // An axis that meets the stock's own axis squarely (a radial hole, a keyseat) stands level with it.
        const crossed = lines.find(
          (l) => l.isStock && l.along !== k && l.along !== i && Math.abs(l.at[i] - at[i]) < SAME,
        )
        own[i] = level ?? crossed?.bars[i] ?? barFor(i, at[i], -1, clan)
      }
      line = { along: k, at, bars: own, elements: [], isStock: clan === STOCK && arc === undefined, arc }
      lines.push(line)
      linesAt.set(cell(0, 0), [...(linesAt.get(cell(0, 0)) ?? []), line])
    }
    if (element >= 0) {
      line.elements.push(element)
      for (const i of others) unknowns[line.bars[i]]!.elements.push(element)
    }
    return line
  }
  const centreOf = new Map<string, AxisLine>()
  const ofCentres: AxisLine[] = []

  let dof = 0
  let square = 0
  let coaxial = 0
  let places = 0
  const directions = new Set<number>()
  const readings: (Reading | undefined)[] = elements.map(() => undefined)
  for (const element of inTurn(elements, clanOf)) {
    dof += DOF[element.surface.kind]
    const { surface, along: k, id } = element
    const clan = clanOf(element.faces)
    if (surface.kind === 'spline') continue
    if (surface.kind !== 'sphere') directions.add(k ?? 3)
    if (surface.kind === 'plane') {
      if (k !== undefined) {
        square += 2
        places += 1
        readings[id] = squarePlane(k, barFor(k, surface.axes.origin[k], id, planeClan(element.faces)))
      } else {
        const frame = tiltFrame(surface.axes.z)
        if (frame.inPlane) square += 1
        readings[id] = tiltedPlane(surface.axes.origin, surface.axes.z, frame, size, (kind) => add(kind, 0, id))
      }
      continue
    }
    const centre = surface.kind === 'cone' ? apexOf(surface) : surface.axes.origin
    if (surface.kind === 'sphere') {
      places += 3
      // A round end lies on the axis of what it ends.
      const through = lines.find(
        (l) =>
          l.arc === undefined &&
          ([0, 1, 2] as const).every((i) => i === l.along || Math.abs(l.at[i] - centre[i]) < SAME),
      )
      const three = ([0, 1, 2] as const).map((i) => {
        const shared = through && i !== through.along ? through.bars[i] : undefined
        if (shared === undefined) return barFor(i, centre[i], id, clan)
        unknowns[shared]!.elements.push(id)
        return shared
      })
      if (through) coaxial += 2
      const radius = add('radius', surface.r, id)
      const bars3 = three as unknown as readonly [number, number, number]
      readings[id] = round('sphere', bars3, undefined, surface.axes.z, centre, { radius })
      continue
    }
    let round3: readonly [number, number, number] = [-1, -1, -1]
    let direction: Tilt | undefined
    if (k !== undefined) {
      square += 2
      places += 2
      const circle = making.circles.find((c) => c.members.some((m) => `member ${m.id}` === clan))
      if (circle && !centreOf.has(circle.id)) {
        const line = axisLine(k, circle.centre, -1, `centre ${circle.id}`)
        centreOf.set(circle.id, line)
        if (!ofCentres.includes(line)) ofCentres.push(line)
      }
      const line = axisLine(k, centre, id, clan, circle && centreOf.get(circle.id))
      if (line.elements.length > 1) coaxial += 2
      round3 = line.bars
    } else {
      const frame = tiltFrame(surface.axes.z)
      if (frame.inPlane) square += 1
      direction = tilt(frame, size, (kind) => add(kind, 0, id), centre)
    }
    const own: { radius?: number; half?: number; major?: number } = {}
    if (surface.kind === 'cylinder') own.radius = add('radius', surface.r, id)
    if (surface.kind === 'cone') own.half = add('angle', Math.abs(surface.halfAngle) * size, id)
    if (surface.kind === 'torus') {
      own.radius = add('radius', surface.minor, id)
      own.major = add('radius', surface.major, id)
    }
    const end = surface.kind === 'cylinder' ? -1 : add('place along its axis', k === undefined ? 0 : centre[k], id, k)
    readings[id] = round(surface.kind, round3, direction, surface.axes.z, centre, own, k, end)
  }

  // Centres of bolt circles that no round surface marks are elements of the drawing all the same.
  const bare = ofCentres.filter((line) => line.elements.length === 0).length
  dof += 2 * bare
  places += 2 * bare

  const turning = directions.size === 1 && !directions.has(3) ? 2 : directions.size === 0 ? 0 : 3
  const positions = unknowns.filter((u) => u.kind === 'position').length
  const aligned = places - positions - coaxial
  return {
    body,
    elements,
    elementOf,
    readings,
    unknowns,
    values,
    scale: size,
    level: (k, coordinate, at, faces = []) => {
      const own = new Set(faces.flatMap((f) => elementOf.get(f)?.id ?? []))
      const line = nearestLine(lines, k, coordinate, at, own)
      const near = line ? [] : barsNear(k, coordinate)
      const unknown = line ? line.bars[k] : (near.find((b) => b.clan === PLANES) ?? near[0])?.unknown
      return unknown === undefined ? undefined : { uses: [unknown], of: (x) => x[unknown]!, bar: unknown }
    },
    freedoms: elements.length === 0 ? 0 : dof - 3 - turning,
    square: square - turning,
    coaxial,
    aligned,
    freeForm: elements.filter((e) => e.surface.kind === 'spline'),
    roundEnds: new Set((making.roundEnds ?? []).flatMap((face) => elementOf.get(face) ?? [])),
    edged: new Set(making.edged),
    byChance: byChanceOf(making),
  }
}

/** The stock's axes before those of features, those before members of bolt circles, and round ends last: each finds the lines it shares already there. */
function inTurn(elements: readonly Element[], clanOf: (faces: readonly number[]) => string): Element[] {
  const turn = (e: Element) => {
    if (e.surface.kind === 'sphere') return 3
    const clan = clanOf(e.faces)
    return clan === STOCK ? 0 : clan.startsWith('member ') ? 2 : 1
  }
  return [...elements].sort((a, b) => turn(a) - turn(b) || a.id - b.id)
}

function squarePlane(k: AxisIndex, bar: number): PlaneReading {
  const n: Vec3 = [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
  return { form: 'plane', uses: [bar], normal: () => n, offset: (x) => x[bar]!, bar }
}

export interface TiltFrame {
  readonly axis: Vec3
  /** Two directions across the axis; the first stays in the principal plane where the axis lies in one. */
  readonly across: readonly [Vec3, Vec3]
  readonly inPlane: boolean
}

export function tiltFrame(axis: Vec3): TiltFrame {
  for (const m of [0, 1, 2] as const) {
    if (Math.abs(axis[m]) < 1e-9) {
      const e: Vec3 = [m === 0 ? 1 : 0, m === 1 ? 1 : 0, m === 2 ? 1 : 0]
      return { axis, across: [unit(cross(e, axis)), e], inPlane: true }
    }
  }
  const first = unit(cross(axis, Math.abs(axis[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]))
  return { axis, across: [first, cross(axis, first)], inPlane: false }
}

export interface Tilt {
  readonly uses: readonly number[]
  readonly direction: (x: Values) => Vec3
  readonly point: (x: Values) => Vec3
}

type Adder = (kind: Unknown['kind']) => number

function tiltedDirection(frame: TiltFrame, size: number, add: Adder): { uses: number[]; of: (x: Values) => Vec3 } {
  const uses = [add('direction')]
  if (!frame.inPlane) uses.push(add('direction'))
  const [e, f] = frame.across
  const { axis } = frame
  return {
    uses,
    of: (x) => {
      const a = x[uses[0]!]! / size
      const b = uses.length > 1 ? x[uses[1]!]! / size : 0
      return unit([axis[0] + a * e[0] + b * f[0], axis[1] + a * e[1] + b * f[1], axis[2] + a * e[2] + b * f[2]])
    },
  }
}

export function tiltedPlane(origin: Vec3, axis: Vec3, frame: TiltFrame, size: number, add: Adder): PlaneReading {
  const direction = tiltedDirection({ ...frame, axis }, size, add)
  const place = add('place off the axes')
  return {
    form: 'plane',
    uses: [...direction.uses, place],
    normal: direction.of,
    offset: (x) => {
      const n = direction.of(x)
      return n[0] * origin[0] + n[1] * origin[1] + n[2] * origin[2] + x[place]!
    },
  }
}

export function tilt(frame: TiltFrame, size: number, add: Adder, origin: Vec3): Tilt {
  const direction = tiltedDirection(frame, size, add)
  const [a, b] = [add('place off the axes'), add('place off the axes')]
  const [e, f] = frame.across
  return {
    uses: [...direction.uses, a, b],
    direction: direction.of,
    point: (x) => [
      origin[0] + x[a]! * e[0] + x[b]! * f[0],
      origin[1] + x[a]! * e[1] + x[b]! * f[1],
      origin[2] + x[a]! * e[2] + x[b]! * f[2],
    ],
  }
}

export function round(
  form: RoundReading['form'],
  bars: readonly [number, number, number],
  tilted: Tilt | undefined,
  axis: Vec3,
  origin: Vec3,
  own: { radius?: number; half?: number; major?: number },
  k?: AxisIndex,
  end = -1,
): RoundReading {
  const uses = [...bars, end, own.radius ?? -1, own.half ?? -1, own.major ?? -1].filter((u) => u >= 0)
  const at = (x: Values, i: AxisIndex): number => {
    if (bars[i] >= 0) return x[bars[i]]!
    return i === k && end >= 0 ? x[end]! : origin[i]
  }
  return {
    form,
    uses: [...uses, ...(tilted?.uses ?? [])],
    bars,
    point: tilted
      ? (x) => {
          const p = tilted.point(x)
          if (end < 0) return p
          const u = tilted.direction(x)
          return [p[0] + x[end]! * u[0], p[1] + x[end]! * u[1], p[2] + x[end]! * u[2]]
        }
      : (x) => [at(x, 0), at(x, 1), at(x, 2)],
    direction: tilted ? tilted.direction : () => axis,
    radius: own.radius ?? -1,
    half: own.half ?? -1,
    major: own.major ?? -1,
  }
}
