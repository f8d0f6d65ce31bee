import { describe, expect, it } from 'vitest'
import { plainString, recordsOf } from '../../src/read/part21/records.ts'
import { structureOf } from '../../src/read/part21/structure.ts'

const file = (data: string) => `ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\n${data}\nENDSEC;\nEND-ISO-10303-21;\n`

describe('records of ISO 10303-21', () => {
  it('reads simple and complex records, lists, references, words, typed values, omitted and derived ones', () => {
    const records = recordsOf(
      file(`#10=CARTESIAN_POINT('it''s; here',(0.,-1.5E-1,+2));
#11 = ( LENGTH_UNIT() NAMED_UNIT(*) SI_UNIT(.MILLI.,.METRE.) );
/* a comment; with #12=FALSE() in it */ #13=MEASURE($,LENGTH_MEASURE(25.4),#11,(#10,#11));`),
    )
    expect(records.ids).toEqual([10, 11, 13])
    expect(records.placeOf(13)).toBe(3)
    expect(records.entities(10)).toEqual([{ name: 'CARTESIAN_POINT', args: ["it's; here", [0, -0.15, 2]] }])
    expect(records.entities(11)).toEqual([
      { name: 'LENGTH_UNIT', args: [] },
      { name: 'NAMED_UNIT', args: [undefined] },
      { name: 'SI_UNIT', args: [{ word: 'MILLI' }, { word: 'METRE' }] },
    ])
    expect(records.entities(13)[0]!.args).toEqual([
      undefined,
      { name: 'LENGTH_MEASURE', args: [25.4] },
      { ref: 11 },
      [{ ref: 10 }, { ref: 11 }],
    ])
    expect(records.named('SI_UNIT')).toEqual([11])
  })

  // ISO 10303-21:2016 6.4.3: \X\ one byte, \X2\ UTF-16, \X4\ UTF-32, \S\ upper half of the code page, \\ a backslash
  it('reads the directives for other letters', () => {
    expect(plainString('\\X\\E9')).toBe('é')
    expect(plainString('\\X2\\230000F8\\X0\\ 20')).toBe('⌀ø 20')
    expect(plainString('\\X4\\0001F529\\X0\\')).toBe('🔩')
    expect(plainString('\\S\\d')).toBe('ä')
    expect(plainString('a\\\\b')).toBe('a\\b')
    expect(plainString('long\r\n name')).toBe('long name')
  })

  it('stops at the last whole statement of a text that is cut off', () => {
    const whole = "#1=A('x');"
    const text = `DATA;\n${whole}\n#2=B('y`
    expect(recordsOf(text).end).toBe(text.indexOf(whole) + whole.length)
    expect(recordsOf("#1=A('open string;").ids).toEqual([])
    expect(recordsOf('#1=A(((((').ids).toEqual([])
  })

  it('tells inch from millimetre by the unit of length, not of angle', () => {
    const context = (unit: string) =>
      file(`#1=( GEOMETRIC_REPRESENTATION_CONTEXT(3) GLOBAL_UNIT_ASSIGNED_CONTEXT((#2,#3)) REPRESENTATION_CONTEXT('','') );
#2=( CONVERSION_BASED_UNIT('DEGREE',#4) NAMED_UNIT(#5) PLANE_ANGLE_UNIT() );
#3=( ${unit} );`)
    const unitOf = (unit: string) => structureOf(recordsOf(context(unit))).unit
    expect(unitOf("CONVERSION_BASED_UNIT('INCH',#6) LENGTH_UNIT() NAMED_UNIT(#7)")).toBe('inch')
    expect(unitOf('LENGTH_UNIT() NAMED_UNIT(*) SI_UNIT(.MILLI.,.METRE.)')).toBe('mm')
    expect(unitOf('LENGTH_UNIT() NAMED_UNIT(*) SI_UNIT($,.METRE.)')).toBe('mm')
  })
})
