import type { Vec3 } from '../../../geometry/vec.ts'

/** Triangles of curved faces with the slope of the true face at their corners. */
export interface CurvedMesh {
  readonly corners: Float32Array
  readonly normals: Float32Array
}

/** Triangles from which on outlines while turning would be slower than the eye. */
const MOST = 200_000

/** The curved faces of a mesh: at a corner the mean slope of the face's triangles there. */
export function curvedMesh(corners: Float32Array, faces: Int32Array): CurvedMesh {
  const byFace = new Map<number, number[]>()
  faces.forEach((face, i) => {
    const list = byFace.get(face)
    if (list) list.push(i)
    else byFace.set(face, [i])
  })
  const keptCorners: number[] = []
  const keptNormals: number[] = []
  for (const triangles of byFace.values()) {
    const flat = triangles.map((t) => normalOf(corners, 9 * t))
    const first = unit(flat[0]!)
    if (flat.every((n) => dot(unit(n), first) > 1 - 1e-6)) continue
    if (keptCorners.length / 9 + triangles.length > MOST) break
    const sums = new Map<string, [number, number, number]>()
    const key = (o: number) => `${corners[o]} ${corners[o + 1]} ${corners[o + 2]}`
    triangles.forEach((t, i) => {
      for (let k = 0; k < 9; k += 3) {
        const at = key(9 * t + k)
        const sum = sums.get(at) ?? [0, 0, 0]
        for (const c of [0, 1, 2] as const) sum[c] += flat[i]![c]
        sums.set(at, sum)
      }
    })
    for (const t of triangles) {
      for (let k = 0; k < 9; k += 3) {
        const o = 9 * t + k
        keptCorners.push(corners[o]!, corners[o + 1]!, corners[o + 2]!)
        keptNormals.push(...unit(sums.get(key(o))!))
      }
    }
  }
  return { corners: Float32Array.from(keptCorners), normals: Float32Array.from(keptNormals) }
}

/** Where curved faces turn away from a far viewer: six numbers a piece. */
export function meshOutline({ corners, normals }: CurvedMesh, [x, y, z]: Vec3): number[] {
  const out: number[] = []
  const d = [0, 0, 0]
  for (let t = 0; t < corners.length; t += 9) {
    for (let k = 0; k < 3; k++) {
      const o = t + 3 * k
      d[k] = normals[o]! * x + normals[o + 1]! * y + normals[o + 2]! * z
    }
    if (d[0]! > 0 === d[1]! > 0 && d[1]! > 0 === d[2]! > 0) continue
    for (let k = 0; k < 3; k++) {
      const m = (k + 1) % 3
      if (d[k]! > 0 === d[m]! > 0) continue
      const s = d[k]! / (d[k]! - d[m]!)
      for (let c = 0; c < 3; c++) {
        const [u, v] = [corners[t + 3 * k + c]!, corners[t + 3 * m + c]!]
        out.push(u + s * (v - u))
      }
    }
  }
  return out
}

function normalOf(c: Float32Array, o: number): Vec3 {
  const [ax, ay, az] = [c[o + 3]! - c[o]!, c[o + 4]! - c[o + 1]!, c[o + 5]! - c[o + 2]!]
  const [bx, by, bz] = [c[o + 6]! - c[o]!, c[o + 7]! - c[o + 1]!, c[o + 8]! - c[o + 2]!]
  return [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx]
}

function unit([x, y, z]: readonly [number, number, number]): Vec3 {
  const l = Math.hypot(x, y, z) || 1
  return [x / l, y / l, z / l]
}

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
