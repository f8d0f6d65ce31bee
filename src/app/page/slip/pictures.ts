import { featureSketches, type Sketch, sketchPath, stockSketches } from '../starter/sketches.ts'

const SVG = 'http://www.w3.org/2000/svg'

/** The small picture beside the explanation of a statement, where there is one. */
export function pictureFor(keyword: string): SVGSVGElement | undefined {
  const sketches: Readonly<Record<string, Sketch>> = { ...stockSketches, ...featureSketches }
  const sketch = Object.hasOwn(sketches, keyword) ? sketches[keyword] : undefined
  if (!sketch) return undefined
  const { paths, box } = sketchPath(sketch)
  const svg = document.createElementNS(SVG, 'svg')
  svg.setAttribute('viewBox', `${box[0] - 0.3} ${box[1] - 0.3} ${box[2] + 0.6} ${box[3] + 0.6}`)
  svg.setAttribute('class', 'sketch')
  svg.setAttribute('aria-hidden', 'true')
  for (const d of paths) {
    const path = document.createElementNS(SVG, 'path')
    path.setAttribute('d', d)
    if (paths.length > 1) path.setAttribute('class', 'opaque')
    svg.append(path)
  }
  return svg
}
