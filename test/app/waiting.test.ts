import { expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openKernel } from '../../src/kernel/open.ts'

const kernel = await openKernel()

/** Rules of the marks that must change, by line. */
function faults(lines: string): string[] {
  const text = `units mm\npractice ISO\nblock 80 × 40 × 40\n${lines}\n`
  const { marks, part } = compile(text, kernel)
  if (part?.body.faces.length) kernel.free(part.solid)
  return marks
    .filter((m) => m.weight === 'must change' && m.span)
    .map((m) => `${text.slice(0, m.span!.from).split('\n').length}: ${m.rule}`)
}

it.each([
  ['hole A top: ⌀8 ↧ 60\n  centred both ways\ndatum B hole A', ['4: too-deep', '6: waits-for-another']],
  [
    'hole A top: ⌀90 THRU\n  centred both ways\nchamfer hole A edges: 2X 1 × 45°',
    ['5: breaks-edge', '6: waits-for-another'],
  ],
  ['boss D top: ⌀10 × 0 high\n  centred both ways\nround boss D edge: R1', ['4: zero-size', '6: waits-for-another']],
  // a name that no statement gives, and one whose statement stands, are looked for as before
  ['hole A top: ⌀90 THRU\n  centred both ways\ndatum B hole C', ['5: breaks-edge', '6: unknown-name']],
  ['hole A top: ⌀9 THRU\n  centred both ways\ndatum B slot', ['6: unknown-name']],
])('%s', (lines, wanted) => {
  expect(faults(lines)).toEqual(wanted)
})

it('names the line', () => {
  const text = 'units mm\nblock 80 × 40 × 40\nhole A top: ⌀8 ↧ 60\n  centred both ways\ndatum B holes A\n'
  const { marks, part } = compile(text, kernel)
  kernel.free(part!.solid)
  expect(marks.find((m) => m.rule === 'waits-for-another')?.text).toBe(
    '“holes A” waits for hole A, which cannot be drawn as line 3 says it.',
  )
})
