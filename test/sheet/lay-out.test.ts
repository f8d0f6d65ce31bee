import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Mark } from '../../src/brief/mark.ts'
import { readBrief } from '../../src/brief/read.ts'
import type { Box2 } from '../../src/geometry/evaluate.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import type { Part } from '../../src/part/part.ts'
import { layOut } from '../../src/sheet/lay-out.ts'
import { letteringBox } from '../../src/sheet/lettering/lettering.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { chooseSizes } from '../../src/sizes/choose-sizes.ts'
import type { SizeSet } from '../../src/sizes/dimension.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import type { ViewSet } from '../../src/views/view.ts'
import { isoHeader, partWith, principal, words } from './fixtures.ts'

const overlap = (a: Box2, b: Box2) =>
  a.min[0] < b.max[0] - 1e-6 && b.min[0] < a.max[0] - 1e-6 && a.min[1] < b.max[1] - 1e-6 && b.min[1] < a.max[1] - 1e-6
const boxesOf = (sheet: Sheet, role: string) =>
  sheet.items.flatMap((i) => (i.item === 'text' && i.role === role ? [letteringBox(i.text, i)] : []))
const stamped = (sheet: Sheet) => boxesOf(sheet, 'stamp').length > 0

describe('a sheet with sizes', () => {
  let sizes: SizeSet
  let laid: ReturnType<typeof layOut>
  let again: ReturnType<typeof layOut>
  let part: Part
  let views: ViewSet
  beforeAll(async () => {
    const kernel = await openKernel()
    const text = readFileSync(new URL('../../examples/vent-bracket.brief', import.meta.url), 'utf8')
    part = buildPart(readBrief(text), kernel)
    views = drawViews(part, kernel)
    sizes = chooseSizes(part, views)
    laid = layOut(part, views, sizes)
    again = layOut(part, views, sizes)
  })

  it('is stamped preliminary where any phase says that something must change, and only there', () => {
    const mark = (weight: Mark['weight']): Mark => ({
      rule: 'hole-off-part',
      weight,
      text: 'Hole 1 lies off the part.',
    })
    const wrong = mark('must change')
    const withBrief = { ...part, brief: { ...part.brief, marks: [wrong] } }
    expect(stamped(laid.sheet)).toBe(false)
    expect(stamped(layOut(withBrief, views, sizes).sheet)).toBe(true)
    expect(stamped(layOut({ ...part, marks: [wrong] }, views, sizes).sheet)).toBe(true)
    expect(stamped(layOut(part, { ...views, marks: [wrong] }, sizes).sheet)).toBe(true)
    expect(stamped(layOut(part, views, { ...sizes, marks: [wrong] }).sheet)).toBe(true)
    expect(stamped(layOut({ ...part, marks: [mark('look again')] }, views, sizes).sheet)).toBe(false)
  })

  it('is stamped where the brief asks for a sheet that cannot be had', () => {
    const tooSmall = {
      ...part.brief.header,
      sheet: words('A'),
      scale: { paper: 10, part: 1, span: { from: 0, to: 1 } },
    }
    const asked = { ...part, brief: { ...part.brief, header: tooSmall } }
    const { sheet, marks } = layOut(asked, views, sizes)
    expect(marks.map((m) => m.rule)).toContain('sheet-too-small')
    expect(stamped(sheet)).toBe(true)
  })

  it('shows every size, or names the ones left off', () => {
    const shown = new Set(laid.sheet.items.flatMap((i) => (i.tie?.dimension ? [i.tie.dimension] : [])))
    const left = sizes.dimensions.filter((d) => !shown.has(d.id))
    expect(left.length).toBe(laid.marks.filter((m) => /left off/.test(m.text)).length)
    expect(shown.size).toBeGreaterThan(5)
  })

  it('keeps sizes off the title block, the notes and the labels', () => {
    const sizesAt = boxesOf(laid.sheet, 'dimension')
    const others = ['title block', 'note', 'label', 'stamp'].flatMap((role) => boxesOf(laid.sheet, role))
    expect(sizesAt.length).toBeGreaterThan(5)
    for (const a of sizesAt) for (const b of others) expect(overlap(a, b)).toBe(false)
  })

  it('is stamped exactly when its sizes are not complete or not all drawn', () => {
    const left = laid.marks.some((m) => /left off/.test(m.text))
    expect(stamped(laid.sheet)).toBe(!sizes.proof.complete || left)
  })

  it('comes out the same every time', () => {
    expect(JSON.stringify(again)).toBe(JSON.stringify(laid))
  })

  it('ties the words of the title block to their places in the brief', () => {
    const text = readFileSync(new URL('../../examples/vent-bracket.brief', import.meta.url), 'utf8')
    const number = laid.sheet.items.find((i) => i.item === 'text' && i.text === 'VB-1042')
    const span = number?.tie?.span
    expect(span && text.slice(span.from, span.to)).toBe('VB-1042')
  })
})

it('moves a view where the brief says so, and what stands in projection with it', () => {
  const part = partWith({ ...isoHeader, sheet: words('A2'), scale: { paper: 1, part: 1, span: { from: 0, to: 1 } } })
  const views = { views: [principal('front', [0, 0, 60, 30], []), principal('top', [0, 0, 60, 20], [])], reasons: [] }
  const size = (value: number) => ({
    text: String(value),
    value,
    form: 'whole' as const,
    decimals: 0,
    span: { from: 0, to: 1 },
  })
  const moved = {
    ...part,
    brief: {
      ...part.brief,
      places: [
        { kind: 'view' as const, view: 'front' as const, across: size(12), up: size(-7), span: { from: 0, to: 1 } },
      ],
    },
  }
  const before = layOut(part, views, undefined).sheet.views
  const after = layOut(moved, views, undefined).sheet.views
  expect(after[0]!.origin[0] - before[0]!.origin[0]).toBeCloseTo(12, 9)
  expect(after[0]!.origin[1] - before[0]!.origin[1]).toBeCloseTo(-7, 9)
  expect(after[1]!.origin[0]).toBe(after[0]!.origin[0])
  expect(after[1]!.origin[1]).toBe(before[1]!.origin[1])
})
