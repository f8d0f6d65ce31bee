import type { Vec3 } from '../../../geometry/vec.ts'
import { dot, sub } from '../../../geometry/vec3.ts'
import type { BodyFace } from '../../../kernel/body.ts'
import { pointOnCurve } from '../../../kernel/evaluate3.ts'
import { meshOf } from '../../../kernel/mesh.ts'
import type { OcctKernel } from '../../../kernel/open.ts'
import type { Part } from '../../../part/part.ts'
import { sideOf } from '../../../views/frames.ts'
import { type FeatureWords, featureWords } from './feature-words.ts'
import type { HandAxis, SolidPicture } from './messages.ts'

/** Chords of a curved edge. */
const STEPS = 48

/** The part's solid for the hand. Throws where there is none. */
export function pictureOf(part: Part | undefined, kernel: OcctKernel): SolidPicture {
  if (!part || part.body.faces.length === 0) throw new Error('there is no solid to look at yet')
  const { body } = part
  const words = featureWords(part)
  const size = Math.hypot(...body.box.max.map((c, i) => c - body.box.min[i]!))
  const mesh = meshOf(kernel, part.solid, size / 2000)
  return {
    ...mesh,
    edges: body.edges
      .filter((e) => !e.seam)
      .map((e) => {
        const steps = e.curve.kind === 'line' ? 1 : STEPS
        const points = new Float32Array(3 * (steps + 1))
        for (let i = 0; i <= steps; i++) points.set(pointOnCurve(e.curve, i / steps), 3 * i)
        return { id: e.id, points, smooth: e.smooth }
      }),
    box: body.box,
    axes: axesOf(part, mesh, words),
    faceWords: body.faces.map((f) => (f.name ? words.ofFace(f.name) : kindOf(f))),
  }
}

function axesOf(part: Part, mesh: Pick<SolidPicture, 'corners' | 'faces'>, words: FeatureWords): HandAxis[] {
  const { min, max } = part.body.box
  const boxCorners = [0, 1, 2, 3, 4, 5, 6, 7].map(
    (k): Vec3 => [k & 1 ? max[0] : min[0], k & 2 ? max[1] : min[1], k & 4 ? max[2] : min[2]],
  )
  return part.data.flatMap((datum): HandAxis[] => {
    if (datum.kind !== 'axis') return []
    const { id, point, direction } = datum
    const owners = part.features.filter((f) => f.members.some((m) => m.axes.includes(id)))
    const members = owners.flatMap((f) => f.members.filter((m) => m.axes.includes(id)))
    const faces = new Set([...(datum.faces ?? []), ...members.flatMap((m) => m.faces)])
    let [from, to] = [Infinity, -Infinity]
    const reach = (p: Vec3) => {
      const s = dot(sub(p, point), direction)
      from = Math.min(from, s)
      to = Math.max(to, s)
    }
    mesh.faces.forEach((face, i) => {
      if (!faces.has(face)) return
      for (let k = 9 * i; k < 9 * i + 9; k += 3) reach([mesh.corners[k]!, mesh.corners[k + 1]!, mesh.corners[k + 2]!])
    })
    if (from > to) for (const corner of boxCorners) reach(corner)
    const called = members[0] ? words.ofFace(members[0].id) : words.of(id.replace(/ axis$/, ''))
    return [{ of: [id, ...owners.map((f) => f.id)], words: called, point, direction, from, to }]
  })
}

/** Without a name in the brief: what kind of face it is, and where it looks. */
function kindOf({ surface, reversed }: BodyFace): string {
  switch (surface.kind) {
    case 'plane': {
      const s = reversed ? -1 : 1
      const { z } = surface.axes
      const side = sideOf([s * z[0], s * z[1], s * z[2]])
      return side ? `a flat face that looks ${WAYS[side]}` : 'a slanting flat face'
    }
    case 'cylinder':
      return reversed ? 'a round hollow' : 'a round face'
    case 'cone':
      return 'a conical face'
    case 'sphere':
      return 'a spherical face'
    case 'torus':
      return 'a rounded rim'
    case 'spline':
      return 'a free-form face'
  }
}

const WAYS = {
  front: 'to the front',
  rear: 'to the rear',
  left: 'left',
  right: 'right',
  top: 'up',
  bottom: 'down',
} as const
