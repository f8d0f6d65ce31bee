import { expect, test } from 'vitest'
import { inchFit, inchFitClasses } from '../../src/tolerance/inch/b41-fit.ts'
import { forceSteps, inchSteps } from '../../src/tolerance/inch/b41-table.ts'

// Printed limits of clearance (negative: interference), thousandths of an inch, ANSI B4.1-1967. The program holds grades
// and fundamental deviations; these columns are what the standard prints as their outcome. Looked up: RC 1 to 9, LT, LN in
// Machinery's Handbook, 31st ed., tables 8a, 8b, 10, 12; LC 6, 7, 9 to 11 up to 1.19 in, in a web reprint of the table
// (cobanengineering.com). LC 5 and the rest of LC: recalled, not looked up.
const looked: Record<string, string> = {
  RC1: '.1,.45 .15,.5 .2,.6 .25,.75 .3,.95 .4,1.1 .4,1.2 .5,1.5 .6,1.8 .6,2.0 .8,2.3 1.0,2.7 1.2,3.0',
  RC2: '.1,.55 .15,.65 .2,.85 .25,.95 .3,1.2 .4,1.4 .4,1.6 .5,2.0 .6,2.3 .6,2.6 .8,2.9 1.0,3.4 1.2,3.8',
  RC3: '.3,.95 .4,1.2 .5,1.5 .6,1.7 .8,2.1 1.0,2.6 1.2,3.1 1.4,3.7 1.6,4.2 2.0,5.0 2.5,5.7 3.0,6.6 4.0,8.1',
  RC4: '.3,1.3 .4,1.6 .5,2.0 .6,2.3 .8,2.8 1.0,3.6 1.2,4.2 1.4,5.0 1.6,5.7 2.0,6.6 2.5,7.5 3.0,8.7',
  RC5: '.6,1.6 .8,2.0 1.0,2.5 1.2,2.9 1.6,3.6 2.0,4.6 2.5,5.5 3.0,6.6 3.5,7.6 4.0,8.6',
  RC6: '.6,2.2 .8,2.7 1.0,3.3 1.2,3.8 1.6,4.8 2.0,6.1 2.5,7.3 3.0,8.7',
  RC7: '1.0,2.6 1.2,3.1 1.6,3.9 2.0,4.6 2.5,5.7 3.0,7.1 4.0,8.8',
  RC8: '2.5,5.1 2.8,5.8 3.0,6.6 3.5,7.9 4.5,10 5.0,11.5 6.0,13.5 7.0,15.5 8.0,18 10,21.5 12,25 14,29 16,32',
  RC9: '4.0,8.1 4.5,9.0 5.0,10.7 6.0,12.8 7.0,15.5 8.0,18 9.0,20.5 10,24 12,28 15,34 18,38 22,45 25,51',
  LC6: '.3,1.9 .4,2.3 .5,2.8 .6,3.2 .8,4.0 1.0,5.1',
  LC7: '.6,3.2 .8,3.8 1.0,4.6 1.2,5.6 1.6,7.1 2.0,8.5',
  LC9: '2.5,6.6 2.8,7.6 3.0,8.7 3.5,10.3 4.5,13',
  LC10: '4,12 4.5,14.5 5,17 6,20 7,23',
  LC11: '5,17 6,20 7,25 8,28 10,34',
  LT1: '-.12,.52 -.15,.65 -.2,.8 -.2,.9 -.25,1.05 -.3,1.3 -.3,1.5',
  LT2: '-.2,.8 -.25,.95 -.3,1.2 -.35,1.35 -.4,1.6 -.5,2.1 -.6,2.4 -.7,2.9 -.8,3.3 -.9,3.7 -1.0,4.0 -1.0,4.5 -1.2,5.2',
  LT4: '- - -.7,.8 -.8,.9 -.9,1.1 -1.1,1.5 -1.3,1.7',
  LT5: '-.5,.15 -.6,.2 -.8,.2 -.9,.2 -1.1,.2 -1.3,.3 -1.5,.4 -1.9,.4 -2.2,.4 -2.6,.4 -2.6,.6 -3.0,.6 -3.4,.7',
  LT6: '-.65,.15 -.8,.2 -1.0,.2 -1.2,.2 -1.4,.2 -1.7,.3 -2.0,.4',
  LN1: '-.45,0 -.5,0 -.65,0 -.8,0 -1.0,0 -1.1,0 -1.3,-.1 -1.6,-.1 -1.9,-.2 -2.2,-.2 -2.3,-.2 -2.6,-.2 -2.8,-.2',
  LN2: '-.65,0 -.8,0 -1.0,0 -1.1,0 -1.3,0 -1.6,0 -2.1,-.2 -2.5,-.2 -2.8,-.2 -3.2,-.2 -3.4,-.2 -3.9,-.3 -4.4,-.3',
  LN3: '-.75,-.1 -.9,-.1 -1.2,-.2 -1.4,-.3 -1.7,-.4 -2.0,-.4 -2.3,-.4 -2.9,-.6 -3.5,-.9 -4.2,-1.2 -4.7,-1.5 -5.9,-2.3 -6.6,-2.5',
}
const recalled: Record<string, string> = {
  LC5: '.1,.75 .15,.95 .2,1.2 .25,1.35 .3,1.6 .4,2.0 .4,2.3 .5,2.8 .6,3.2 .6,3.6 .7,3.9 .7,4.3 .8,4.9',
  LC6: '.3,1.9 .4,2.3 .5,2.8 .6,3.2 .8,4.0 1.0,5.1 1.2,6.0 1.4,7.1 1.6,8.1 2.0,9.3 2.2,10.2 2.5,12 2.8,12.8',
  LC8: '1.0,3.6 1.2,4.2 1.6,5.2 2.0,6.4 2.5,8.0 3.0,9.5 4.0,11.5 5.0,13.5 6.0,16 7.0,18.5 7.0,20 8.0,23 9.0,25',
  LC9: '2.5,6.6 2.8,7.6 3.0,8.7 3.5,10.3 4.5,13 5.0,15 6.0,17.5 7.0,21 8.0,24 10,29 12,32 14,37 16,42',
  LC10: '4,12 4.5,14.5 5,17 6,20 7,23 8,28 10,34 11,39 12,44 16,52 20,60 22,66 25,75',
  LC11: '5,17 6,20 7,25 8,28 10,34 12,44 14,50 16,60 18,68 22,78 28,88 30,100 35,115',
  LC7: '.6,3.2 .8,3.8 1.0,4.6 1.2,5.6 1.6,7.1 2.0,8.5 2.5,10 3.0,11.5 3.5,13.5 4.0,15.5 4.5,17.5 5.0,20 5.0,21',
}
// Interference as printed, same handbook, table 11 (27th and 31st ed.), by the steps of force fits.
const force: Record<string, string> = {
  FN1: '.05,.5 .1,.6 .1,.75 .1,.8 .2,.9 .2,1.1 .3,1.2 .3,1.3 .4,1.4 .6,1.8 .7,1.9 .9,2.4 - 1.2,2.9 1.5,3.2 1.8,3.5 1.8,3.8 2.3,4.3 2.3,4.3 2.8,4.9 2.8,4.9',
  FN2: '.2,.85 .2,1.0 .4,1.4 .5,1.6 .5,1.6 .6,1.9 .6,1.9 .8,2.4 .8,2.4 .8,2.7 1.0,2.9 1.4,3.7 - 1.9,4.5 2.4,5.0 2.9,5.5 3.2,6.2 3.2,6.2 4.2,7.2 4.0,7.2 5.0,8.2',
  FN3: '- - - - - - .8,2.1 1.0,2.6 1.2,2.8 1.3,3.2 1.8,3.7 2.1,4.4 - 3.4,6.0 3.4,6.0 4.4,7.0 5.2,8.2 5.2,8.2 6.2,9.2 7.0,10.2 7.0,10.2',
  FN4: '.3,.95 .4,1.2 .6,1.6 .7,1.8 .7,1.8 .8,2.1 1.0,2.3 1.5,3.1 1.8,3.4 2.3,4.2 2.8,4.7 3.6,5.9 - 5.4,8.0 5.4,8.0 6.4,9.0 7.2,10.2 8.2,11.2 10.2,13.2 10.0,13.2 12.0,15.2',
  FN5: '.3,1.3 .5,1.7 .5,2.0 .6,2.3 .8,2.5 1.0,3.0 1.3,3.3 1.4,4.0 2.4,5.0 3.2,6.2 4.2,7.2 4.8,8.4 - 7.5,11.6 9.5,13.6 9.5,13.6 11.2,15.8 13.2,17.8 13.2,17.8 15.0,20.0 17.0,22.0',
}

