/**
 * The figures of line-work, lettering and dimensioning by practice. All lengths are millimetres on paper.
 *
 * Sources named beside each figure. "From memory" means the clause was recalled, not read again;
 * "common practice" means teaching custom with no standard behind the number.
 */

/** `ASME` or `ISO`; the brief's own type has the same two members. */
export type PracticeName = 'ASME' | 'ISO'

/** A repeating dash figure. Patterns begin and end with the long element; `shorts` short dashes stand between two long ones. */
export interface DashFigure {
  /** The long element (for hidden lines: the dash). */
  readonly long: number
  /** How far the long element may shrink or grow when the pattern is fitted to a line. */
  readonly longRange: readonly [least: number, most: number]
  readonly gap: number
  readonly short: number
  /** 0 hidden, 1 centre and cutting plane, 2 phantom. */
  readonly shorts: 0 | 1 | 2
}

export interface ArrowheadFigure {
  readonly length: number
  /** Full width across the barbs. */
  readonly width: number
  readonly filled: true
}

export interface LetteringFigures {
  /** Sizes, notes, tables. */
  readonly dimension: number
  readonly note: number
  /** `SECTION A-A` under a view. */
  readonly viewLabel: number
  /** Letters at the ends of a cutting-plane line. */
  readonly sectionLetter: number
  /** Title and drawing number in the title block. */
  readonly title: number
  /** Values of the other title-block fields. */
  readonly value: number
  /** Names of title-block fields. */
  readonly heading: number
  /** Zone letters and numerals in the border. */
  readonly zone: number
  /** Stroke width over capital height. */
  readonly strokeRatio: number
  /** Distance from base line to base line over capital height. */
  readonly lineRatio: number
}

export interface PracticeFigures {
  readonly practice: PracticeName
  readonly widths: {
    /** Visible outline, ends of cutting-plane lines, border frame. */
    readonly thick: number
    /** Everything else. */
    readonly thin: number
  }
  /** From line to line (between their middles) of one small shape, at least. */
  readonly leastSpace: number
  readonly dashes: {
    readonly hidden: DashFigure
    readonly centre: DashFigure
    readonly phantom: DashFigure
    readonly cuttingPlane: DashFigure
  }
  /** Centre lines meet or cross on short dashes (ASME) or long dashes (ISO). */
  readonly centreCross: 'short' | 'long'
  /** Centre lines of circles smaller than this are drawn unbroken. */
  readonly centreSolidBelow: number
  /** How far centre lines pass the outline. */
  readonly centreOverrun: number
  readonly arrowhead: ArrowheadFigure
  /** Diameter of the origin circle of running sizes; absent where the practice has none. */
  readonly originCircle?: number
  readonly lettering: LetteringFigures
  readonly extension: {
    /** Between the outline and the start of the extension line. */
    readonly gap: number
    /** Past the last dimension line. */
    readonly overshoot: number
  }
  readonly rows: {
    /** From the outline to the first dimension line, at least. */
    readonly first: number
    /** Between parallel dimension lines, at least. */
    readonly next: number
  }
  readonly text: {
    /** In a broken line and level (ASME), or above the unbroken line and along it (ISO). */
    readonly place: 'in broken line' | 'above line'
    /** Clear space beside text in a broken line, or between line and text above it. */
    readonly gap: number
    /** `level`: all text reads from the bottom; `aligned`: from the bottom or from the right. */
    readonly reads: 'level' | 'aligned'
  }
  readonly leader: {
    /** Level shoulder before the text. */
    readonly shoulder: number
    /** Clear space between shoulder and text. */
    readonly gap: number
  }
  readonly hatching: {
    /** Degrees. */
    readonly angle: number
    /** Paper spacing for small and for large areas. */
    readonly spacing: readonly [small: number, large: number]
  }
  readonly decimals: {
    readonly sign: '.' | ','
    /** ASME inch drops the zero before the sign; metric keeps it. */
    readonly leadingZero: { readonly inch: boolean; readonly mm: boolean }
    /** ASME inch: size and tolerance carry the same number of decimals. */
    readonly trailingZeros: { readonly inch: boolean; readonly mm: boolean }
  }
  readonly words: {
    readonly times: string
    readonly through: string
    readonly section: string
    readonly scale: string
    readonly doNotScale: string
  }
}

