import { type PointerEvent, useRef } from 'react'
import type { Unit } from '../../../brief/size.ts'
import type { Vec2 } from '../../../geometry/vec.ts'
import { EM_OVER_CAPITAL } from '../../../sheet/lettering/metrics.ts'
import { pathOf } from '../../../write/path-data.ts'
import type { SolidPicture } from '../engine/messages.ts'
import { broughtBy, type LineOnSlip } from './cutting-line.ts'
import { broughtTo, depthOf, type PlaneInHand, planeWords, stations, stepOf } from './cutting-plane.ts'

interface CuttingHandleProps {
  readonly line: LineOnSlip
  readonly plane: PlaneInHand
  readonly solid: SolidPicture
  readonly unit: Unit
  /** Px for a mm of the part. */
  readonly scale: number
  readonly onPlane: (plane: PlaneInHand) => void
  /** Lays it from another side. */
  readonly onNext: () => void
}

const as = (p: Vec2): Vec2 => p
/** Px within which the plane goes to an axis, and that a hand may tremble. */
const NEAR = 6
const STILL = 4

/** The cutting-plane line in the hand: drawn into the part it cuts it, touched it is laid from another side. */
export function CuttingHandle({ line, plane, solid, unit, scale, onPlane, onNext }: CuttingHandleProps) {
  const { box, axes } = solid
  const grip = useRef<{ x: number; y: number; depth: number; far: number }>(undefined)
  const stops = stations(plane.side, box, axes)
  const deepest = depthOf(plane.side, box)
  const move = (event: PointerEvent) => {
    const held = grip.current
    if (!held) return
    const by: Vec2 = [event.clientX - held.x, event.clientY - held.y]
    held.far = Math.max(held.far, Math.hypot(...by))
    if (held.far < STILL) return
    const depth = held.depth + broughtBy(line.way, by, scale)
    const near = NEAR / Math.max(Math.hypot(...line.way), 0.3 * scale)
    const stop = stops.find((s) => Math.abs(s.depth - depth) < near)
    onPlane(broughtTo(plane, stop?.depth ?? depth, box))
  }
  const d = pathOf(
    line.strokes.map((s) => s.curve),
    as,
  )
  return (
    <g
      className={`cutting-handle${plane.depth > 0 ? '' : ' ready'}`}
      role="slider"
      tabIndex={0}
      aria-label={`Cutting plane A–A, from the ${plane.side}`}
      aria-description="Arrows bring it in, Page Up and Page Down from axis to axis; Enter lays it from another side"
      aria-valuemin={0}
      aria-valuemax={Number(deepest.toFixed(2))}
      aria-valuenow={Number(plane.depth.toFixed(2))}
      aria-valuetext={planeWords(plane, box, axes, unit)}
      onPointerDown={(event) => {
        event.stopPropagation()
        event.currentTarget.setPointerCapture(event.pointerId)
        grip.current = { x: event.clientX, y: event.clientY, depth: plane.depth, far: 0 }
      }}
      onPointerMove={move}
      onPointerUp={() => {
        if (grip.current && grip.current.far < STILL) onNext()
        grip.current = undefined
      }}
      onPointerCancel={() => {
        grip.current = undefined
      }}
      onKeyDown={(event) => {
        const step = stepOf(plane.side, box, unit)
        const whole = (by: number) => Math.round(plane.depth / step + by) * step
        const inward = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key]
        let depth: number | undefined
        if (inward) depth = whole(inward)
        else if (event.key === 'Home') depth = 0
        else if (event.key === 'End') depth = stops.at(-1)?.depth ?? deepest / 2
        else if (event.key === 'PageUp') depth = stops.find((s) => s.depth > plane.depth + 1e-6)?.depth
        else if (event.key === 'PageDown') depth = stops.findLast((s) => s.depth < plane.depth - 1e-6)?.depth ?? 0
        else if (event.key !== 'Enter' && event.key !== ' ') return
        event.preventDefault()
        event.stopPropagation()
        if (event.key === 'Enter' || event.key === ' ') onNext()
        else if (depth !== undefined) onPlane(broughtTo(plane, depth, box))
      }}
    >
      <path className="reach" d={d} />
      {line.letters.map(({ at, height }, i) => (
        <circle key={i === 0 ? 'first' : 'last'} className="reach" cx={at[0]} cy={at[1] - height / 2} r={height} />
      ))}
      {line.strokes.map(({ curve, width, dashes }, i) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: strokes have no name of their own
          key={i}
          className="ink cutting-plane"
          d={pathOf([curve], as)}
          strokeWidth={width}
          {...(dashes ? { strokeDasharray: dashes.join(' ') } : {})}
        />
      ))}
      {line.heads.map((head, i) => (
        <path key={i === 0 ? 'first' : 'last'} className="ink filled" d={`${pathOf(head, as)}Z`} />
      ))}
      {line.letters.map(({ at, height }, i) => (
        <text
          key={i === 0 ? 'first' : 'last'}
          className="ink"
          x={at[0]}
          y={at[1]}
          textAnchor="middle"
          fontSize={height * EM_OVER_CAPITAL}
        >
          A
        </text>
      ))}
    </g>
  )
}
