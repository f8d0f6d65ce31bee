import { beforeAll, describe, expect, it } from 'vitest'
import type { Rule, Subject } from '../../src/check/rule.ts'
import { rules } from '../../src/check/rules/rules.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { cases } from './cases.ts'
import { lazySubject, onHeader } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const named = (name: string): Rule => rules.find((r) => r.name === name)!

function asked(rule: Rule, on: 'iso' | 'asme', lines: string, spoil?: (sheet: Sheet) => Sheet) {
  const text = onHeader(on, lines)
  const subject: Subject & { free(): void } = lazySubject(text, kernel, spoil)
  const refused = [...subject.brief.marks, ...subject.part.marks].filter((m) => m.weight === 'must change')
  const found = rule.check(subject)
  subject.free()
  return { found, refused, text }
}

describe.each(cases.map((c) => [c.rule, c] as const))('%s', (name, { on, bad, good, spoilt }) => {
  it('is raised by the part that has the fault, with a place in the brief or about the whole part', () => {
    const { found, text } = asked(named(name), on, bad, spoilt?.by)
    expect(found.length).toBeGreaterThan(0)
    for (const f of found) {
      expect(f.text).toMatch(/[.?]$/)
      expect(f.expected, 'says what to write instead').toBeTruthy()
      if (f.span) {
        expect(f.span.from).toBeGreaterThanOrEqual(0)
        expect(f.span.to).toBeLessThanOrEqual(text.length)
        expect(f.span.to).toBeGreaterThan(f.span.from)
      }
    }
  })

  it('is silent on the near twin, which is built as it is written', () => {
    const { found, refused } = asked(named(name), on, good)
    expect(refused.map((m) => m.text)).toEqual([])
    expect(found.map((f) => f.text)).toEqual([])
  })
})

it('has sixty rules and more, each with a name of its own, a reason, a source and a case', () => {
  expect(rules.length).toBeGreaterThanOrEqual(60)
  expect(new Set(rules.map((r) => r.name)).size).toBe(rules.length)
  for (const rule of rules) {
    expect(rule.name).toMatch(/^[a-z]+(-[a-z]+)*$/)
    expect(rule.about.length, rule.name).toBeGreaterThan(40)
    expect(rule.source.length, rule.name).toBeGreaterThan(10)
  }
  const without = rules.map((r) => r.name).filter((n) => !cases.some((c) => c.rule === n))
  expect(without).toEqual([])
})
