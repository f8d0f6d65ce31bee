import { beforeAll, expect, it } from 'vitest'
import { rules } from '../../src/check/rules/rules.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { cases } from './cases.ts'
import { lazySubject, onHeader } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

/** A case's faulty part with its figures taken as inches, where it does not name millimetres itself. */
const inInches = cases
  .filter((c) => !/\bmm\b/.test(c.bad) && !c.spoilt)
  .map((c) => ({ rule: c.rule, text: onHeader(c.on, `units inch\n${c.bad}`) }))

// ASME Y14.5-2018 4.3.2 (from memory): on an inch sheet figures are inches; what is said of it speaks of no other unit.
it('says no length in millimetres of a part in inches, whichever rule speaks', () => {
  const raised = new Set<string>()
  const wrong: string[] = []
  for (const { rule, text } of inInches) {
    const subject = lazySubject(text, kernel)
    const asked = rules.filter((r) => r.name === rule && r.reads !== 'sheet')
    const found = asked.flatMap((r) => r.check(subject))
    if (found.length > 0) raised.add(rule)
    // a metric drill goes by its own size too: ⌀.268 (6.8 mm)
    for (const m of [...found, ...subject.brief.marks, ...subject.part.marks])
      if (/\d ?mm\b/.test(`${m.text} ${m.expected ?? ''}`.replace(/\(\d+(\.\d+)? mm\)/g, '')))
        wrong.push(`${rule}: ${m.text} (${m.expected})`)
    subject.free()
  }
  expect(wrong).toEqual([])
  // most rules speak of the same part in inches too
  expect(raised.size).toBeGreaterThan(90)
})

it('gives the bottom of a groove and the round it is cut into in the brief’s own unit', () => {
  const text = onHeader(
    'asme',
    'round bar ⌀1.00 × 3.00\ngroove outside: .10 wide, bottom ⌀1.20\n  left side .50 from left\n',
  )
  const subject = lazySubject(text, kernel)
  const said = subject.part.marks.filter((m) => m.rule === 'groove-depth').map((m) => m.text)
  subject.free()
  expect(said).toEqual(['The bottom of groove 1 is not inside the outside ⌀1.000 in.'])
})
