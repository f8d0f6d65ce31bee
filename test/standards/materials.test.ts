import { describe, expect, it } from 'vitest'
import { densityOf } from '../../src/standards/materials.ts'

/*
 * g/cm³. Unalloyed and low-alloy steels: 7.85 (EN 1991-1-1:2002 table A.4 gives 77 to 78.5 kN/m³; from memory), their
 * makers' sheets 7.80 to 7.86. D2 7.70, H13 7.80, M2 8.16, A2 7.86, O1 7.81 to 7.85: data sheets of tool steels, from memory.
 */
const STEELS = [
  '34CrNiMo6',
  '42CrMo4+QT',
  '90MnCrV8',
  '100Cr6',
  '16MnCr5',
  '11SMnPb30',
  '51CrV4',
  '18CrNiMo7-6',
  'ASTM A681 O1',
  'ASTM A322 grade 4340',
  'SAE 8620',
  'SAE 52100',
  'ASTM A576 1045',
  'ASTM A572 grade 50',
  'P265GH',
  'E295',
  'DC01',
  'C45E EN ISO 683-1',
  'S355J2',
  'silver steel',
]

describe('densities by the name of the grade', () => {
  it.each(STEELS)('%s: 7.85', (name) => {
    expect(densityOf(name)?.gPerCm3).toBe(7.85)
    expect(densityOf(name)?.source).toMatch(/./)
  })

  it.each([
    ['X153CrMoV12', 7.7],
    ['ASTM A681 D2', 7.7],
    ['X40CrMoV5-1', 7.8],
    ['HS6-5-2C', 8.16],
    ['X5CrNi18-10', 7.9],
    ['CuSn12', 8.8],
    ['AlMg3', 2.7],
    ['EN AW-6082 T6', 2.7],
    ['TiAl6V4, titanium', 4.43],
  ] as const)('%s: %s, not that of plain steel', (name, density) => {
    expect(densityOf(name)?.gPerCm3).toBe(density)
  })

  it('guesses at no other name', () => {
    for (const name of ['fibre board FB-200', 'C110', 'ASTM F1554', 'Inconel 718', 'EN 10025', 'CW614N', 'PEEK 450G'])
      expect(densityOf(name), name).toBeUndefined()
  })
})
