import type { Name } from '../brief/brief.ts'
import type { Vec2, Vec3 } from '../geometry/vec.ts'
import { add, cross, scale } from '../geometry/vec3.ts'
import { inPlane } from '../kernel/profile.ts'
import { halfSection, limitsOf } from './contour.ts'
import { plainName } from './find-name.ts'
import type { Contour, ContourPiece, Profile, StockEdge } from './model.ts'
import { cornersOf, isInsideCorner, leanAt } from './profile-edit.ts'
import { axisOf, endSides, faceAxes, SIDES } from './sides.ts'
import type { Workshop } from './workshop.ts'

/** The edges a name means, in a fixed order; empty where it means none. */
export function findEdges(shop: Workshop, name: Name): StockEdge[] {
  const text = plainName(name.text)
  if (shop.contour) return roundEdgesOf(shop, text)
  if (shop.profile) return flatEdgesOf(shop, shop.profile, text)
  return []
}

/** Names of edges worth offering where one is not known. */
export function edgeWords(shop: Workshop): string[] {
  if (shop.contour) {
    const [low, high] = endSides[shop.contour.axis]!
    const ends = ['ends', 'outer edges', `${low} face outer edge`, `${high} face outer edge`]
    const bores = shop.contour.bores.length > 0 ? ['bore edges', `bore ${low} edge`, `bore ${high} edge`] : []
    const steps = shop.contour.outer.flatMap((p) => [`${p.name} ${low} edge`, `${p.name} ${high} edge`])
    return [...ends, ...bores, ...steps]
  }
  const { profile } = shop
  if (!profile) return []
  const legs = shop.aliases.has('upright') ? ['upright, top corners', 'base, toe corners', 'inside corner'] : []
  const order = ['top', 'bottom', 'front', 'rear', 'left', 'right'] as const
  const pairs = order.flatMap((a, i) =>
    order.slice(i + 1).flatMap((b) => (axisOf[a] === axisOf[b] ? [] : [`${a} ${b} corner`, `${a} ${b} edge`])),
  )
  const worked = [...cornerEdges(profile), ...capEdges(profile)]
    .filter((e) => e.faces.some((f) => !SIDES.some((s) => s === f)))
    .map((e) => `${e.faces.join(' ')} edge`)
  const numbered = shop.outlineCorners.map((_, i) => `corner ${i + 1}`)
  const all = [...legs, 'corners', 'top edges', 'bottom edges', 'all edges', ...pairs, ...numbered, ...worked]
  // only names that mean an edge of this part as it stands
  return all.filter((text) => flatEdgesOf(shop, profile, plainName(text)).length > 0)
}

// ---------------------------------------------------------------- flat stock

/** Corners of the profile as edges along the thickness. */
function cornerEdges(profile: Profile): StockEdge[] {
  const normal = cross(profile.plane.right, profile.plane.up)
  return cornersOf(profile.curves).map(({ at, faces }): StockEdge => {
    const a = inPlane(profile.plane, at)
    const line = [a, add(a, scale(normal, profile.thickness))] as const
    return { faces, profileCorner: at, axis: profile.axis, line, free: [true, true] }
  })
}

/** Borders of the two ends of the profile: its straight sides at either level. */
function capEdges(profile: Profile): StockEdge[] {
  const normal = cross(profile.plane.right, profile.plane.up)
  const { across, up } = faceAxes(profile.axis)
  return profile.caps.flatMap((cap, i) =>
    profile.curves.flatMap(({ curve, face }, k): StockEdge[] => {
      if (curve.kind !== 'line') return []
      const n = profile.curves.length
      const goesOn = [profile.curves[(k + n - 1) % n]!, profile.curves[(k + 1) % n]!].some(
        (c) => c.curve.kind === 'arc',
      )
      const free = [curve.a, curve.b].map((p) => isInsideCorner(profile.curves, p) === false)
      const lean = [curve.a, curve.b].map((p) => leanAt(profile.curves, p))
      const lift = (p: Vec2): Vec3 => add(inPlane(profile.plane, p), scale(normal, i * profile.thickness))
      const axis =
        Math.abs(curve.a[1] - curve.b[1]) < 1e-9 ? across : Math.abs(curve.a[0] - curve.b[0]) < 1e-9 ? up : undefined
      return [
        {
          faces: [cap, face],
          line: [lift(curve.a), lift(curve.b)],
          free: [free[0]!, free[1]!],
          lean: [lean[0]!, lean[1]!],
          goesOn,
          ...(axis === undefined ? {} : { axis }),
        },
      ]
    }),
  )
}

