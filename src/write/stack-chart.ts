import { num } from './path-data.ts'
import { escaped } from './svg.ts'

/** What the chart of a stack shows; lengths in the drafter's unit. */
export interface StackChart {
  readonly title: string
  readonly unit: string
  /** Greatest first; shares of 1. */
  readonly shares: readonly { readonly name: string; readonly worst: number; readonly variance: number }[]
  readonly histogram: { readonly from: number; readonly to: number; readonly counts: readonly number[] }
  readonly worstCase: { readonly min: number; readonly max: number }
  readonly rootSumSquare: { readonly min: number; readonly max: number }
  readonly wanted: { readonly min?: number; readonly max?: number }
  readonly samples: number
}

/** mm of the picture. */
const WIDTH = 190
const MARGIN = 10
const ROW = 7
const NAMES = 52
const HIGH = 55
/** Most sizes that get a bar of their own. */
const MOST = 20

/** Contributions as bars, and the simulated results as a histogram with the limits, in black on white. */
export function stackChart(chart: StackChart): string {
  const shown = chart.shares.slice(0, MOST)
  const top = MARGIN + 16
  const below = top + shown.length * ROW + 16
  const height = below + HIGH + 22
  const body = [
    text(MARGIN, MARGIN + 3, chart.title, 'class="title"'),
    text(MARGIN, top - 3, 'share of the variance (black) and of the worst case (outlined)'),
    ...shown.map((s, i) => bar(s, top + i * ROW)),
    ...histogram(chart, below),
  ]
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${WIDTH}mm" height="${num(height)}mm" viewBox="0 0 ${WIDTH} ${num(height)}">
<title>${escaped(chart.title)}</title>
<style>text{font-family:Barlow,sans-serif;font-size:3.2px}.title{font-size:4.5px;font-weight:600}.middle{text-anchor:middle}.end{text-anchor:end}path,rect{stroke:#000;stroke-width:.25;fill:none}.full{fill:#000}.grey{fill:#bbb;stroke:#777;stroke-width:.1}.limit{stroke-width:.7}.dashed{stroke-dasharray:2 1}</style>
<rect x="0" y="0" width="${WIDTH}" height="${num(height)}" style="fill:#fff;stroke:none"/>
${body.join('\n')}
</svg>
`
}

const text = (x: number, y: number, words: string, more = '') =>
  `<text x="${num(x)}" y="${num(y)}"${more ? ` ${more}` : ''}>${escaped(words)}</text>`

function bar({ name, worst, variance }: StackChart['shares'][number], y: number): string {
  const left = MARGIN + NAMES
  const full = WIDTH - MARGIN - left - 14
  const rect = (share: number, at: number, high: number, kind: string) =>
    `<rect x="${num(left)}" y="${num(at)}" width="${num(Math.max(0, share) * full)}" height="${high}" class="${kind}"/>`
  const label = name.length > 30 ? `${name.slice(0, 29)}…` : name
  return [
    text(left - 2, y + 4, label, 'class="end"'),
    rect(variance, y + 0.8, 2.6, 'full'),
    rect(worst, y + 3.4, 1.8, 'outlined'),
    text(left + Math.max(variance, worst) * full + 1.5, y + 4, `${Math.round(100 * variance)} %`),
  ].join('\n')
}

function histogram(chart: StackChart, top: number): string[] {
  const { counts, from, to } = chart.histogram
  const { worstCase, wanted, unit } = chart
  const ends = [from, to, worstCase.min, worstCase.max, wanted.min ?? from, wanted.max ?? to]
  const [least, most] = [Math.min(...ends), Math.max(...ends)]
  const span = most - least || 1
  const at = (v: number) => MARGIN + ((v - least) / span) * (WIDTH - 2 * MARGIN)
  const peak = Math.max(...counts, 1)
  const foot = top + HIGH
  const step = (to - from) / counts.length
  const columns = counts.map((count, i) => {
    const high = (count / peak) * (HIGH - 8)
    return `<rect x="${num(at(from + i * step))}" y="${num(foot - high)}" width="${num(at(from + (i + 1) * step) - at(from + i * step))}" height="${num(high)}" class="grey"/>`
  })
  const upright = (v: number, words: string, row: number, kind: string) => [
    `<path d="M${num(at(v))} ${num(top + 2)}V${num(foot + 1.5)}" class="${kind}"/>`,
    text(Math.min(WIDTH - MARGIN - 14, Math.max(MARGIN + 14, at(v))), foot + 5 + 4.5 * row, words, 'class="middle"'),
  ]
  const figure = (v: number) => String(Number(v.toPrecision(6)))
  const { rootSumSquare: rss } = chart
  return [
    text(MARGIN, top - 1, `${chart.samples.toLocaleString('en')} simulated results, ${unit}`),
    ...columns,
    `<path d="M${MARGIN} ${num(foot)}H${WIDTH - MARGIN}"/>`,
    ...upright(worstCase.min, `worst ${figure(worstCase.min)}`, 0, 'dashed'),
    ...upright(worstCase.max, `worst ${figure(worstCase.max)}`, 0, 'dashed'),
    ...upright(rss.min, `rss ${figure(rss.min)}`, 1, 'thin'),
    ...upright(rss.max, `rss ${figure(rss.max)}`, 1, 'thin'),
    ...(wanted.min === undefined ? [] : upright(wanted.min, `min ${figure(wanted.min)}`, 2, 'limit')),
    ...(wanted.max === undefined ? [] : upright(wanted.max, `max ${figure(wanted.max)}`, 2, 'limit')),
  ]
}
