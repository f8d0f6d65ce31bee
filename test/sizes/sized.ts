import { readBrief } from '../../src/brief/read.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import type { Part } from '../../src/part/part.ts'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import { chooseSizes } from '../../src/sizes/choose-sizes.ts'
import type { Dimension, SizeSet } from '../../src/sizes/dimension.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import type { ViewSet } from '../../src/views/view.ts'

const kernel = await openKernel()

export interface Sized {
  readonly part: Part
  readonly views: ViewSet
  readonly sizes: SizeSet
  /** Callouts as plain text, in order. */
  readonly texts: readonly string[]
  readonly find: (text: string) => Dimension
}

const ASME = `part      Trial piece
units     inch
practice  ASME
material  carbon steel
general   fractions ±1/64   .XX ±.01   .XXX ±.005   angles ±1/2°
`
const ISO = `part      Trial piece
units     mm
practice  ISO, first angle
material  S235JR
general   ISO 2768-mK
`

export const asme = (lines: string): Sized => sized(ASME + lines)
export const iso = (lines: string): Sized => sized(ISO + lines)

/** From brief to sizes, as the program does it. */
export function sized(text: string): Sized {
  const part = buildPart(readBrief(text), kernel)
  // A brief that leaves no solid is laid out without views.
  const views = part.body.faces.length > 0 ? drawViews(part, kernel) : { views: [], reasons: [] }
  const sizes = chooseSizes(part, views)
  const texts = sizes.dimensions.map((d) => plainText(d.callout))
  return {
    part,
    views,
    sizes,
    texts,
    find: (wanted) => {
      const found = sizes.dimensions.find((d) => plainText(d.callout) === wanted)
      if (!found) throw new Error(`no size reads ${wanted}; there are ${texts.join(' | ')}`)
      return found
    },
  }
}

/** Every mark on the way, from reading to sizing. */
export const allMarks = (s: Sized) => [...s.part.brief.marks, ...s.part.marks, ...s.sizes.marks]
