import { beforeAll, expect, it } from 'vitest'
import { checked } from '../../src/app/checked.ts'
import { compile, settled } from '../../src/app/compile.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { onHeader } from '../check/subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

/** An outside thread cut up to a shoulder: DIN 76-1 and ISO 4755 ask for an undercut there. */
const stud = (screw: string, more = '') =>
  onHeader(
    'iso',
    `turned    axis left-right
          screw   ${screw}, 30 long
          body    ⌀30, 60 long
chamfer   ends: 2X 1.5 × 45°
${more}`,
  )
const accept = 'accept    thread-undercut at turned with M20 × 1.5 - 6g because the nut stops 4 mm short'

function drawn(text: string) {
  const drawing = compile(text, kernel)
  kernel.free(drawing.part!.solid)
  const weights = checked(drawing).flatMap((m) => (m.weight === 'must change' ? [m.rule] : []))
  const stamps = drawing.sheet!.items.filter((i) => i.item === 'text' && i.role === 'stamp')
  return { weights, stamped: stamps.length > 0, drawing }
}

it('a sheet that a rule sends back is stamped as not for manufacture', () => {
  const { weights, stamped } = drawn(stud('M20 × 1.5 - 6g'))
  expect(weights).toEqual(['thread-undercut'])
  expect(stamped).toBe(true)
})

it('an acceptance with its reason lifts the stamp, until the figure changes', () => {
  const { weights, stamped, drawing } = drawn(stud('M20 × 1.5 - 6g', accept))
  expect([weights, stamped]).toEqual([[], false])
  expect(checked(drawing).find((m) => m.rule === 'thread-undercut')?.accepted).toBe('the nut stops 4 mm short')
  const woken = drawn(stud('M20 × 2 - 6g', accept))
  expect([woken.weights, woken.stamped]).toEqual([['thread-undercut'], true])
})

it('what wants another look does not stamp the sheet', () => {
  const { weights, stamped, drawing } = drawn(
    onHeader('iso', 'block     80 × 50 × 30\nhole      top: ⌀8.13 THRU\n          20 from left; centred up'),
  )
  expect(checked(drawing).map((m) => `${m.rule} ${m.weight}`)).toContain('odd-drill-size look again')
  expect([weights, stamped]).toEqual([[], false])
})

// The page shows a sheet before the rules have been asked, and settles it afterwards.
it.each([
  ['a sheet that is sent back', stud('M20 × 1.5 - 6g')],
  ['a sheet that is not', stud('M20 × 1.5 - 6g', accept)],
])('%s comes to the same whether the rules are asked before it or after, with either guess', (_, text) => {
  const { drawing } = drawn(text)
  for (const guess of [true, false]) {
    const early = compile(text, kernel, { sentBack: guess })
    kernel.free(early.part!.solid)
    expect(early.found).toBeUndefined()
    const done = settled(early, guess)
    expect(done.sentBack).toBe(checked(drawing).some((m) => m.weight === 'must change'))
    expect(done.drawing.sheet).toEqual(drawing.sheet)
    expect(done.drawing.marks).toEqual(drawing.marks)
    expect(done.drawing.found).toEqual(drawing.found)
  }
})

it('a title in letters that would print as boxes is marked and stamps the sheet', () => {
  const text = onHeader('iso', 'block     80 × 50 × 30')
  expect(drawn(text).stamped).toBe(false)
  const { stamped, drawing } = drawn(text.replace(/^part .*$/m, 'part      漢字'))
  expect(stamped).toBe(true)
  expect(drawing.marks.find((m) => m.rule === 'sign-not-in-lettering')?.text).toBe(
    'The lettering has no sign for “漢”, “字”: a box is printed instead.',
  )
})
