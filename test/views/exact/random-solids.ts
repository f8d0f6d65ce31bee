import type { Vec3 } from '../../../src/geometry/vec.ts'
import { unit } from '../../../src/geometry/vec3.ts'
import type { SolidKey } from '../../../src/kernel/kernel.ts'
import type { Shapes } from '../../../src/kernel/shapes.ts'
import type { Frame } from '../../../src/views/view.ts'
import { type Primitive, type Recipe, turnedAxes } from './analytic-solid.ts'

/** Seeded numbers in [0, 1): mulberry32. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

export interface RandomSolid {
  readonly solid: SolidKey
  readonly words: readonly string[]
  /** What it is made of, for a ray test that needs no kernel. */
  readonly recipe: Recipe
}

/** How far apart two faces are that nearly touch, mm. */
const HAIR = 1e-3

/**
 * Two to five primitives put together and cut from each other. Most dimensions are whole millimetres, so that faces
 * coincide, touch and are tangent; some are off by a hair. Undefined where the kernel gives up.
 */
export function randomSolid(make: Shapes, seed: number, kinds: readonly string[]): RandomSolid | undefined {
  const random = seeded(seed)
  const whole = (lo: number, hi: number) => {
    const n = lo + Math.floor(random() * (hi - lo + 1))
    return random() < 0.1 ? n + (random() < 0.5 ? HAIR : -HAIR) : n
  }
  const axes: readonly Vec3[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ]
  const words: string[] = []
  const primitive = (): { solid: SolidKey; primitive: Primitive } => {
    const kind = kinds[Math.floor(random() * kinds.length)]!
    const at: Vec3 = [whole(-6, 6), whole(-6, 6), whole(-6, 6)]
    const tilted = random() < 0.15
    const axis = tilted ? unit([random() - 0.5, random() - 0.5, random() - 0.5]) : axes[Math.floor(random() * 3)]!
    const say = (...numbers: number[]) => words.push(`${kind} at ${at} axis ${axis} ${numbers}`)
    switch (kind) {
      case 'box': {
        const size: Vec3 = [whole(3, 12), whole(3, 12), whole(3, 12)]
        say(...size)
        const box = make.box(at, [at[0] + size[0], at[1] + size[1], at[2] + size[2]])
        const degrees = tilted ? 90 * random() : 0
        return {
          solid: tilted ? make.rotate(box, at, axis, degrees) : box,
          primitive: { kind, at, axes: turnedAxes(axis, degrees), size },
        }
      }
      case 'cylinder': {
        const [r, h] = [whole(2, 5), whole(4, 14)]
        say(r, h)
        return { solid: make.cylinder(at, axis, r, h), primitive: { kind: 'frustum', at, axis, r, q: r, h } }
      }
      case 'cone': {
        const [r, q, h] = [whole(3, 6), random() < 0.3 ? 0 : whole(1, 2), whole(4, 10)]
        say(r, q, h)
        return { solid: make.cone(at, axis, r, q, h), primitive: { kind: 'frustum', at, axis, r, q, h } }
      }
      case 'sphere': {
        const r = whole(2, 6)
        say(r)
        return { solid: make.sphere(at, r), primitive: { kind, at, r } }
      }
      default: {
        const [major, minor] = [whole(4, 7), whole(1, 3)]
        say(major, minor)
        return {
          solid: make.torus(at, axis, major, minor),
          primitive: { kind: 'torus', at, axis, major, minor },
        }
      }
    }
  }
  try {
    const first = primitive()
    let { solid } = first
    const recipe = [{ cut: false, primitive: first.primitive }]
    const count = 1 + Math.floor(random() * 4)
    for (let i = 0; i < count; i++) {
      const tool = primitive()
      const cut = random() < 0.5
      words.push(cut ? 'cut' : 'fused')
      solid = cut ? make.cut(solid, tool.solid) : make.fuse(solid, tool.solid)
      recipe.push({ cut, primitive: tool.primitive })
    }
    return { solid, words, recipe }
  } catch {
    return undefined
  }
}

/**
 * The solid of a recipe with every primitive turned about its own axis, which changes nothing but where its seams lie.
 * For primitives of revolution only.
 */
export function turnedSolid(make: Shapes, recipe: Recipe, degrees: number): SolidKey {
  const one = (p: Primitive): SolidKey => {
    switch (p.kind) {
      case 'frustum': {
        const plain = p.r === p.q ? make.cylinder(p.at, p.axis, p.r, p.h) : make.cone(p.at, p.axis, p.r, p.q, p.h)
        return make.rotate(plain, p.at, p.axis, degrees)
      }
      case 'torus':
        return make.rotate(make.torus(p.at, p.axis, p.major, p.minor), p.at, p.axis, degrees)
      case 'sphere':
        return make.rotate(make.sphere(p.at, p.r), p.at, [0.36, 0.48, 0.8], degrees)
      case 'box':
        throw new Error('a box has no seam')
    }
  }
  return recipe
    .slice(1)
    .reduce(
      (solid, { cut, primitive }) => (cut ? make.cut(solid, one(primitive)) : make.fuse(solid, one(primitive))),
      one(recipe[0]!.primitive),
    )
}

/** A view along any direction, right-handed. */
export function frameAlong(direction: Vec3): Frame {
  const toViewer = unit(direction)
  const helper: Vec3 = Math.abs(toViewer[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1]
  const raw: Vec3 = [
    helper[1] * toViewer[2] - helper[2] * toViewer[1],
    helper[2] * toViewer[0] - helper[0] * toViewer[2],
    helper[0] * toViewer[1] - helper[1] * toViewer[0],
  ]
  const right = unit(raw)
  const up: Vec3 = [
    toViewer[1] * right[2] - toViewer[2] * right[1],
    toViewer[2] * right[0] - toViewer[0] * right[2],
    toViewer[0] * right[1] - toViewer[1] * right[0],
  ]
  return { right, up, toViewer }
}

export const PRINCIPAL: Readonly<Record<'front' | 'rear' | 'top' | 'bottom' | 'left' | 'right', Frame>> = {
  front: { right: [1, 0, 0], up: [0, 0, 1], toViewer: [0, -1, 0] },
  rear: { right: [-1, 0, 0], up: [0, 0, 1], toViewer: [0, 1, 0] },
  top: { right: [1, 0, 0], up: [0, 1, 0], toViewer: [0, 0, 1] },
  bottom: { right: [1, 0, 0], up: [0, -1, 0], toViewer: [0, 0, -1] },
  left: { right: [0, -1, 0], up: [0, 0, 1], toViewer: [-1, 0, 0] },
  right: { right: [0, 1, 0], up: [0, 0, 1], toViewer: [1, 0, 0] },
}
