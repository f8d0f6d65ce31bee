import { describe, expect, it } from 'vitest'
import { faults, openBench } from './workbench.ts'

// Volumes by closed formulas: cylinder πr²h, cone frustum πh(R² + Rr + r²)/3, drill point of 118° a cone r / tan 59° high.
const bench = openBench()

const frustum = (R: number, r: number, h: number) => (Math.PI * h * (R * R + R * r + r * r)) / 3
const nozzle = 'turned axis left-right\n  inlet ⌀24, 18 long\n  body ⌀22, 44 long\n  tip ⌀22 tapered to ⌀10, 16 long'
const solid = Math.PI * 144 * 18 + Math.PI * 121 * 44 + frustum(11, 5, 16)

describe('a blind bore into a taper', () => {
  it.each([58, 62])('%i deep leaves the wall that the taper has there', (deep) => {
    const part = bench.part(`${nozzle}\nbore left: ⌀14 ↧ ${deep}, point 118°`)
    expect(faults(part)).toEqual([])
    const point = frustum(7, 0, 7 / Math.tan((59 * Math.PI) / 180))
    expect(part.properties.volume).toBeCloseTo(solid - Math.PI * 49 * deep - point, 6)
  })

  // ⌀14 is the taper's own diameter 16·(22 − 14)/(22 − 10) = 10.67 from its large end
  it.each(['↧ 73, flat bottom', 'THRU'])('%s is refused where the bore meets the outside', (depth) => {
    expect(faults(bench.part(`${nozzle}\nbore left: ⌀14 ${depth}`))).toEqual(['bore-too-large'])
  })

  it('just short of that is made', () => {
    const part = bench.part(`${nozzle}\nbore left: ⌀14 ↧ 72, flat bottom`)
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(solid - Math.PI * 49 * 72, 6)
  })
})
