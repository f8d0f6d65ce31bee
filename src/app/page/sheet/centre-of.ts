import type { Vec3 } from '../../../geometry/vec.ts'
import { scale, unit } from '../../../geometry/vec3.ts'
import { FRAMES } from '../../../views/frames.ts'
import type { Frame } from '../../../views/view.ts'
import type { Drawn } from '../engine/messages.ts'

/** What a centre line stands for: features about axes, and the plane in which it is seen edge-on. */
export interface CentreOf {
  readonly features: readonly string[]
  readonly plane?: { readonly point: Vec3; readonly normal: Vec3 }
}

/** How the part is held in a view of the sheet; undefined for the pictorial. */
function frameOf({ sections }: Drawn, view: string): Frame | undefined {
  const name = sections.find((s) => s.view === view)?.side ?? view
  return Object.entries(FRAMES).find(([side]) => side === name)?.[1]
}

/** What the centre line of a view stands for in the part; undefined for any other line. */
export function centreOf(drawn: Drawn, index: number | undefined): CentreOf | undefined {
  const item = index === undefined ? undefined : drawn.sheet?.items[index]
  if (item?.item !== 'stroke' || item.kind !== 'centre') return undefined
  const features = item.tie?.features ?? []
  const view = drawn.sheet?.views.find((v) => v.id === item.tie?.view)
  const frame = view && frameOf(drawn, view.id)
  if (!frame || item.curve.kind !== 'line') return { features }
  const { a, b } = item.curve
  const at = (p: readonly [number, number]) => [
    (p[0] - view.origin[0]) / view.scale,
    (p[1] - view.origin[1]) / view.scale,
  ]
  const [u, v] = at(a) as [number, number]
  const [du, dv] = [b[0] - a[0], b[1] - a[1]]
  const mixed = (x: number, y: number): Vec3 => [
    x * frame.right[0] + y * frame.up[0],
    x * frame.right[1] + y * frame.up[1],
    x * frame.right[2] + y * frame.up[2],
  ]
  const normal = unit(mixed(-dv, du))
  const along = mixed(u, v)
  const off = along[0] * normal[0] + along[1] * normal[1] + along[2] * normal[2]
  return { features, plane: { point: scale(normal, off), normal } }
}