function compare(table: Record<string, string>, steps: readonly number[], sign: 1 | -1): number {
  let checked = 0
  for (const [symbol, row] of Object.entries(table)) {
    row.split(' ').forEach((cell, i) => {
      if (cell === '-') return
      const found = inchFit(symbol, steps[i]!)
      if (!found.ok) throw new Error(`${symbol} at ${steps[i]}: ${found.problem.text}`)
      const [a, b] = cell.split(',').map(Number) as [number, number]
      const [min, max] = sign === 1 ? [a, b] : [-b, -a]
      checked++
      expect(found.value.minClearance * 1000, `${symbol} at ${steps[i]}, smallest clearance`).toBeCloseTo(min, 6)
      expect(found.value.maxClearance * 1000, `${symbol} at ${steps[i]}, largest clearance`).toBeCloseTo(max, 6)
    })
  }
  return checked
}

test('clearances match the printed columns', () => {
  expect(compare(looked, inchSteps, 1)).toBeGreaterThan(190)
})
test('the larger sizes of LC 5 to 11 match the columns as recalled', () => {
  expect(compare(recalled, inchSteps, 1)).toBe(91)
})
test('force fits match the printed columns', () => {
  expect(compare(force, forceSteps, -1)).toBeGreaterThan(90)
})
// Same table, the shaft columns of the last four steps as the reprint has them (FN 2 above 15.75 in from memory).
test('force fits, shafts of the largest sizes', () => {
  const printed: Record<string, string> = {
    FN1: '5.5,4.5 6.1,5.0 7.0,6.0 7.0,6.0',
    FN2: '9.4,8.0 9.4,8.0 10.6,9.0 11.6,10.0',
    FN3: '11.4,10.0 13.4,12.0 13.6,12.0 15.6,14.0',
    FN4: '17.4,16.0 19.4,18.0 21.6,20.0 23.6,22.0',
    FN5: '24.2,22.0 27.2,25.0 30.5,28.0 32.5,30.0',
  }
  for (const [symbol, row] of Object.entries(printed)) {
    row.split(' ').forEach((cell, i) => {
      const found = inchFit(symbol, forceSteps[21 + i]!)
      if (!found.ok) throw new Error(symbol)
      const { upper, lower } = found.value.shaft
      expect(
        [upper * 1000, lower * 1000].map((value) => value.toFixed(2)),
        `${symbol} ${forceSteps[21 + i]}`,
      ).toEqual(cell.split(',').map((value) => Number(value).toFixed(2)))
    })
  }
})
test('a printed shaft: RC 4 at 1 in is −.0008, −.0016 in a hole of +.0012', () => {
  const found = inchFit('RC 4', 1)
  expect(found.ok && found.value).toEqual({
    symbol: 'RC 4',
    hole: { upper: 0.0012, lower: 0 },
    shaft: { upper: -0.0008, lower: -0.0016 },
    minClearance: 0.0008,
    maxClearance: 0.0028,
  })
})
test('unknown classes, sizes and gaps in the table are refused with an offer', () => {
  const wrong = inchFit('FN 6', 1)
  expect(!wrong.ok && wrong.problem.instead).toMatch(/^FN \d$/)
  expect(inchFit('RC4', 20).ok).toBe(false)
  expect(inchFit('FN3', 0.5).ok).toBe(false)
  expect(inchFit('LT3', 0.1).ok).toBe(false)
  expect(inchFitClasses.length).toBe(34)
})