function flatEdgesOf(shop: Workshop, profile: Profile, text: string): StockEdge[] {
  const words = text.split(' ')
  const corners = cornerEdges(profile)
  const caps = capEdges(profile)
  const leg = words.includes('upright') ? 'upright' : words.includes('base') ? 'base' : undefined
  if (leg && shop.aliases.has(leg)) return legCorners(shop, profile, leg, words)
  if (shop.aliases.has('upright')) {
    if (text === 'inside corner') return corners.filter((e) => isBetween(e, shop.aliases.get('inside') ?? []))
    if (text === 'heel edge' || text === 'heel')
      return corners.filter((e) => isBetween(e, shop.aliases.get('heel') ?? []))
  }
  const wanted = SIDES.filter((s) => words.includes(s))
  const touches = (e: StockEdge) => wanted.every((s) => e.faces.includes(s))
  const exact = [...corners, ...caps].filter((e) => e.faces.every((f) => text.includes(f.toLowerCase())))
  const named = exact.filter((e) => e.faces.some((f) => !SIDES.some((s) => s === f)))
  if (named.length > 0) return named
  const step = /^(step|notch)( \w+)? corners?$/.exec(text)
  if (step) {
    const start = step[2] ? `${step[1]}${step[2]} ` : `${step[1]} `
    return corners.filter((e) => e.faces.every((f) => f.toLowerCase().startsWith(start)))
  }
  // as the outline's moves number them
  const numbered = /^corners? (\d+)( edge)?$/.exec(text)
  if (numbered) {
    const [a, b] = shop.outlineCorners[Number(numbered[1]) - 1] ?? [Number.NaN, Number.NaN]
    return corners.filter(({ profileCorner: p }) => p && Math.hypot(p[0] - a, p[1] - b) < 1e-9)
  }
  if (text === 'corners' && !shop.aliases.has('upright')) return stockCorners(shop, profile, corners, caps)
  if (/\bcorners?\b/.test(text)) {
    if (wanted.length >= 2) {
      const here = corners.filter(touches)
      if (here.length > 0) return here
      const ends = caps.filter(touches)
      return ends.length > 0 ? ends : afterStep(shop, [...corners, ...caps], text)
    }
    return shop.aliases.has('upright') && wanted.length === 0 ? [] : corners.filter(touches)
  }
  if (/\bedges?\b/.test(text) || text === 'ends') {
    if (words.includes('vertical')) return [...corners, ...caps].filter((e) => e.axis === 2)
    if (words.includes('all')) return wanted.length > 0 ? [...corners, ...caps].filter(touches) : [...corners, ...caps]
    if (words.includes('outline')) return corners
    const there = wanted.length > 0 ? [...corners, ...caps].filter(touches) : []
    return there.length > 0 ? there : afterStep(shop, [...corners, ...caps], text)
  }
  if (wanted.length < 2) return []
  const there = [...corners, ...caps].filter(touches)
  return there.length > 0 ? there : afterStep(shop, [...corners, ...caps], text)
}

/**
 * Where a step took the edge of two of the stock's faces away, the first one's edge on that side: `top left edge` is
 * then where the top ends at the left, `left top edge` where the left does at its upper end.
 */
function afterStep(shop: Workshop, edges: readonly StockEdge[], text: string): StockEdge[] {
  const [own, toward] = text.split(' ').flatMap((w) => SIDES.filter((s) => s === w))
  if (!own || !toward) return []
  const looks = (name: string) => name !== own && shop.faces.some((f) => f.name === name && f.side === toward)
  return edges.filter((e) => e.faces.includes(own) && e.faces.some(looks))
}