/** ASME practice. `widths` 0.6 and 0.3: ASME Y14.2-2014 §2.1 (thick 0.6 min, thin 0.3 min, ratio 2:1). */
const asme: PracticeFigures = {
  practice: 'ASME',
  widths: { thick: 0.6, thin: 0.3 },
  // Y14.2 asks for lines that stay apart when reduced and gives no figure (from memory); ISO's is taken.
  leastSpace: 0.7,
  dashes: {
    // Y14.2 shows the figures and leaves the lengths to the drawing ("may vary with the size of the drawing").
    // Lengths: ANSI Y14.2M-1979 Fig. 1 custom, from memory: dash 1/8 in, gap 1/32 in.
    hidden: { long: 3, longRange: [2, 4.5], gap: 0.8, short: 0, shorts: 0 },
    // Long 3/4 to 1-1/2 in, short 1/8 in, gap 1/16 in: ANSI Y14.2M-1979, from memory. Shorter long dashes on
    // short lines are common practice, no source.
    centre: { long: 19, longRange: [6, 38], gap: 1.5, short: 3, shorts: 1 },
    phantom: { long: 19, longRange: [8, 38], gap: 1.5, short: 3, shorts: 2 },
    // Y14.2-2014 §2.10: long dash and pairs of short dashes, thick.
    cuttingPlane: { long: 19, longRange: [8, 38], gap: 1.5, short: 6, shorts: 2 },
  },
  // Y14.2-2014 §2.7: short dashes intersect at centres.
  centreCross: 'short',
  // Common practice, no source: no long dash fits across such a circle.
  centreSolidBelow: 6,
  // Y14.2-2014 §2.7: "extend uniformly and distinctly a short distance"; 1/8 in by common practice.
  centreOverrun: 3,
  // Y14.2-2014 §3: length to width 3:1; length equal to the lettering height by common practice.
  arrowhead: { length: 3, width: 1, filled: true },
  lettering: {
    // Y14.2-2014 Table 1, minimum heights, from memory: sizes and notes 3 mm (.12 in); section and view letters
    // 6 mm (.24 in); block headings 2.5 mm (.10 in); zones 6 mm (.24 in); title and number 3 mm to C size, 6 mm above.
    // The words under a view are no taller than the title of the sheet (common practice, no source).
    dimension: 3,
    note: 3,
    viewLabel: 5,
    sectionLetter: 6,
    title: 5,
    value: 3,
    heading: 2.5,
    zone: 6,
    // Y14.2-2014 §4.1: single stroke, of about the thin line's weight at 3 mm.
    strokeRatio: 0.1,
    // Y14.2-2014 §4.5: space between lines from half to all of the lettering height.
    lineRatio: 1.6,
  },
  // Y14.5-2018 §4.5.2 (Fig. 4-5): visible gap from the outline, about 1.5 mm by common practice; 3 mm past the line.
  extension: { gap: 1.5, overshoot: 3 },
  // Y14.5-2018 Fig. 4-6: first line 10 mm, following lines 6 mm, minimum.
  rows: { first: 10, next: 6 },
  // Y14.5-2018 §4.5.1.1: line broken for the numerals; §4.6.5: reads from the bottom. Gap: common practice.
  text: { place: 'in broken line', gap: 1.5, reads: 'level' },
  // Y14.2-2014 §2.9.3: short level portion to mid-height of the first or last letter. Lengths: common practice.
  leader: { shoulder: 5, gap: 1 },
  // Y14.2-2014 §2.6: 45°, general purpose; spacing not less than about 2 mm reads well (common practice 1/16 to 1/8 in).
  hatching: { angle: 45, spacing: [2, 4] },
  // Y14.5-2018 §4.3.1, §4.3.2: inch without leading zero and with even decimals; millimetre with leading zero.
  decimals: { sign: '.', leadingZero: { inch: false, mm: true }, trailingZeros: { inch: true, mm: false } },
  words: { times: 'X', through: 'THRU', section: 'SECTION', scale: 'SCALE', doNotScale: 'DO NOT SCALE DRAWING' },
}

/**
 * ISO practice in a line group: `d` narrow and 2d wide (ISO 128-2:2022 §5: ratio 2:1; preferred groups 0.5 and 0.7,
 * ISO 128-24:2014 §4). Lettering height goes with the group: 3.5 mm with 0.5, 5 mm with 0.7 (ISO 128-24 Table 2,
 * lettering line 0.35 and 0.5; ISO 3098-1 type B: line is a tenth of the height).
 */
