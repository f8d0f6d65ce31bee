import { expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { onHeader } from '../check/subject.ts'

const TUBE = 'tube ⌀62 outside, ⌀45 inside, 60 long, axis left-right\n'

it.each([
  [
    'holes outside, from top: 4X ⌀6 THRU to bore; 20 from left face, equally spaced, first at 45°',
    'first at 45°',
    'side',
  ],
  ['holes left: 2X ⌀4 THRU; at 20, 20; 30, 30; from top and front; about bore', 'bore', 'bolt circle'],
])('says that words of a bolt circle stand without one: %s', (statement, words, expected) => {
  const { text, marks } = readBrief(onHeader('iso', TUBE + statement))
  const mark = marks.find((m) => m.rule === 'misplaced-words')
  expect(mark?.weight).toBe('must change')
  expect(text.slice(mark!.span!.from, mark!.span!.to)).toBe(words)
  expect(mark?.expected).toContain(expected)
})
