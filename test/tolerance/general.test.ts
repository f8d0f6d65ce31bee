import { describe, expect, test } from 'vitest'
import type { GeneralTolerance, Header } from '../../src/brief/brief.ts'
import type { Num, Size, Unit } from '../../src/brief/size.ts'
import {
  angularDeviation,
  circularRunout,
  cornerDeviation,
  formTolerance,
  type GeometricalClass,
  generalSymmetry,
  type LinearClass,
  linearDeviation,
  perpendicularity,
  readIso2768,
  roundness,
} from '../../src/tolerance/general/iso2768.ts'
import { iso22081Statement, readIso22081 } from '../../src/tolerance/general/iso22081.ts'
import { generalAngle, generalTolerance } from '../../src/tolerance/general/title-block.ts'

const classes: readonly LinearClass[] = ['f', 'm', 'c', 'v']

describe('ISO 2768-1', () => {
  // Looked up: "General tolerances to DIN ISO 2768" (a firm's drawing-office sheet on issuu.com), all three tables,
  // read column by column there; a dash is written as 0 here.
  test('lengths, whole', () => {
    const printed: [number, number, number, number, number][] = [
      [3, 0.05, 0.1, 0.2, 0],
      [6, 0.05, 0.1, 0.3, 0.5],
      [30, 0.1, 0.2, 0.5, 1],
      [120, 0.15, 0.3, 0.8, 1.5],
      [400, 0.2, 0.5, 1.2, 2.5],
      [1000, 0.3, 0.8, 2, 4],
      [2000, 0.5, 1.2, 3, 6],
      [4000, 0, 2, 4, 8],
    ]
    let from = 0.5
    for (const [upTo, ...row] of printed) {
      expect(classes.map((each) => linearDeviation(each, upTo) ?? 0)).toEqual(row)
      expect(classes.map((each) => linearDeviation(each, from + 1e-6) ?? 0)).toEqual(row)
      from = upTo
    }
    expect(linearDeviation('m', 0.4)).toBeUndefined()
    expect(linearDeviation('m', 4001)).toBeUndefined()
  })
  test('external radii and chamfer heights, whole', () => {
    expect(classes.map((each) => cornerDeviation(each, 3))).toEqual([0.2, 0.2, 0.4, 0.4])
    expect(classes.map((each) => cornerDeviation(each, 6))).toEqual([0.5, 0.5, 1, 1])
    expect(cornerDeviation('m', 0.5)).toBe(0.2)
    expect(cornerDeviation('m', 0.49)).toBeUndefined()
    expect(cornerDeviation('m', 3.01)).toBe(0.5)
    expect(classes.map((each) => cornerDeviation(each, 6.01))).toEqual([1, 1, 2, 2])
  })
  test('angles, whole, in minutes by the shorter leg', () => {
    const printed: [number, number, number, number, number][] = [
      [10, 60, 60, 90, 180],
      [50, 30, 30, 60, 120],
      [120, 20, 20, 30, 60],
      [400, 10, 10, 15, 30],
      [401, 5, 5, 10, 20],
    ]
    for (const [leg, ...row] of printed) {
      expect(classes.map((each) => Math.round(angularDeviation(each, leg)! * 60))).toEqual(row)
    }
    expect([10.01, 50.01, 120.01, 400.01].map((leg) => Math.round(angularDeviation('c', leg)! * 60))).toEqual([
      60, 30, 15, 10,
    ])
  })
})

