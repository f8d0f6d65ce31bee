import { memo } from 'react'

/** Px between two corners of a torn edge, and how far they stray. */
const STEP = 7
const STRAY = 1.7

/** A piece of the sheet's paper, trimmed along its top and right side and torn along the others. */
export const TornPaper = memo(function TornPaper({
  width,
  height,
}: {
  readonly width: number
  readonly height: number
}) {
  return (
    <svg className="torn-paper" width={width} height={height} aria-hidden="true">
      <path d={outline(width, height)} />
    </svg>
  )
})

function outline(width: number, height: number): string {
  const points = [`M${stray(0)} ${0.8}`, `L${width} 0`, `L${width} ${height - 2 + stray(7)}`]
  for (let x = width - STEP, i = 1; x > STEP; x -= STEP, i++) points.push(`L${x} ${height - 2 + stray(i)}`)
  points.push(`L${1.5} ${height - 2.5}`)
  for (let y = height - STEP, i = 500; y > STEP; y -= STEP, i++) points.push(`L${2 + stray(i)} ${y}`)
  return `${points.join('')}Z`
}

/** The same tear every time. */
function stray(i: number): number {
  const wave = Math.sin(i * 12.9898) * 43_758.5453
  return (wave - Math.floor(wave) - 0.5) * 2 * STRAY
}