function iso(d: number): PracticeFigures {
  const h = d === 0.25 ? 3.5 : 5
  // ISO 128-2:2022 Table 3 (ISO 128-20:1996 Table 2): dash 12d, gap 3d, long dash 24d, short dash 6d, dot ≤ 0.5d.
  const dash = 12 * d
  const gap = 3 * d
  const long = 24 * d
  const dot = 0.5 * d
  return {
    practice: 'ISO',
    widths: { thick: 2 * d, thin: d },
    // ISO 128-2:2022 (ISO 128-20:1996 §4.4): space between parallel lines not less than 0.7 mm; from memory.
    leastSpace: 0.7,
    dashes: {
      // ISO 128-21 §5.2 fits the dash itself to the line, the gap staying 3d.
      hidden: { long: dash, longRange: [8 * d, 18 * d], gap, short: 0, shorts: 0 },
      centre: { long, longRange: [12 * d, 36 * d], gap, short: dot, shorts: 1 },
      phantom: { long, longRange: [12 * d, 36 * d], gap, short: dot, shorts: 2 },
      cuttingPlane: { long, longRange: [12 * d, 36 * d], gap, short: dot, shorts: 1 },
    },
    // ISO 128-2:2022 §6.3: lines of 04.1 cross on long dashes.
    centreCross: 'long',
    // Common practice (a 24d line shows no more than one long dash).
    centreSolidBelow: 12,
    // Common practice, 2 to 3 mm; no figure in ISO 128.
    centreOverrun: 3,
    // ISO 129-1:2018 §5.5: closed, filled, 30° included (from memory); length 10d by common practice.
    arrowhead: { length: 10 * d, width: 2 * 10 * d * Math.tan(Math.PI / 12), filled: true },
    // ISO 129-1:2018 §5.6: open circle of about 3 mm as the origin.
    originCircle: 3,
    lettering: {
      // Heights from the ISO 3098-1 series 1.8 2.5 3.5 5 7 10 14 20.
      dimension: h,
      note: h,
      viewLabel: h === 3.5 ? 5 : 7,
      sectionLetter: h === 3.5 ? 5 : 7,
      title: 5,
      value: 3.5,
      heading: 2.5,
      // ISO 5457:1999 §4.4: 3.5 mm.
      zone: 3.5,
      // ISO 3098-1 type B.
      strokeRatio: 0.1,
      // ISO 3098-1:2015 type B: base lines at least 13/10 h apart without, 15/10 h with low diacritics.
      lineRatio: 1.6,
    },
    // ISO 129-1:2018 §5.4: past the dimension line by about 8d; drawn from the outline (a gap is allowed, not usual).
    extension: { gap: 0, overshoot: 8 * d },
    // No figure in ISO 129-1; 10 and 7 mm are the custom of the trade (DIN 406-11, from memory).
    rows: { first: 10, next: h === 3.5 ? 8 : 10 },
    // ISO 129-1:2018 §5.7: above and parallel to the line, read from bottom or right. Gap: common practice.
    text: { place: 'above line', gap: 2 * 2 * d, reads: 'aligned' },
    // ISO 128-2:2022 §7 (ISO 128-22): reference line; lengths common practice.
    leader: { shoulder: 5, gap: 1 },
    // ISO 128-3:2022 (ISO 128-50): narrow lines at 45° to the main outlines; spacing chosen by the area.
    hatching: { angle: 45, spacing: [2, 4] },
    // ISO 129-1:2018 §5.1 and ISO 80000-1: comma; a point where the brief keeps one. Zeros stand as typed.
    decimals: { sign: ',', leadingZero: { inch: true, mm: true }, trailingZeros: { inch: false, mm: false } },
    words: { times: '×', through: 'THRU', section: '', scale: 'SCALE', doNotScale: 'DO NOT SCALE' },
  }
}

const isoNarrow = iso(0.25)
const isoWide = iso(0.35)

/**
 * The figures for a practice on a sheet.
 *
 * @param format sheet format (`A3`, `B`). ISO sheets A1 and A0 take line group 0.7; all others, and no format, 0.5
 *   (common practice; ISO 128-24 leaves the choice to the drawing's kind, size and scale).
 */
export function practiceFigures(practice: PracticeName, format?: string): PracticeFigures {
  if (practice === 'ASME') return format === 'D' || format === 'E' ? asmeLarge : asme
  return format === 'A1' || format === 'A0' ? isoWide : isoNarrow
}

/** Title and number 6 mm on sheets larger than C: ASME Y14.2-2014 Table 1, from memory. */
const asmeLarge: PracticeFigures = { ...asme, lettering: { ...asme.lettering, title: 6, viewLabel: 6 } }
