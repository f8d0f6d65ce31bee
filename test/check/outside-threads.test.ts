import { beforeAll, expect, it } from 'vitest'
import { checkDrawing } from '../../src/check/check-drawing.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { lazySubject, onHeader } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const marksOf = (text: string) => {
  const subject = lazySubject(text, kernel)
  const refused = [...subject.brief.marks, ...subject.part.marks]
  const { brief, part, views, sizes } = subject
  const found = checkDrawing({ brief, part, views, sizes })
  subject.free()
  return [...refused, ...found].filter((m) => m.weight !== 'remark')
}

const turned = (lie: string, rows: string) => `turned    axis ${lie}\n${rows}`

// What a mark says to write is written, line by line, until nothing is left: it must be legal, and must be enough.
it.each([
  ['iso', turned('left-right', '          screw   M20 × 1.5 - 6g, 30 long\n          body    ⌀30, 60 long')],
  [
    'iso',
    turned(
      'front-rear',
      '          body    ⌀30, 60 long\n          screw   M12 - 6g, 25 long\n          tip     ⌀9, 10 long',
    ),
  ],
  [
    'asme',
    turned(
      'up-down',
      '          foot    3/4-16 UNF-2A, 1.25 long\n          body    ⌀1.250, 2.00 long\n          screw   1/2-13 UNC-2A, 1.00 long',
    ),
  ],
] as const)('an outside thread on an %s sheet is mended by what its marks say to write', (on, stock) => {
  const first = marksOf(onHeader(on, stock))
  expect(first.map((m) => m.rule)).toEqual(expect.arrayContaining(['thread-undercut', 'thread-without-chamfer']))
  const lines = first.map((m) => m.expected!)
  for (const line of lines) expect(line).toMatch(/^(groove|chamfer) /)
  const order = [...lines].sort((a, b) => b.localeCompare(a))
  expect(marksOf(onHeader(on, [stock, ...order].join('\n')))).toEqual([])
})

it('a note on the run-out or a relief off the shoulder is told from an undercut', () => {
  const stud = turned('left-right', '          screw   M20 × 1.5 - 6g, 30 long\n          body    ⌀30, 60 long')
  const rules = (more: string) =>
    marksOf(onHeader('iso', `${stud}\nchamfer   left face outer edge: 1 × 45°\n${more}`)).map((m) => m.rule)
  expect(rules('')).toEqual(['thread-undercut'])
  expect(rules('note      Thread run-out by DIN 76.')).toEqual([])
  expect(rules('groove    screw: 3.8 wide, bottom ⌀17.7\n          right side 5 from body left face')).toEqual([
    'thread-undercut',
  ])
})