/** The corners that the stock itself has, square to its large face: not those that a notch or a step leaves. */
function stockCorners(
  shop: Workshop,
  profile: Profile,
  corners: readonly StockEdge[],
  caps: readonly StockEdge[],
): StockEdge[] {
  const axis = shop.largeAxis ?? profile.axis
  const own = new Set<string>([...shop.stockWalls, ...profile.caps])
  return (axis === profile.axis ? corners : caps).filter((e) => e.axis === axis && e.faces.every((f) => own.has(f)))
}

function isBetween(e: StockEdge, faces: readonly string[]): boolean {
  return e.faces.every((f) => faces.includes(f))
}

/** Corners of a leg's free end: through the leg's thickness where its end face meets the ends of the angle. */
function legCorners(shop: Workshop, profile: Profile, leg: 'upright' | 'base', words: readonly string[]): StockEdge[] {
  const [tip] = shop.aliases.get('toe') ?? []
  const end = shop.faces.find((f) => f.name === (leg === 'upright' ? 'top' : tip))
  const [inner, outer] = (shop.aliases.get(leg) ?? []).map((n) => shop.faces.find((f) => f.name === n))
  if (!end || !inner || !outer) return []
  const axis = axisOf[inner.side]
  const both = endSides[profile.axis]!
  const named = both.filter((s) => words.includes(s))
  return (named.length > 0 ? named : both).map((side): StockEdge => {
    const at = shop.faces.find((f) => f.name === side)!.at
    const point = (across: number): Vec3 => {
      const p: [number, number, number] = [0, 0, 0]
      p[profile.axis] = at
      p[axisOf[end.side]] = end.at
      p[axis] = across
      return p
    }
    const line = [point(outer.at), point(inner.at)] as const
    const own = shop.profileOf(inner)
    const corner = own && cornersOf(own.curves).find((c) => c.faces.includes(end.name) && c.faces.includes(side))
    const flat = own && corner ? { profile: own, profileCorner: corner.at } : {}
    return { faces: [end.name, side], axis, line, free: [true, true], ...flat }
  })
}

// ---------------------------------------------------------------- turned stock

