import type { Vec3 } from '../../../geometry/vec.ts'
import { dot } from '../../../geometry/vec3.ts'
import type { Frame } from '../../../views/view.ts'

/**
 * Where the plane p·normal = level goes through triangles: six numbers a piece, one end after the other, in mm.
 * A corner on the plane counts as beyond it, so that the pieces close to loops.
 */
export function meshCut(corners: Float32Array, normal: Vec3, level: number): Float32Array {
  const axis = normal.findIndex((c) => c !== 0)
  const at = level * normal[axis]!
  const out: number[] = []
  for (let t = 0; t < corners.length; t += 9) {
    const h = [corners[t + axis]! - at, corners[t + 3 + axis]! - at, corners[t + 6 + axis]! - at]
    const beyond = (h[0]! >= 0 ? 1 : 0) + (h[1]! >= 0 ? 1 : 0) + (h[2]! >= 0 ? 1 : 0)
    if (beyond === 0 || beyond === 3) continue
    for (let k = 0; k < 3; k++) {
      const [a, b] = [k, (k + 1) % 3]
      if (h[a]! >= 0 === h[b]! >= 0) continue
      // The same two corners give the same point in both triangles that share them.
      const [p, q] = before(corners, t + 3 * a, t + 3 * b) ? [a, b] : [b, a]
      const s = h[p]! / (h[p]! - h[q]!)
      for (let c = 0; c < 3; c++) {
        const [u, v] = [corners[t + 3 * p + c]!, corners[t + 3 * q + c]!]
        out.push(c === axis ? at : u + s * (v - u))
      }
    }
  }
  return Float32Array.from(out)
}

function before(corners: Float32Array, a: number, b: number): boolean {
  for (let c = 0; c < 3; c++) if (corners[a + c] !== corners[b + c]) return corners[a + c]! < corners[b + c]!
  return true
}

/**
 * Section lines within the loops that `pieces` make, in their plane: six numbers a line. `angle` is in degrees from the
 * plane's own right, `spacing` and `offset` in mm of the part. Inside is what an odd number of pieces lies before.
 */
export function sectionLines(
  pieces: Float32Array,
  plane: Frame,
  style: { readonly angle: number; readonly spacing: number; readonly offset: number },
): Float32Array {
  const turn = (style.angle * Math.PI) / 180
  const mixed = (u: number, v: number): Vec3 => [
    u * plane.right[0] + v * plane.up[0],
    u * plane.right[1] + v * plane.up[1],
    u * plane.right[2] + v * plane.up[2],
  ]
  const along = mixed(Math.cos(turn), Math.sin(turn))
  const across = mixed(-Math.sin(turn), Math.cos(turn))
  const hits = new Map<number, number[]>()
  let height = 0
  for (let i = 0; i < pieces.length; i += 6) {
    const a: Vec3 = [pieces[i]!, pieces[i + 1]!, pieces[i + 2]!]
    const b: Vec3 = [pieces[i + 3]!, pieces[i + 4]!, pieces[i + 5]!]
    height = dot(a, plane.toViewer)
    const [va, vb] = [dot(a, across), dot(b, across)]
    if (va === vb) continue
    const [ua, ub] = [dot(a, along), dot(b, along)]
    const [lo, hi] = va < vb ? [va, vb] : [vb, va]
    const first = Math.ceil((lo - style.offset) / style.spacing)
    for (let k = first; k * style.spacing + style.offset < hi; k++) {
      const s = (k * style.spacing + style.offset - va) / (vb - va)
      const list = hits.get(k)
      if (list) list.push(ua + s * (ub - ua))
      else hits.set(k, [ua + s * (ub - ua)])
    }
  }
  const out: number[] = []
  for (const [k, list] of hits) {
    list.sort((p, q) => p - q)
    const v = k * style.spacing + style.offset
    for (let i = 0; i + 1 < list.length; i += 2) {
      for (const u of [list[i]!, list[i + 1]!])
        for (let c = 0; c < 3; c++) out.push(u * along[c]! + v * across[c]! + height * plane.toViewer[c]!)
    }
  }
  return Float32Array.from(out)
}
