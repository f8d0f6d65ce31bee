import type { Vec3 } from '../../../src/geometry/vec.ts'
import type { Body, Curve3, Surface3 } from '../../../src/kernel/body.ts'
import type { Recipe } from './analytic-solid.ts'
import type { Hit, LineOfSight } from './mesh-arbiter.ts'

/** Bodies as one, none changed by another: what a file's assembly is. Numbers of faces and edges run on. */
export function together(bodies: readonly Body[]): Body {
  const faces: Body['faces'][number][] = []
  const edges: Body['edges'][number][] = []
  for (const body of bodies) {
    const [f, e] = [faces.length, edges.length]
    for (const face of body.faces)
      faces.push({
        ...face,
        id: face.id + f,
        loops: face.loops.map((loop) => loop.map((use) => ({ ...use, edge: use.edge + e }))),
      })
    for (const edge of body.edges) {
      const [a, b] = edge.faces
      edges.push({ ...edge, id: edge.id + e, faces: b === undefined ? [a + f] : [a + f, b + f] })
    }
  }
  const bound = (pick: (...x: number[]) => number, end: 'min' | 'max', k: number) =>
    pick(...bodies.map((b) => b.box[end][k]!))
  const corner = (pick: (...x: number[]) => number, end: 'min' | 'max'): Vec3 => [
    bound(pick, end, 0),
    bound(pick, end, 1),
    bound(pick, end, 2),
  ]
  return { faces, edges, box: { min: corner(Math.min, 'min'), max: corner(Math.max, 'max') } }
}

/** The same body moved. */
export function moved(body: Body, by: Vec3): Body {
  const at = (p: Vec3): Vec3 => [p[0] + by[0], p[1] + by[1], p[2] + by[2]]
  const curve = (c: Curve3): Curve3 => {
    if (c.kind === 'line') return { ...c, a: at(c.a), b: at(c.b) }
    if (c.kind === 'spline') return { ...c, poles: c.poles.map(at) }
    return { ...c, axes: { ...c.axes, origin: at(c.axes.origin) } }
  }
  const surface = (s: Surface3): Surface3 =>
    s.kind === 'spline'
      ? { ...s, poles: s.poles.map((row) => row.map(at)) }
      : { ...s, axes: { ...s.axes, origin: at(s.axes.origin) } }
  return {
    faces: body.faces.map((f) => ({ ...f, surface: surface(f.surface) })),
    edges: body.edges.map((e) => ({ ...e, curve: curve(e.curve) })),
    box: { min: at(body.box.min), max: at(body.box.max) },
  }
}

/** What a moved solid is made of. */
export function movedRecipe(recipe: Recipe, by: Vec3): Recipe {
  return recipe.map(({ cut, primitive }) => ({
    cut,
    primitive: { ...primitive, at: [primitive.at[0] + by[0], primitive.at[1] + by[1], primitive.at[2] + by[2]] },
  }))
}

/** Lines of sight that meet the faces of every solid, within another or not. */
export function throughAll(sights: readonly LineOfSight[]): LineOfSight {
  return {
    at: (x, y): Hit[] =>
      sights
        .flatMap((s, i) => s.at(x, y).map((h) => ({ ...h, face: h.face * sights.length + i })))
        .sort((a, b) => b.depth - a.depth),
  }
}
