import type { Curve2 } from '../geometry/curve2.ts'
import { reversed } from '../geometry/evaluate.ts'
import { dot } from '../geometry/vec3.ts'
import type { Body, BodyFace } from '../kernel/body.ts'
import { projectCurve } from './project.ts'
import type { Frame } from './view.ts'

/** Cut faces that look at the viewer, as closed loops in the view: outer first, then holes. */
export function cutRegions(body: Body, frame: Frame): Curve2[][][] {
  return body.faces.filter((f) => f.cut && facesViewer(f, frame)).map((face) => loopsOf(face, body, frame))
}

function facesViewer(face: BodyFace, frame: Frame): boolean {
  if (face.surface.kind !== 'plane') return false
  const side = face.reversed ? -1 : 1
  return side * dot(face.surface.axes.z, frame.toViewer) > 1 - 1e-9
}

function loopsOf(face: BodyFace, body: Body, frame: Frame): Curve2[][] {
  return face.loops.map((loop) =>
    loop.flatMap((use): Curve2[] => {
      const curve = projectCurve(body.edges[use.edge]!.curve, frame)
      return curve ? [use.forward ? curve : reversed(curve)] : []
    }),
  )
}