function roundEdgesOf(shop: Workshop, text: string): StockEdge[] {
  const contour = shop.contour!
  const [low, high] = endSides[contour.axis]!
  const section = halfSection(contour)
  const corners = cornersOf(section)
    .filter(({ at }) => at[1] > 1e-9)
    .map(({ at, faces }): StockEdge => ({ faces, contourCorner: at }))
  const outerNames = new Set([...contour.outer, ...contour.grooves].map((p) => p.name))
  const boreNames = new Set(contour.bores.map((p) => p.name))
  const isOuter = (e: StockEdge) => e.faces.some((f) => outerNames.has(f))
  const isBore = (e: StockEdge) => e.faces.some((f) => boreNames.has(f))
  const ends = [`${low} face`, `${high} face`]
  const words = text.split(' ')
  const side = SIDES.find((s) => words.includes(s) && (s === low || s === high))

  const disc = ['outer face', 'inner face'].find((w) => text.startsWith(w))
  if (disc) {
    const face = shop.aliases.get(disc.split(' ')[0]!)?.[0]
    return corners.filter(
      (e) => isOuter(e) && face !== undefined && e.faces.includes(`${face.replace(/ face$/, '')} face`),
    )
  }
  if (text === 'ends' || text === 'outer edges' || text === 'both ends' || text === 'end edges') {
    // a spigot has its end, and its foot at the face that it stands on
    const own = [...outerNames].filter((o) => shop.faces.some((f) => f.name === `${o} end`))
    const isFoot = (e: StockEdge) => own.some((o) => e.faces.includes(o) && !e.faces.includes(`${o} end`))
    const atEnd = (f: string) => ends.includes(f) || own.some((o) => f === `${o} end`)
    return corners.filter((e) => isOuter(e) && e.faces.some(atEnd) && !isFoot(e))
  }
  const boss = bossOf(shop, words)
  if (boss) {
    if (words.includes('foot') || words.includes('root'))
      return corners.filter(
        (e) => e.faces.includes(boss) && !e.faces.includes(`${boss} end`) && !endCorner(e, boss, corners),
      )
    return corners.filter((e) => e.faces.includes(boss) && endCorner(e, boss, corners))
  }
  const step = [...contour.outer]
    .sort((a, b) => b.name.length - a.name.length)
    .find((p) => text.startsWith(`${p.name.toLowerCase()} `))
  const rest = step ? text.slice(step.name.length).trim().split(' ') : words
  if (rest.includes('bore') || rest.includes('inner')) {
    const at = step && (rest.includes(low) ? low : rest.includes(high) ? high : undefined)
    if (step && at && rest.includes('inner')) return innerOfShoulder(contour, step, at === high, corners)
    const [start, end] = limitsOf(contour)
    const heights = [...(side === high ? [] : [start]), ...(side === low ? [] : [end])]
    const within = ([h]: Vec2) => !step || (h > step.h0 - 1e-9 && h < step.h1 + 1e-9)
    const here = corners.filter(
      (e) => isBore(e) && within(e.contourCorner!) && heights.some((h) => Math.abs(e.contourCorner![0] - h) < 1e-9),
    )
    const label = rest.filter((w) => w !== side && !MOUTH_WORDS.includes(w)).join(' ')
    const called = [`bore ${label} `, `hole ${label} `]
    return label ? here.filter((e) => e.faces.some((f) => called.some((c) => f.toLowerCase().startsWith(c)))) : here
  }
  if (step && text !== `${side} face outer edge` && text !== `${side} edge`) {
    const at = SIDES.find((s) => rest.includes(s))
    const h = at === low ? step.h0 : at === high ? step.h1 : undefined
    return corners.filter(
      (e) => e.faces.includes(step.name) && (h === undefined || Math.abs(e.contourCorner![0] - h) < 1e-9),
    )
  }
  if (side && /\b(edges?|outer)\b/.test(text))
    return corners.filter((e) => isOuter(e) && e.faces.includes(`${side} face`))
  return corners.filter((e) => e.faces.every((f) => text.includes(f.toLowerCase())))
}

/** Words of a bore's edges that tell no bore from another. */
const MOUTH_WORDS = [
  'bore',
  'hole',
  'inner',
  'edge',
  'edges',
  'end',
  'ends',
  'face',
  'faces',
  'both',
  'outer',
  'outside',
]

/** `flange left face inner edge`: the smaller circle of the face at an end of a step, at a bore or a smaller neighbour. */
function innerOfShoulder(
  contour: Contour,
  step: ContourPiece,
  isHigh: boolean,
  corners: readonly StockEdge[],
): StockEdge[] {
  const h = isHigh ? step.h1 : step.h0
  const face = contour.planes.find((p) => p.up === isHigh && Math.abs(p.h - h) < 1e-9)?.name
  const own = corners
    .filter((e) => face !== undefined && e.faces.includes(face))
    .sort((a, b) => a.contourCorner![1] - b.contourCorner![1])
  return own.length > 1 ? own.slice(0, 1) : []
}

function bossOf(shop: Workshop, words: readonly string[]): string | undefined {
  if (!words.includes('boss') && !words.includes('spigot')) return undefined
  const named = shop.contour!.outer.filter((p) => p.name.startsWith('boss'))
  return named.find((p) => words.includes(p.name.split(' ')[1]?.toLowerCase() ?? ''))?.name ?? named[0]?.name
}

/** Whether the corner is the free end of the boss: the one further from the rest of the part. */
function endCorner(e: StockEdge, boss: string, corners: readonly StockEdge[]): boolean {
  const own = corners.filter((c) => c.faces.includes(boss))
  const others = corners.filter((c) => !c.faces.includes(boss))
  if (own.length < 2 || others.length === 0) return true
  const middle = others.reduce((s, c) => s + c.contourCorner![0], 0) / others.length
  const reach = (c: StockEdge) => Math.abs(c.contourCorner![0] - middle)
  return reach(e) >= Math.max(...own.map(reach)) - 1e-9
}
