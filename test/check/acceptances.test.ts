import { beforeAll, describe, expect, it } from 'vitest'
import type { Brief } from '../../src/brief/brief.ts'
import type { Mark } from '../../src/brief/mark.ts'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'
import { withoutPlaces } from '../../src/brief/without-places.ts'
import { acceptanceOf, withAcceptances } from '../../src/check/acceptances.ts'
import { checkDrawing } from '../../src/check/check-drawing.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { lazySubject, onHeader } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const part = (from: string) =>
  `block     80 × 50 × 30\nhole      top: ⌀12 THRU\n          ${from} from left; centred up\n`

function marksOf(lines: string) {
  const subject = lazySubject(onHeader('iso', lines), kernel)
  const marks = withAcceptances(subject.brief, [...subject.brief.marks, ...checkDrawing(subject)])
  subject.free()
  return { brief: subject.brief, marks, near: marks.filter((m) => m.rule === 'hole-near-edge') }
}

describe('an accepted mark', () => {
  let brief: Brief
  let near: readonly Mark[]
  beforeAll(() => {
    ;({ brief, near } = marksOf(part('7')))
  })
  const statement = () => acceptanceOf(near[0]!, brief, 'the web carries no load')!

  it('is a remark that carries the reason, by the statement that the program offers', () => {
    expect(near[0]!.weight).toBe('must change')
    expect(statement()).toBe(
      'accept    hole-near-edge at hole 1 (top: ⌀12 THRU) with 12 mm, 1 mm because the web carries no load',
    )
    const after = marksOf(`${part('7')}${statement()}`)
    expect(after.near.map((m) => [m.weight, m.accepted])).toEqual([['remark', 'the web carries no load']])
    expect(after.marks.filter((m) => m.rule.startsWith('acceptance'))).toEqual([])
  })

  it('wakes when a figure behind it changes, and says which', () => {
    const { near: woken } = marksOf(`${part('6.8')}${statement()}`)
    expect(woken.map((m) => m.weight)).toEqual(['must change'])
    expect(woken[0]!.text).toMatch(/accepted with 12 mm, 1 mm; now it is 12 mm, 0.8 mm/)
  })

  it('goes with the words of its feature when another is put in above it', () => {
    const above = 'hole      top: ⌀4 THRU\n          40 from left; 10 from front\n'
    const [stock, ...rest] = part('7').split('\n')
    const { near: moved, marks } = marksOf(`${stock}\n${above}${rest.join('\n')}${statement()}`)
    expect(moved.map((m) => [m.feature, m.accepted])).toEqual([['hole 2', 'the web carries no load']])
    expect(marks.filter((m) => m.rule.startsWith('acceptance'))).toEqual([])
  })

  it('is taken by its number where it names no words, or words that several features have', () => {
    const plain = 'accept    hole-near-edge at hole 1 with 12 mm, 1 mm because it is so'
    expect(marksOf(`${part('7')}${plain}`).near.map((m) => m.accepted)).toEqual(['it is so'])
    const twin = 'hole      top: ⌀12 THRU\n          7 from right; centred up\n'
    const { near: both } = marksOf(`${part('7')}${twin}${statement()}`)
    expect(both.map((m) => m.accepted)).toEqual(['the web carries no load', undefined])
  })

  it('stands again where the figures were left out', () => {
    const { near: woken } = marksOf(`${part('7')}accept    hole-near-edge because it is so`)
    expect(woken[0]!.weight).toBe('must change')
  })

  it('leaves a word behind when there is nothing left to accept', () => {
    const { marks, brief: read } = marksOf(`${part('20')}${statement()}`)
    const idle = marks.filter((m) => m.rule === 'acceptance-idle')
    expect(idle.map((m) => m.weight)).toEqual(['remark'])
    const { span, text } = idle[0]!.mends![0]!
    expect(read.text.slice(0, span.from) + text + read.text.slice(span.to)).toBe(onHeader('iso', part('20').trimEnd()))
  })

  it('points a misspelt rule to the right one', () => {
    const { marks } = marksOf(`${part('7')}accept    hole-near-egde with 12 mm, 1 mm because it is so`)
    expect(marks.find((m) => m.rule === 'acceptance-idle')).toMatchObject({ expected: 'hole-near-edge' })
  })

  it('is not given for what the brief cannot be built without', () => {
    const subject = lazySubject(onHeader('iso', `${part('200')}accept    hole-off-part because it is so`), kernel)
    const fault = withAcceptances(subject.brief, subject.part.marks).find((m) => m.rule === 'hole-off-part')!
    expect(fault.weight).toBe('must change')
    expect(fault.text).toMatch(/cannot be accepted/)
    expect(acceptanceOf(fault, subject.brief, 'x')).toBeUndefined()
    subject.free()
  })

  it('says the same after printing and reading', () => {
    const text = onHeader('iso', `${part('7')}${statement()}`)
    const read = readBrief(text)
    expect(read.acceptances).toHaveLength(1)
    expect(withoutPlaces(readBrief(printBrief(read)))).toEqual(withoutPlaces(read))
  })

  it('is asked for a reason', () => {
    const read = readBrief(onHeader('iso', `${part('7')}accept    hole-near-edge at hole 1`))
    expect(read.marks.map((m) => m.rule)).toContain('acceptance-incomplete')
    expect(read.acceptances).toBeUndefined()
  })
})
