import type { FaceTexture } from '../../brief/geometric.ts'
import type { Size } from '../../brief/size.ts'
import { dot, sub } from '../../geometry/vec3.ts'
import type { ChosenSize, Part } from '../../part/part.ts'
import { generalRoughness, localRoughness } from './texture.ts'

const NEAR = 1e-6

/** What is asked of the surfaces that a size lies between. */
export interface AskedTexture {
  /** Ra of the roughest of them, µm; undefined where nothing is asked of one. */
  readonly ra: number | undefined
  /** A way of making is named at one of them: `ground`. */
  readonly processes: readonly string[]
}

/**
 * The texture asked of the surfaces that a size of the brief holds: the symbol's at a surface that has one, else the
 * finest of the title block and the notes. A symbol at another surface says nothing here.
 */
export function textureOfSize(part: Part, size: Size): AskedTexture {
  const { brief, named } = part
  const general = generalRoughness(brief)
  const own = (face: number): FaceTexture[] =>
    (brief.textures ?? []).filter((_, i) => named?.textures[i]?.faces.includes(face))
  const faces = part.chosen.flatMap((c) => (c.kind !== 'angle' && c.size === size ? facesOf(part, c) : []))
  const asked = faces.map((face) => {
    const said = own(face).flatMap((t) => localRoughness(t) ?? [])
    return said.length > 0 ? Math.min(...said) : general
  })
  const all = asked.length > 0 ? asked : [general]
  return {
    ra: all.some((ra) => ra === undefined) ? undefined : Math.max(...all.flatMap((ra) => ra ?? [])),
    processes: faces.flatMap((face) => own(face).flatMap((t) => t.process?.text ?? [])),
  }
}

/** Faces that a size is measured at: round walls, the planes at its ends, the two sides of a width. Axes have none. */
function facesOf(part: Part, chosen: Exclude<ChosenSize, { readonly kind: 'angle' }>): readonly number[] {
  if ('faces' in chosen) return chosen.faces
  if ('from' in chosen) return [chosen.from, chosen.to].flatMap((id) => onPlane(part, id))
  if (chosen.kind !== 'width' && chosen.kind !== 'length') return []
  const walls = part.features.flatMap((f) => (f.id === chosen.of ? f.members.flatMap((m) => m.faces) : []))
  return part.body.faces.flatMap(({ id, surface }) =>
    walls.includes(id) && surface.kind === 'plane' && Math.abs(dot(surface.axes.z, chosen.direction)) > 1 - NEAR
      ? [id]
      : [],
  )
}

function onPlane({ body, data }: Part, id: string): number[] {
  const datum = data.find((d) => d.id === id)
  return body.faces.flatMap(({ id: face, name, surface }) => {
    if (name === id) return [face]
    if (datum?.kind !== 'plane' || surface.kind !== 'plane') return []
    const { origin, z } = surface.axes
    const on = Math.abs(dot(z, datum.normal)) > 1 - NEAR && Math.abs(dot(sub(datum.point, origin), z)) < NEAR
    return on ? [face] : []
  })
}
