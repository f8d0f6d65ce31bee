import { type LetteringStyle, textWidth } from './lettering.ts'

/** Text set into a box: its lines, the capital height, and how far the letters are narrowed. */
export interface FittedText {
  readonly lines: readonly string[]
  readonly height: number
  /** 1 as cut, less where narrowed. */
  readonly stretch: number
  /** False where even the narrowest setting could not hold the words: the last line then ends in `…`. */
  readonly whole: boolean
}

export interface FitBox {
  /** mm */
  readonly width: number
  /** Room for lines, mm. */
  readonly depth: number
  /** Wished capital height and the least that may be used, mm. */
  readonly height: number
  readonly least: number
  /** Base line to base line in capital heights. */
  readonly lineRatio: number
}

/** Letters may be narrowed to this before words are cut. */
const NARROWEST = 0.75

/**
 * Sets text into a box: on as few lines as hold it, then a little smaller, then narrower, then smaller still; a word
 * longer than the line is broken at last. Nothing ever stands outside the box.
 */
export function fitText(text: string, box: FitBox, style: LetteringStyle = {}): FittedText {
  const words = text.replace(/\s+/g, ' ').trim()
  const heights = [box.height]
  for (let h = box.height * 0.9; h > box.least * 1.02; h *= 0.9) heights.push(h)
  if (box.least < box.height) heights.push(box.least)
  const roomFor = (h: number) => Math.max(1, Math.floor((box.depth - h) / (h * box.lineRatio) + 1 + 1e-9))
  // One line, if need be a little narrowed, reads better than two.
  for (const stretch of [1, 0.9, 0.82]) {
    if (textWidth(words, box.height, style) * stretch <= box.width + 1e-9 && box.height <= box.depth + 1e-9) {
      return { lines: [words], height: box.height, stretch, whole: true }
    }
  }
  const roomy = heights.filter((h) => h >= box.height * 0.82)
  const small = heights.filter((h) => h < box.height * 0.82)
  for (const sizes of [roomy, small]) {
    for (const stretch of [1, 0.9, 0.82, NARROWEST]) {
      for (const h of sizes) {
        const lines = wrap(words, box.width / stretch, h, style, false)
        if (lines && lines.length <= roomFor(h)) return { lines, height: h, stretch, whole: true }
      }
    }
  }
  const h = box.least
  const lines = wrap(words, box.width / NARROWEST, h, style, true)!
  const room = roomFor(h)
  if (lines.length <= room) return { lines, height: h, stretch: NARROWEST, whole: true }
  const kept = lines.slice(0, room)
  let last = `${kept[room - 1]}…`
  while (last.length > 1 && textWidth(last, h, style) > box.width / NARROWEST)
    last = `${[...last].slice(0, -2).join('')}…`
  return { lines: [...kept.slice(0, -1), last], height: h, stretch: NARROWEST, whole: false }
}

const UNITS = /^(mm|cm|m|µm|in|inch|inches|µin|ft|°C|°F|°|%|N|kN|Nm|N·m|lbf|MPa|kg|g|lb|oz|HRC|HB|HBW|HV)[.,;:)]*$/i

/** A number is never parted from the unit behind it (ISO 80000-1, 7.1.4, from memory: a space stands between them, no more). */
function together(words: readonly string[], fits: (text: string) => boolean): string[] {
  const out: string[] = []
  for (const word of words) {
    const last = out.at(-1)
    const joined = `${last} ${word}`
    if (last !== undefined && /\d$/.test(last) && UNITS.test(word) && fits(joined)) out[out.length - 1] = joined
    else out.push(word)
  }
  return out
}

/** Lines no wider than `width`; undefined when a word alone is wider and must not be broken. */
export function wrap(
  text: string,
  width: number,
  height: number,
  style: LetteringStyle,
  breakWords: boolean,
): string[] | undefined {
  const fits = (t: string) => textWidth(t, height, style) <= width + 1e-9
  const lines: string[] = []
  let line = ''
  for (const word of together(text.split(' '), fits)) {
    const longer = line ? `${line} ${word}` : word
    if (fits(longer)) {
      line = longer
      continue
    }
    if (line) lines.push(line)
    line = word
    if (fits(word)) continue
    if (!breakWords) return undefined
    line = ''
    for (const c of word) {
      if (line && !fits(line + c)) {
        lines.push(line)
        line = c
      } else line += c
    }
  }
  if (line || lines.length === 0) lines.push(line)
  return lines
}
