export type Vec2 = readonly [x: number, y: number]
export type Vec3 = readonly [x: number, y: number, z: number]