describe('ISO 2768-2', () => {
  const geometrical: readonly GeometricalClass[] = ['H', 'K', 'L']
  // Straightness and flatness: looked up (a web page on DIN ISO 2768-2). Perpendicularity and symmetry: the rules that the
  // table follows, from memory, since the pages found were unreliable: K perpendicularity doubles H; L symmetry equals L
  // perpendicularity; H symmetry is 0.5 throughout; run-out 0.1, 0.2, 0.5.
  test('straightness and flatness, whole', () => {
    const printed: [number, number, number, number][] = [
      [10, 0.02, 0.05, 0.1],
      [30, 0.05, 0.1, 0.2],
      [100, 0.1, 0.2, 0.4],
      [300, 0.2, 0.4, 0.8],
      [1000, 0.3, 0.6, 1.2],
      [3000, 0.4, 0.8, 1.6],
    ]
    expect(formTolerance('K', 10.01)).toBe(0.1)
    expect(formTolerance('K', 1000.01)).toBe(0.8)
    for (const [upTo, ...row] of printed) expect(geometrical.map((each) => formTolerance(each, upTo))).toEqual(row)
    expect(formTolerance('H', 3001)).toBeUndefined()
  })
  test('perpendicularity, symmetry and run-out', () => {
    for (const upTo of [100, 300, 1000, 3000]) {
      expect(perpendicularity('K', upTo)).toBeCloseTo(2 * perpendicularity('H', upTo)!, 9)
      expect(generalSymmetry('L', upTo)).toBe(perpendicularity('L', upTo))
      expect(generalSymmetry('H', upTo)).toBe(0.5)
    }
    expect([100, 300, 1000, 3000].map((upTo) => perpendicularity('H', upTo))).toEqual([0.2, 0.3, 0.4, 0.5])
    expect([100, 300, 1000, 3000].map((upTo) => generalSymmetry('K', upTo))).toEqual([0.6, 0.6, 0.8, 1])
    expect([100, 300, 1000, 3000].map((upTo) => perpendicularity('L', upTo))).toEqual([0.6, 1, 1.5, 2])
    // Just past each bound the next value holds.
    expect([100.01, 300.01, 1000.01].map((length) => perpendicularity('H', length))).toEqual([0.3, 0.4, 0.5])
    expect([100.01, 300.01, 1000.01].map((length) => generalSymmetry('K', length))).toEqual([0.6, 0.8, 1])
    expect(perpendicularity('H', 3000.01)).toBeUndefined()
    expect(geometrical.map(circularRunout)).toEqual([0.1, 0.2, 0.5])
  })
  // ISO 2768-2 annex B, example 1 (from memory): ⌀25 0/−0,1 with class K → roundness 0,1; ⌀25 ±0,2 with K → 0,2 (run-out).
  test('roundness is the size tolerance, held by the run-out', () => {
    expect(roundness('K', 0.1)).toBe(0.1)
    expect(roundness('K', 0.4)).toBe(0.2)
  })
  test('the designation is read, with the note on the withdrawn part', () => {
    const mK = readIso2768('ISO 2768-mK-E')
    expect(mK.ok && mK.value).toMatchObject({ linear: 'm', geometrical: 'K', envelope: true })
    expect(mK.ok && mK.value.note).toContain('ISO 22081')
    const m = readIso2768('DIN ISO 2768-1 m')
    expect(m.ok && m.value).toEqual({ linear: 'm', envelope: false })
    const wrong = readIso2768('ISO 2768-mk')
    expect(!wrong.ok && wrong.problem.instead).toBe('ISO 2768-mK')
    const bare = readIso2768('ISO 2768')
    expect(!bare.ok && bare.problem.instead).toBe('ISO 2768-m')
    expect(readIso2768('JIS B 0405').ok).toBe(false)
  })
})

