import { type RefObject, useState } from 'react'
import type { Unit } from '../../../brief/size.ts'
import type { Vec3 } from '../../../geometry/vec.ts'
import { type SketchSize, sketchSizes } from './sketch-sizes.ts'
import { isometric, type StockName, sketchPath, stockSketches } from './sketches.ts'

interface ChosenSketchProps {
  readonly stock: StockName
  readonly unit: Unit
  readonly given: (name: string, usual: string) => string
  readonly first: RefObject<HTMLInputElement | null>
  /** The size that was refused, and why. */
  readonly refused: { readonly name: string; readonly words: string } | undefined
  readonly onSize: (name: string, value: string) => void
}

/** Space round the outermost points for the figures, in units of the sketch. */
const PAD = { across: 1.9, up: 1.1 }

/** The sketch drawn large, with its sizes to be written where they stand. */
export function ChosenSketch({ stock, unit, given, first, refused, onSize }: ChosenSketchProps) {
  const [meant, setMeant] = useState<string>()
  const { paths } = sketchPath(stockSketches[stock])
  const sizes = sketchSizes[stock]
  const points = [...stockSketches[stock].strokes.flat(), ...sizes.flatMap(pointsOf)].map(isometric)
  const [us, vs] = [points.map((p) => p[0]), points.map((p) => p[1])]
  const [x, y] = [Math.min(...us) - PAD.across, Math.min(...vs) - PAD.up]
  const [w, h] = [Math.max(...us) + PAD.across - x, Math.max(...vs) + PAD.up - y]
  return (
    <div className="large-sketch" style={{ aspectRatio: `${w} / ${h}`, width: `min(100%, ${(62 * w) / h}vh)` }}>
      <svg className="sketch" viewBox={`${x} ${y} ${w} ${h}`} aria-hidden="true">
        <defs>
          <marker
            id="sketch-arrow"
            viewBox="0 0 6 2"
            refX="6"
            refY="1"
            markerWidth="9"
            markerHeight="3"
            orient="auto-start-reverse"
          >
            <path d="M0 0L6 1L0 2Z" />
          </marker>
        </defs>
        {paths.map((d) => (
          <path key={d} d={d} className={paths.length > 1 ? 'opaque' : undefined} />
        ))}
        {sizes.map((s) => (
          <g key={s.name} className={`sizing${s.name === meant ? ' meant' : ''}`}>
            {linesOf(s).map(([d, arrows]) => (
              <path
                key={d}
                d={d}
                markerEnd={arrows > 0 ? 'url(#sketch-arrow)' : undefined}
                markerStart={arrows > 1 ? 'url(#sketch-arrow)' : undefined}
              />
            ))}
          </g>
        ))}
      </svg>
      {sizes.map((s, i) => {
        const [u, v] = isometric(s.at)
        return (
          <label key={s.name} style={{ left: `${((u - x) / w) * 100}%`, top: `${((v - y) / h) * 100}%` }}>
            {s.name}
            <input
              ref={i === 0 ? first : undefined}
              name={s.name}
              aria-label={s.name}
              aria-invalid={refused?.name === s.name}
              aria-describedby={refused?.name === s.name ? 'sketch-refusal' : undefined}
              value={given(s.name, s[unit])}
              size={6}
              autoComplete="off"
              onFocus={(event) => {
                event.target.select()
                setMeant(s.name)
              }}
              onBlur={() => setMeant(undefined)}
              onChange={(event) => onSize(s.name, event.target.value)}
            />
            {refused?.name === s.name ? (
              <span id="sketch-refusal" className="refusal" role="alert">
                {refused.words}
              </span>
            ) : null}
          </label>
        )
      })}
    </div>
  )
}

const pointsOf = ({ line, at }: SketchSize): readonly Vec3[] => ('to' in line ? [at] : [...line.ends, at])

/** Path data of a size's lines, each with how many of its ends have arrows. */
function linesOf({ line, at }: SketchSize): readonly (readonly [string, number])[] {
  const path = (a: Vec3, b: Vec3, beyond = 0) => {
    const [[u, v], [s, t]] = [isometric(a), isometric(b)]
    return `M${u} ${v}L${s + (s - u) * beyond} ${t + (t - v) * beyond}`
  }
  if ('to' in line) return [[path(at, line.to), 1]]
  const [a, b] = line.ends
  const middle: Vec3 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2]
  return [
    ...(at.every((c, i) => c === middle[i]) ? [] : [[path(at, middle), 0] as const]),
    [path(line.of[0], a, 0.12), 0],
    [path(line.of[1], b, 0.12), 0],
    [path(a, b), 2],
  ]
}
