import type { Vec2 } from '../../geometry/vec.ts'

export const add = (a: Vec2, b: Vec2): Vec2 => [a[0] + b[0], a[1] + b[1]]
export const along = (p: Vec2, d: Vec2, s: number): Vec2 => [p[0] + d[0] * s, p[1] + d[1] * s]
export const dot = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1]
/** Quarter turn counter-clockwise. */
export const turned = (d: Vec2): Vec2 => [-d[1], d[0]]
export const back = (d: Vec2): Vec2 => [-d[0], -d[1]]
export const polar = (angle: number): Vec2 => [Math.cos(angle), Math.sin(angle)]