describe('the title block', () => {
  const span = { from: 0, to: 0 }
  function num(text: string, value: number): Num {
    const decimal = text.includes('.')
    const form = text.includes('/') ? 'fraction' : decimal ? 'decimal' : 'whole'
    return { text, value, form, decimals: decimal ? text.split('.')[1]!.length : 0, span }
  }
  function size(text: string, value: number, unit: Unit): Size {
    return { ...num(text, value), unit, unitTyped: false, mm: unit === 'inch' ? value * 25.4 : value }
  }
  function header(units: Unit, general: readonly GeneralTolerance[]): Header {
    return { units, practice: units === 'inch' ? 'ASME' : 'ISO', projection: 'third angle', general, notes: [] }
  }
  const inch = header('inch', [
    { kind: 'fractions', plusMinus: num('1/64', 1 / 64), span },
    { kind: 'decimals', decimals: 2, plusMinus: num('.01', 0.01), span },
    { kind: 'decimals', decimals: 3, plusMinus: num('.005', 0.005), span },
    { kind: 'angles', plusMinus: num('1/2', 0.5), span },
  ])
  const plusMinus = (text: string, value: number) => {
    const found = generalTolerance(inch, size(text, value, 'inch'))
    return found.ok ? found.value : undefined
  }
  // Common practice of inch title blocks, no source: the class is read off the digits as typed.
  test('2-1/2, 2.50 and 2.500 are three statements', () => {
    expect(plusMinus('2-1/2', 2.5)).toMatchObject({ by: 'fractions ±1/64', plusMinus: 25.4 / 64 })
    expect(plusMinus('2.50', 2.5)).toMatchObject({ by: '.XX ±.01', plusMinus: 0.254 })
    expect(plusMinus('2.500', 2.5)).toMatchObject({ by: '.XXX ±.005', plusMinus: 0.127 })
    expect(plusMinus('2.5', 2.5)).toBeUndefined()
  })
  test('whole inches go with the fractions, unless they have a class of their own', () => {
    expect(plusMinus('4', 4)).toMatchObject({ by: 'fractions ±1/64', plusMinus: 25.4 / 64 })
    const own = header('inch', [...inch.general, { kind: 'whole', plusMinus: num('1/32', 1 / 32), span }])
    expect(generalTolerance(own, size('4', 4, 'inch'))).toMatchObject({ value: { plusMinus: 25.4 / 32 } })
    const metric = header('mm', inch.general)
    expect(generalTolerance(metric, size('4', 4, 'mm')).ok).toBe(false)
  })
  test('a size in the other unit is not covered by classes of decimals', () => {
    const found = generalTolerance(inch, size('25.40', 25.4, 'mm'))
    expect(!found.ok && found.problem.expected).toContain('at the size')
  })
  test('what is missing is named', () => {
    const found = generalTolerance(inch, size('2.5', 2.5, 'inch'))
    expect(!found.ok && found.problem.expected).toBe('general .X ±…')
  })
  test('ISO 2768-1 by nominal size', () => {
    const iso = header('mm', [{ kind: 'standard', text: 'ISO 2768-mK', span }])
    const length = generalTolerance(iso, size('45', 45, 'mm'))
    expect(length.ok && length.value).toMatchObject({ plusMinus: 0.3, by: 'ISO 2768-mK' })
    const chamfer = generalTolerance(iso, size('2', 2, 'mm'), 'corner')
    expect(chamfer.ok && chamfer.value.plusMinus).toBe(0.2)
    const angle = generalAngle(iso, num('30', 30), 40)
    expect(angle.ok && angle.value.plusMinus).toBe(0.5)
    expect(generalTolerance(iso, size('0.3', 0.3, 'mm')).ok).toBe(false)
  })
  test('angles by the title block', () => {
    const found = generalAngle(inch, num('30', 30), 10)
    expect(found.ok && found.value).toMatchObject({ plusMinus: 0.5, by: 'angles ±1/2°' })
  })
  // ISO 22081:2021: values are written out, since the standard has none.
  test('ISO 22081 is read, applied and printed', () => {
    const text = 'ISO 22081 ±0.2 ±1° ⌓ 0.4 A B C'
    const read = readIso22081(text)
    expect(read.ok && read.value).toEqual({ linear: 0.2, angular: 1, profile: '⌓ 0.4 A B C' })
    expect(read.ok && iso22081Statement(read.value)).toBe(
      'GENERAL TOLERANCES ISO 22081 | LINEAR SIZES ±0.2 | ANGULAR SIZES ±1° | OTHER FEATURES ⌓ 0.4 A B C',
    )
    const iso = header('mm', [{ kind: 'standard', text, span }])
    const length = generalTolerance(iso, size('45', 45, 'mm'))
    expect(length.ok && length.value.plusMinus).toBe(0.2)
    const angle = generalAngle(iso, num('30', 30), 40)
    expect(angle.ok && angle.value.plusMinus).toBe(1)
    expect(
      generalTolerance(header('mm', [{ kind: 'standard', text: 'ISO 22081', span }]), size('45', 45, 'mm')).ok,
    ).toBe(false)
    expect(readIso22081('ISO 2768-m').ok).toBe(false)
  })
})
