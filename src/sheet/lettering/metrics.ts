import { boldData, regularData } from './metrics-data.ts'
import { drawnSymbols } from './symbols.ts'

/** Widths of the lettering face in capital heights. */
export interface Face {
  /** Advance of a character in capital heights; undefined when the face lacks it. */
  advance(char: string): number | undefined
  /** Kerning between two neighbours, in capital heights. */
  kern(left: string, right: string): number
  /** Font file that holds the character: the Latin file, or its extension for Central European letters. */
  file(char: string): 'latin' | 'ext' | undefined
}

interface FaceData {
  readonly capHeight: number
  readonly latin: Readonly<Record<string, string>>
  readonly ext: Readonly<Record<string, string>>
  readonly kerns: Readonly<Record<string, string>>
}

/** Font size (em) over capital height. */
export const EM_OVER_CAPITAL = 1000 / regularData.capHeight

function face(data: FaceData): Face {
  const widths = new Map<string, number>()
  const ext = new Set<string>()
  for (const [w, chars] of Object.entries(data.latin)) for (const c of chars) widths.set(c, Number(w) / data.capHeight)
  for (const [w, chars] of Object.entries(data.ext)) {
    for (const c of chars) {
      widths.set(c, Number(w) / data.capHeight)
      ext.add(c)
    }
  }
  const kerns = new Map<string, number>()
  for (const [k, pairs] of Object.entries(data.kerns)) {
    for (let i = 0; i < pairs.length; i += 2) kerns.set(pairs.slice(i, i + 2), Number(k) / data.capHeight)
  }
  return {
    advance: (c) => widths.get(c),
    kern: (l, r) => kerns.get(l + r) ?? 0,
    file: (c) => (ext.has(c) ? 'ext' : widths.has(c) ? 'latin' : undefined),
  }
}

export const regular: Face = face(regularData)
export const bold: Face = face(boldData)

/** A letter the face lacks is drawn by the reader's own fallback; this is the width kept for it. */
const UNKNOWN_ADVANCE = 1.1

/** Width of plain letters (no drawn signs) in capital heights. */
export function lettersWidth(text: string, weight: Face): number {
  let width = 0
  let last = ''
  for (const c of text) {
    width += (weight.advance(c) ?? UNKNOWN_ADVANCE) + weight.kern(last, c)
    last = c
  }
  return width
}

/** Characters that neither the face nor the drawn signs have. */
export function missingSigns(text: string): string[] {
  return [...new Set(text)].filter((c) => regular.advance(c) === undefined && !drawnSymbols.has(c) && c !== '\n')
}
