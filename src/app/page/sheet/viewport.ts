/** Where the sheet lies in the window: `scale` px for a paper millimetre, and the px of the paper's upper left corner. */
export interface Viewport {
  readonly scale: number
  readonly x: number
  readonly y: number
}

export interface Area {
  readonly width: number
  readonly height: number
}

/** Space in px that something lying over the bench takes from each side. */
export interface Covered {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

const LEAST = 0.3
const MOST = 80

/** The whole paper as large as it will go in what is left free, in its middle. */
export function fitted(paper: Area, window: Area, covered: Covered): Viewport {
  const width = Math.max(60, window.width - covered.left - covered.right)
  const height = Math.max(60, window.height - covered.top - covered.bottom)
  const scale = Math.min(width / paper.width, height / paper.height)
  return {
    scale,
    x: covered.left + (width - paper.width * scale) / 2,
    y: covered.top + (height - paper.height * scale) / 2,
  }
}

/** Larger or smaller by a factor; the paper point under (x, y) stays there. */
export function zoomed(view: Viewport, factor: number, x: number, y: number): Viewport {
  const scale = Math.min(MOST, Math.max(LEAST, view.scale * factor))
  const by = scale / view.scale
  return { scale, x: x - (x - view.x) * by, y: y - (y - view.y) * by }
}

export const moved = (view: Viewport, dx: number, dy: number): Viewport => ({ ...view, x: view.x + dx, y: view.y + dy })

/** Keeps a strip of the paper in the window, so that it cannot be lost. */
export function kept(view: Viewport, paper: Area, window: Area): Viewport {
  const strip = 80
  return {
    scale: view.scale,
    x: Math.min(window.width - strip, Math.max(strip - paper.width * view.scale, view.x)),
    y: Math.min(window.height - strip, Math.max(strip - paper.height * view.scale, view.y)),
  }
}

/** Paper millimetres (y up) of a window point. */
export const paperPoint = (view: Viewport, paper: Area, x: number, y: number): [number, number] => [
  (x - view.x) / view.scale,
  paper.height - (y - view.y) / view.scale,
]

/** Window px of a paper point (y up). */
export const windowPoint = (view: Viewport, paper: Area, [u, v]: readonly [number, number]): [number, number] => [
  view.x + u * view.scale,
  view.y + (paper.height - v) * view.scale,
]
