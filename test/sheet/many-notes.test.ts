import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { letteringBox } from '../../src/sheet/lettering/lettering.ts'

const bracket = readFileSync(new URL('../../examples/vent-bracket.brief', import.meta.url), 'utf8')
let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

function withNotes(count: number) {
  const own = Array.from({ length: count }, (_, i) => `note      Hold gauge ${i + 1} against the bend.\n`).join('')
  const { part, sheet, marks } = compile(bracket + own, kernel)
  kernel.free(part!.solid)
  const notes = sheet!.items.flatMap((i) =>
    i.item === 'text' && i.role === 'note' ? [{ text: i.text, box: letteringBox(i.text, i) }] : [],
  )
  return { sheet: sheet!, notes, marks }
}

describe('notes', () => {
  it.each([40, 60, 300])('%i of them stand whole within the paper, in order, on a sheet large enough', (count) => {
    const { sheet, notes, marks } = withNotes(count)
    for (let i = 1; i <= count; i++)
      expect(notes.some((n) => n.text.toUpperCase().includes(`GAUGE ${i} AGAINST`))).toBe(true)
    for (const { box } of notes) {
      expect(box.min[0]).toBeGreaterThan(0)
      expect(box.min[1]).toBeGreaterThan(0)
      expect(box.max[0]).toBeLessThan(sheet.width)
      expect(box.max[1]).toBeLessThan(sheet.height)
    }
    for (const [i, a] of notes.entries())
      for (const b of notes.slice(i + 1))
        expect(
          a.box.min[0] < b.box.max[0] &&
            b.box.min[0] < a.box.max[0] &&
            a.box.min[1] < b.box.max[1] &&
            b.box.min[1] < a.box.max[1],
          `${a.text} over ${b.text}`,
        ).toBe(false)
    expect(marks.filter((m) => m.rule === 'notes-left-off')).toEqual([])
  })

  it('that outgrow the largest sheet are left off and marked', () => {
    const { notes, marks } = withNotes(2000)
    expect(notes).toEqual([])
    const [first, ...others] = marks.filter((m) => m.weight === 'must change')
    expect([first?.rule, others]).toEqual(['notes-left-off', []])
    expect(first?.text).toMatch(/^The 2002 notes do not fit the largest sheet and are left off\./)
  })
})
