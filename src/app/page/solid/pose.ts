import type { Vec2, Vec3 } from '../../../geometry/vec.ts'
import { cross, dot } from '../../../geometry/vec3.ts'
import type { Frame } from '../../../views/view.ts'

/** How the part is held: turned from the standard pictorial (radians), brought nearer, moved on the slip. */
export interface Pose {
  /** About the part's upright axis; positive turns its front to the left. */
  readonly yaw: number
  /** Toward the viewer; positive shows more of the top. */
  readonly tilt: number
  /** Times as large as on the slip at first. */
  readonly near: number
  /** Where the middle of the part stands off the middle of the slip, in mm of the part as first held. */
  readonly off: Vec2
}

export const HOME: Pose = { yaw: 0, tilt: 0, near: 1, off: [0, 0] }

/** Direction of sight of the standard isometric pictorial (ISO 5456-3): from the right, the front and above. */
const BEARING = -Math.PI / 4
const RISE = Math.asin(1 / Math.sqrt(3))
/** Straight above or below is as far as it tips. */
const STEEPEST = Math.PI / 2
const NEAREST = 12
const FARTHEST = 0.5

/** The view that a pose gives. */
export function frameOf({ yaw, tilt }: Pose): Frame {
  const bearing = BEARING + yaw
  const rise = RISE + tilt
  const toViewer: Vec3 = [Math.cos(bearing) * Math.cos(rise), Math.sin(bearing) * Math.cos(rise), Math.sin(rise)]
  const right: Vec3 = [-Math.sin(bearing), Math.cos(bearing), 0]
  return { right, up: cross(toViewer, right), toViewer }
}

export function turned(pose: Pose, yaw: number, tilt: number): Pose {
  const rise = Math.max(-STEEPEST, Math.min(STEEPEST, RISE + pose.tilt + tilt))
  return { ...pose, yaw: pose.yaw + yaw, tilt: rise - RISE }
}

/** Nearer by a factor; what lies at a point off the middle, in mm as first held, stays there. */
export function nearer(pose: Pose, factor: number, [x, y]: Vec2 = [0, 0]): Pose {
  const near = Math.max(FARTHEST, Math.min(NEAREST, pose.near * factor))
  const by = near / pose.near
  return { ...pose, near, off: [x - (x - pose.off[0]) * by, y - (y - pose.off[1]) * by] }
}

/** From one pose to another, the short way round. */
export function between(a: Pose, b: Pose, t: number): Pose {
  const whole = 2 * Math.PI
  const way = ((((b.yaw - a.yaw) % whole) + 1.5 * whole) % whole) - whole / 2
  const mix = (p: number, q: number) => p + (q - p) * t
  return {
    yaw: t === 1 ? b.yaw : a.yaw + way * t,
    tilt: mix(a.tilt, b.tilt),
    near: mix(a.near, b.near),
    off: [mix(a.off[0], b.off[0]), mix(a.off[1], b.off[1])],
  }
}

export const isHome = (pose: Pose): boolean =>
  [pose.yaw, pose.tilt, pose.near - 1, ...pose.off].every((v) => Math.abs(v) < 1e-9)

/** How the part is turned, for the reader. */
export function poseWords({ yaw, tilt, near }: Pose): string {
  const degrees = (a: number) => Math.round((Math.abs(a) * 180) / Math.PI)
  const whole = 2 * Math.PI
  const round = ((((yaw % whole) + 1.5 * whole) % whole) - whole / 2) as number
  const said = [
    degrees(round) > 0 ? `turned ${degrees(round)}° ${round < 0 ? 'right' : 'left'}` : '',
    degrees(tilt) > 0 ? `tipped ${degrees(tilt)}° ${tilt > 0 ? 'forward' : 'back'}` : '',
    Math.abs(near - 1) > 0.01 ? `${near > 1 ? 'nearer' : 'farther'}, ${near.toFixed(1)} times as large` : '',
  ].filter((w) => w !== '')
  const words = said.length > 0 ? said.join(', ') : 'as on the sheet'
  return words[0]!.toUpperCase() + words.slice(1)
}

/** The slip's own drawing board: px for a mm of the part, and where its middle stands. */
export interface Board {
  readonly frame: Frame
  /** Px for a mm of the part. */
  readonly scale: number
  /** View mm of what stands at `at`. */
  readonly middle: Vec2
  /** Px. */
  readonly at: Vec2
}

/** The part's longest way through, as a share of the slip's height: held as on the sheet it is shorter by a fifth. */
const FILL = 1

/** Px for a mm of the part as first held. */
export function firstScale(size: number, width: number, height: number): number {
  return (FILL * Math.min(width, height)) / size
}

export function boardOf(
  pose: Pose,
  box: { readonly min: Vec3; readonly max: Vec3 },
  area: { readonly width: number; readonly height: number },
): Board {
  const frame = frameOf(pose)
  const centre = box.min.map((c, i) => (c + box.max[i]!) / 2) as unknown as Vec3
  const size = Math.hypot(...box.min.map((c, i) => box.max[i]! - c))
  const first = firstScale(size, area.width, area.height)
  return {
    frame,
    scale: first * pose.near,
    middle: [dot(centre, frame.right), dot(centre, frame.up)],
    at: [area.width / 2 + pose.off[0] * first, area.height / 2 - pose.off[1] * first],
  }
}

/** Px of a point of the part. */
export const onBoard = ({ frame, scale, middle, at }: Board, p: Vec3): Vec2 => [
  at[0] + (dot(p, frame.right) - middle[0]) * scale,
  at[1] - (dot(p, frame.up) - middle[1]) * scale,
]
