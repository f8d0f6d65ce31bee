import { expect, it } from 'vitest'
import { auditSizes } from './audit.ts'
import { allMarks, iso } from './sized.ts'

/*
 * A radius stands at its arc seen true (ASME Y14.5-2018 4.4.3, ISO 129-1; from memory). Flats take a round or fillet away at
 * the outline where they stand; a quarter turn on it is left.
 */
const shaft = (work: string) => `turned axis left-right\n  a ⌀30, 40 long\n  b ⌀40, 30 long\n${work}`
const FILLET = 'fillet a right edge: R2\n'
const ROUND = 'round b left edge: R2\n'
const flats = (of: string, sides: string, across: number, end: string) =>
  `flats ${of}, ${sides}: ${across} across, 12 long\n  ${end} end at b left face\n`

it.each([
  ['a fillet without flats', FILLET, 'front'],
  ['a fillet between flats above and below', `${FILLET}${flats('a', 'top and bottom', 26, 'right')}`, 'top'],
  ['a fillet between flats before and behind', `${FILLET}${flats('a', 'front and rear', 26, 'right')}`, 'front'],
  ['a fillet with one flat', `${FILLET}flat a, top: 28 across, 12 long\n  right end at b left face\n`, 'front'],
  ['a round between flats above and below', `${ROUND}${flats('b', 'top and bottom', 34, 'left')}`, 'top'],
  // at the round's own small end the flats leave its border there and take the other
  ['a round that flats take to its border', `${ROUND}${flats('b', 'top and bottom', 36, 'left')}`, 'top'],
])('%s has its R where the arc is left', (_, work, view) => {
  const text = shaft(work)
  const s = iso(text)
  expect(s.find('R2').view).toBe(view)
  expect(allMarks(s).filter((m) => m.rule === 'no-view-for-size')).toEqual([])
  auditSizes(s, text)
})

it('a fillet between flats of an upright shaft has its R in a view a quarter turn on', () => {
  const text = `turned axis up-down
  a ⌀30, 40 long
  b ⌀40, 30 long
fillet a top edge: R2
flats a, left and right: 26 across, 15 long
  top end at b bottom face
`
  const s = iso(text)
  expect(['left', 'right']).toContain(s.find('R2').view)
  auditSizes(s, text)
})
