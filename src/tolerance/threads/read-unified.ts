import { bad, good, type Outcome } from '../../brief/outcome.ts'
import type { Span } from '../../brief/span.ts'
import { nearestNumber, nearestWord } from '../nearest.ts'
import type { UnifiedClass, UnifiedThread } from './thread.ts'
import {
  constantPitches,
  sizeValue,
  type UnifiedSeries,
  type UnifiedSize,
  unifiedSize,
  unifiedSizes,
} from './unified-series.ts'

const seriesNames: readonly UnifiedSeries[] = ['UNC', 'UNF', 'UNEF', 'UN', 'UNS']
const classNames: readonly UnifiedClass[] = ['1A', '2A', '3A', '1B', '2B', '3B']
const tabled = ['UNC', 'UNF', 'UNEF'] as const

/** Reads `size-tpi series-class LH`; series, class and hand may be left out. */
export function readUnified(text: string): Outcome<UnifiedThread> {
  const parts =
    /^\s*(#\d{1,2}|\d+[-\s]\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+)\s*(?:-\s*(\d+(?:\.\d+)?|\d+[-\s]1\/2))?\s*-?\s*([A-Za-z]+)?\s*(?:-?\s*(\d\s*[A-Za-z]))?\s*(?:-?\s*(LH|RH))?\s*$/i.exec(
      text,
    )
  if (!parts) {
    return bad({
      text: `"${text.trim()}" does not read as a unified thread.`,
      expected: 'size-threads per inch series-class, such as 1/4-20 UNC-2B',
    })
  }
  const [, sizeText, tpiText, word, classText, hand] = parts as unknown as [string, string, ...(string | undefined)[]]
  const place = (part: string): Span => ({ from: text.indexOf(part), to: text.indexOf(part) + part.length })
  const bare = word?.toUpperCase()
  const leftHand = hand?.toUpperCase() === 'LH' || bare === 'LH'
  const wantedSeries = bare === 'LH' || bare === 'RH' ? undefined : bare?.replace(/^UNR/, 'UN')
  if (wantedSeries !== undefined && !seriesNames.includes(wantedSeries as UnifiedSeries)) {
    const near = nearestWord(wantedSeries, seriesNames)!
    return bad({
      text: `ASME B1.1 has no series "${word}".`,
      expected: 'UNC, UNF, UNEF, UN or UNS',
      instead: near,
      span: place(word!),
    })
  }
  const series = wantedSeries as UnifiedSeries | undefined
  const wantedClass = classText?.replace(/\s/g, '').toUpperCase()
  if (wantedClass !== undefined && !classNames.includes(wantedClass as UnifiedClass)) {
    return bad({
      text: `ASME B1.1 has no class "${classText}".`,
      expected: '1A, 2A, 3A for screws, 1B, 2B, 3B for holes',
      instead: nearestWord(wantedClass, classNames)!,
      span: place(classText!),
    })
  }
  const tpi = tpiText === undefined ? undefined : (sizeValue(tpiText) ?? Number.NaN)
  const size = chooseSize(sizeText, tpi, series)
  if (!size) {
    const near = unifiedSizes.reduce((best, each) => {
      const value = sizeValue(sizeText) ?? 0
      return Math.abs(each.diameter - value) < Math.abs(best.diameter - value) ? each : best
    })
    return bad({
      text: `There is no unified size ${sizeText}.`,
      expected: `${near.name.replace('#', '')}, the nearest`,
      instead: near.name,
      span: place(sizeText),
    })
  }
  const settled = settle(size, tpi, series, text)
  if (!settled.ok) return settled
  return good({
    kind: 'unified',
    size: size.name,
    diameter: size.diameter,
    threadsPerInch: settled.value.tpi,
    series: settled.value.series,
    seriesTyped: series !== undefined,
    ...(wantedClass ? { class: wantedClass as UnifiedClass } : {}),
    leftHand,
  })
}

/** A bare whole number is a screw number when a series of that number has the pitch (10-24), else inches (1-8). */
function chooseSize(text: string, tpi: number | undefined, series: UnifiedSeries | undefined): UnifiedSize | undefined {
  if (/^\d{1,2}$/.test(text)) {
    const numbered = unifiedSizes.find((size) => size.name === `#${text}`)
    const inches = unifiedSizes.find((size) => size.name === text)
    if (!numbered || !inches) return numbered ?? inches
    if (tpi !== undefined) return tpi >= 24 ? numbered : inches
    return series && numbered[series as 'UNC'] ? numbered : inches
  }
  const value = sizeValue(text.replace(/\s+/g, '-'))
  return value === undefined ? undefined : unifiedSize(value)
}

/** Pitch and series from what was written; the table fills in what is missing. */
function settle(
  size: UnifiedSize,
  tpi: number | undefined,
  series: UnifiedSeries | undefined,
  text: string,
): Outcome<{ tpi: number; series: UnifiedSeries }> {
  const inTable = tabled.filter((each) => size[each] !== undefined)
  const shown = size.name.replace('#', '')
  const offers = inTable.map((each) => `${shown}-${size[each]} ${each}`).join(', ')
  if (tpi === undefined) {
    const fixed = series === undefined ? undefined : size[series as 'UNC']
    if (series && fixed !== undefined) return good({ tpi: fixed, series })
    return bad({ text: `"${text.trim()}" leaves the threads per inch open.`, expected: offers || `${shown}-12 UN` })
  }
  if (series === undefined) {
    const found = inTable.find((each) => size[each] === tpi)
    if (found) return good({ tpi, series: found })
    if (constantPitches.includes(tpi) && size.diameter > 0.25) return good({ tpi, series: 'UN' })
    return bad({
      text: `${shown}-${tpi} is in no standard series.`,
      expected: `${offers}; or UNS written after it`,
      ...nearTpi(size, tpi),
    })
  }
  if (series === 'UNS')
    return tpi > 0 ? good({ tpi, series }) : bad({ text: 'The threads per inch must be above zero.' })
  if (series === 'UN') {
    if (constantPitches.includes(tpi)) return good({ tpi, series })
    return bad({
      text: `UN has no ${tpi} threads per inch.`,
      expected: `${constantPitches.join(', ')} threads per inch`,
      instead: `${shown}-${nearestNumber(tpi, constantPitches)} UN`,
    })
  }
  if (size[series] === tpi) return good({ tpi, series })
  const right = size[series]
  const other = inTable.find((each) => size[each] === tpi)
  const instead = other ? `${shown}-${tpi} ${other}` : right !== undefined ? `${shown}-${right} ${series}` : undefined
  return bad({
    text: `${shown}-${tpi} is not ${series}.`,
    expected: offers || 'UN or UNS',
    ...(instead ? { instead } : {}),
  })
}

function nearTpi(size: UnifiedSize, tpi: number): { instead?: string } {
  const inTable = tabled.filter((each) => size[each] !== undefined)
  const near = nearestNumber(
    tpi,
    inTable.map((each) => size[each]!),
  )
  const series = inTable.find((each) => size[each] === near)
  return series ? { instead: `${size.name.replace('#', '')}-${near} ${series}` } : {}
}
