import type { GeneralTolerance, Header } from '../../brief/brief.ts'
import { bad, good, type Outcome } from '../../brief/outcome.ts'
import type { Num, Size, Unit } from '../../brief/size.ts'
import type { Span } from '../../brief/span.ts'
import { angularDeviation, cornerDeviation, linearDeviation, readIso2768 } from './iso2768.ts'
import { callsIso22081, readIso22081 } from './iso22081.ts'

/** The classes that state a deviation themselves. */
type Classed = Extract<GeneralTolerance, { plusMinus: Num }>

/** A general tolerance as it falls on one size. */
export interface GeneralLimits {
  /** ± in mm, or in degrees for an angle. */
  readonly plusMinus: number
  /** The words of the title block that govern: `.XX ±.01`, `ISO 2768-m`. */
  readonly by: string
  readonly span: Span
}

/** What kind of size asks: lengths and diameters, corners (external radii and chamfer heights), or angles. */
export type SizeKind = 'length' | 'corner'

/**
 * General tolerance of a length by the title block: by the number of decimals typed, or as a fraction or whole number
 * where inch practice has classes for them (whole inches go with the fractions), else by ISO 2768-1. A size in the other
 * unit than the sheet's is not covered by classes of decimals, since .XX of an inch and ,XX of a millimetre are not the
 * same accuracy.
 */
export function generalTolerance(header: Header, size: Size, kind: SizeKind = 'length'): Outcome<GeneralLimits> {
  const decimals = header.general.find((each): each is Classed => covers(each, size)) ?? fractionsForWhole(header, size)
  if (decimals && size.unit === header.units) {
    return good({
      plusMinus: millimetres(decimals.plusMinus.value, header.units),
      by: `${className(decimals)} ±${decimals.plusMinus.text}`,
      span: decimals.span,
    })
  }
  const standard = standardOf(header)
  if (standard && callsIso22081(standard.text)) return written(standard, 'linear', size)
  if (standard) {
    const read = readIso2768(standard.text)
    if (!read.ok) return bad({ ...read.problem, span: standard.span })
    const of = read.value.linear
    const deviation = of && (kind === 'corner' ? cornerDeviation(of, size.mm) : linearDeviation(of, size.mm))
    if (deviation !== undefined) return good({ plusMinus: deviation, by: standard.text, span: standard.span })
    return bad({
      text: `${standard.text} gives no tolerance for ${size.text}.`,
      expected: 'a tolerance written at the size',
      span: size.span,
    })
  }
  return bad({
    text: `No general tolerance covers ${size.text}.`,
    expected: size.unit === header.units ? `general ${wantedClass(size)} ±…` : 'a tolerance written at the size',
    span: size.span,
  })
}

/** General tolerance of an angle in degrees; `shorterLegMm` is needed for ISO 2768-1 only. */
export function generalAngle(header: Header, angle: Num, shorterLegMm: number): Outcome<GeneralLimits> {
  const given = header.general.find((each): each is Classed => each.kind === 'angles')
  if (given) return good({ plusMinus: given.plusMinus.value, by: `angles ±${given.plusMinus.text}°`, span: given.span })
  const standard = standardOf(header)
  if (standard && callsIso22081(standard.text)) return written(standard, 'angular', angle)
  const read = standard && readIso2768(standard.text)
  if (standard && read && !read.ok) return bad({ ...read.problem, span: standard.span })
  const deviation = read?.ok && read.value.linear ? angularDeviation(read.value.linear, shorterLegMm) : undefined
  if (standard && deviation !== undefined) return good({ plusMinus: deviation, by: standard.text, span: standard.span })
  return bad({
    text: `No general tolerance covers the angle ${angle.text.includes(':') ? angle.text : `${angle.text}°`}.`,
    expected: 'general angles ±…',
    span: angle.span,
  })
}

/** General tolerances written out after ISO 22081. */
function written(
  standard: { readonly text: string; readonly span: Span },
  which: 'linear' | 'angular',
  size: Num,
): Outcome<GeneralLimits> {
  const read = readIso22081(standard.text)
  if (!read.ok) return bad({ ...read.problem, span: standard.span })
  const plusMinus = read.value[which]
  if (plusMinus !== undefined) return good({ plusMinus, by: standard.text, span: standard.span })
  return bad({
    text: `${standard.text} has no ± for ${which} sizes.`,
    expected: 'a tolerance written at the size',
    span: size.span,
  })
}

/** Whole inches among fractions are fractions: 4 beside 8-1/2 (common practice, no source). */
function fractionsForWhole(header: Header, size: Size): Classed | undefined {
  if (header.units !== 'inch' || size.form !== 'whole') return undefined
  return header.general.find((each): each is Classed => each.kind === 'fractions')
}

function covers(given: GeneralTolerance, size: Num): boolean {
  if (given.kind === 'decimals') return size.form === 'decimal' && size.decimals === given.decimals
  if (given.kind === 'fractions') return size.form === 'fraction'
  return given.kind === 'whole' && size.form === 'whole'
}

function className(given: GeneralTolerance): string {
  return given.kind === 'decimals' ? `.${'X'.repeat(given.decimals)}` : given.kind
}

function wantedClass(size: Num): string {
  if (size.form === 'decimal') return `.${'X'.repeat(size.decimals)}`
  return size.form === 'fraction' ? 'fractions' : 'whole'
}

function standardOf(header: Header): Extract<GeneralTolerance, { kind: 'standard' }> | undefined {
  return header.general.find((each) => each.kind === 'standard')
}

function millimetres(value: number, unit: Unit): number {
  return unit === 'inch' ? value * 25.4 : value
}
