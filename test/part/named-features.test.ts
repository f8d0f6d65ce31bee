import { describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { drawViews } from '../../src/views/draw-views.ts'

const kernel = await openKernel()

function named(stock: string, ...names: string[]) {
  const brief = readBrief(`units mm\npractice ISO\n${stock}\n${names.map((n) => `datum A ${n}\n`).join('')}`)
  const part = buildPart(brief, kernel)
  kernel.free(part.solid)
  return { part, datums: part.named?.datums ?? [], marks: [...brief.marks, ...part.marks] }
}

const block = `block 80 × 50 × 30
holes A top: 2X ⌀9 THRU
  2 across 40 apart, centred; centred up
hole B top: M6 ↧ 12
  centred both ways
notch front, top: square, 12 wide, 8 deep
  10 from left`

describe('features by name', () => {
  it('finds holes by their letter, alone or with their kind', () => {
    const { datums, marks } = named(block, 'holes A', 'hole A', 'A')
    expect(marks).toEqual([])
    for (const d of datums) expect(d).toMatchObject({ id: 'hole A', kind: 'round', internal: true, feature: 'hole A' })
    expect(datums[0]!.size?.text).toBe('9')
    // Both holes' walls, and nothing else.
    expect(datums[0]!.faces).toHaveLength(2)
  })

  it('tells a thread from a plain hole', () => {
    const { datums } = named(block, 'hole B', 'hole A')
    expect(datums.map((d) => d?.threaded)).toEqual([true, undefined])
  })

  it('finds the one notch, faces with their outward normal, and the widths of the stock', () => {
    const { datums, marks } = named(block, 'notch', 'bottom', 'rear face', 'length', 'height')
    expect(marks).toEqual([])
    expect(datums[0]).toMatchObject({ kind: 'width', internal: true, size: { text: '12' } })
    expect(datums[1]).toMatchObject({ kind: 'plane' })
    expect(datums[1]!.direction[2]).toBe(-1)
    expect(datums[2]).toMatchObject({ kind: 'plane' })
    expect(datums[2]!.direction[1]).toBe(1)
    expect(datums[3]).toMatchObject({ kind: 'width', internal: false, size: { text: '80' } })
    expect(datums[4]).toMatchObject({ kind: 'width', size: { text: '30' } })
  })

  it('says of an edge which surfaces meet there, since an edge holds nothing', () => {
    const { marks } = named(block, 'top left edge', 'front right corner', 'hole B edge')
    expect(marks.map((m) => m.rule)).toEqual(['edge-not-held', 'edge-not-held', 'edge-not-held'])
    expect(marks.map((m) => m.expected)).toEqual([
      'the surface itself: top or left',
      'the surface itself: front or right',
      'the surface itself: hole B',
    ])
  })

  it('tells a threaded step from a plain one', () => {
    const { datums } = named(
      'turned axis left-right\n  screw M20 × 1.5 - 6g, 30 long\n  body ⌀30, 40 long',
      'screw',
      'body',
    )
    expect(datums.map((d) => d?.threaded)).toEqual([true, undefined])
  })

  it('finds turned steps before sides, shoulders, and what a disc and a tube are made of', () => {
    const shaft = 'turned axis left-right\n  left ⌀20, 30 long\n  body ⌀30, 40 long'
    const turned = named(shaft, 'left', 'left face', 'body left face')
    expect(turned.marks).toEqual([])
    expect(turned.datums.map((d) => [d?.kind, d?.size?.text])).toEqual([
      ['round', '20'],
      ['plane', undefined],
      ['plane', undefined],
    ])
    const tube = named('tube ⌀60 outside, ⌀40 inside, 30 long', 'outside', 'inside')
    expect(tube.datums.map((d) => [d?.kind, d?.internal, d?.size?.text])).toEqual([
      ['round', false, '60'],
      ['round', true, '40'],
    ])
    const disc = named('disc ⌀80 × 10\nspigot rear: ⌀40 × 5 high', 'spigot', 'rim', 'boss end')
    expect(disc.datums.map((d) => [d?.kind, d?.size?.text])).toEqual([
      ['round', '40'],
      ['round', '80'],
      ['plane', undefined],
    ])
  })

  it('asks which of several is meant, and offers the nearest name', () => {
    const two = named(`${block}\nnotch front, top: square, 6 wide, 8 deep\n  60 from left`, 'notch')
    expect(two.marks.map((m) => m.text)).toEqual(['“notch” could be any of 2: notch 1, notch 2.'])
    expect(two.marks[0]!.expected).toContain('notch A')
    expect(two.marks[0]!.expected).toContain('notch 1 or notch 2')
    const second = named(`${block}\nnotch front, top: square, 6 wide, 8 deep\n  60 from left`, 'notch 2')
    expect(second.marks).toEqual([])
    expect(second.datums[0]).toMatchObject({ id: 'notch 2', size: { text: '6' } })
    const none = named('block 80 × 50 × 30', 'bore')
    expect(none.marks.map((m) => m.text)).toEqual([
      'There is no surface, hole or other feature called “bore” on this part.',
    ])
    const chamfer = named('block 80 × 50 × 30\nround A corners: 4X R5', 'A')
    expect(chamfer.marks.map((m) => m.rule)).toEqual(['unknown-name'])
  })
})

describe('views of a flat part', () => {
  const plate = 'plate 100 × 60 × 10\nhole A top: ⌀20 THRU\n  centred both ways'
  // A plane's letter can only stand where the plane is seen edge-on (ISO 5459, ASME Y14.5-2018 6.3, from memory).
  it('gives a plate with a letter on its large face a second view, and one with a letter at its hole none', () => {
    const views = (name: string) => {
      const part = buildPart(readBrief(`units mm\npractice ISO\n${plate}\ndatum A ${name}\n`), kernel)
      const drawn = drawViews(part, kernel)
      kernel.free(part.solid)
      return drawn
    }
    expect(views('hole A').thicknessNote).toBeDefined()
    const edge = views('bottom')
    expect(edge.thicknessNote).toBeUndefined()
    expect(edge.views.filter((v) => v.kind === 'principal')).toHaveLength(2)
    // A narrow side is edge-on in the one view there is.
    expect(views('left').thicknessNote).toBeDefined()
  })
})
