import { describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { openKernel } from '../../src/kernel/open.ts'

/*
 * A half section shows the inside on one side of the axis alone: the dimension line of a diameter there has one arrowhead
 * and runs a little past the axis (ISO 129-1:2018, ASME Y14.5-2018; from memory).
 */

const kernel = await openKernel()

function drawn(practice: string, lines: string) {
  const made = compile(
    `part      Bush\nunits     mm\npractice  ${practice}\nmaterial  S235JR\ngeneral   ISO 2768-mK\nscale     1:1\n${lines}views     section A-A half as front\n`,
    kernel,
  )
  kernel.free(made.part!.solid)
  const marks = [...made.part!.brief.marks, ...made.part!.marks, ...made.sizes!.marks]
  return { ...made, mustChange: marks.filter((m) => m.weight === 'must change') }
}

const BUSH =
  'turned axis left-right\n  a ⌀60, 40 long\nbore left: ⌀40 THRU\ngroove bore: 6 wide, bottom ⌀46\n  left side 12 from left\n'

describe.each(['ISO', 'ASME'])('a half section alone, %s', (practice) => {
  it('has the diameters inside it with one arrowhead, on lines past the axis', () => {
    const { sheet, sizes, mustChange } = drawn(practice, BUSH)
    expect(mustChange).toEqual([])
    expect(sizes!.proof.complete).toBe(true)
    const axis = sheet!.views.find((v) => v.id === 'section A-A')!.origin[1]
    const inside = sizes!.dimensions.filter((d) => d.measured.kind === 'linear' && d.measured.open)
    expect(inside.map((d) => d.value).sort()).toEqual([40, 46])
    const tops = inside.map((d) => {
      const own = sheet!.items.filter((i) => 'tie' in i && i.tie?.dimension === d.id)
      expect(
        own.filter((i) => i.item === 'fill' && i.kind === 'arrowhead'),
        d.id,
      ).toHaveLength(1)
      return Math.max(
        ...own.flatMap((i) =>
          i.item === 'stroke' && i.kind === 'dimension' && i.curve.kind === 'line' ? [i.curve.a[1], i.curve.b[1]] : [],
        ),
      )
    })
    // the inside is drawn below the axis
    expect(tops).toEqual([expect.closeTo(axis + 4, 6), expect.closeTo(axis + 4, 6)])
  })

  it('draws a hole across its plane in both halves', () => {
    const { views, sizes, mustChange } = drawn(
      practice,
      'turned axis left-right\n  body ⌀30, 60 long\nhole body, from front: ⌀5 THRU\n  20 from body left face\n',
    )
    expect(mustChange).toEqual([])
    expect(sizes!.proof.complete).toBe(true)
    const arcs = views!.views
      .find((v) => v.kind === 'section')!
      .lines.flatMap(({ kind, curve }) => (curve.kind === 'arc' && kind === 'visible' ? [curve] : []))
    expect(arcs.map((c) => c.r)).toEqual([2.5])
    expect(Math.abs(arcs[0]!.sweep)).toBeCloseTo(2 * Math.PI, 9)
  })

  it('has a tube’s wall where it is cut', () => {
    const { sizes, mustChange } = drawn(practice, 'tube ⌀80 outside, wall 10, 100 long, axis left-right\n')
    expect(mustChange).toEqual([])
    const wall = sizes!.dimensions.find((d) => d.value === 10)!
    expect(wall.measured).toMatchObject({ kind: 'linear' })
    const { a, b } = wall.measured as Extract<typeof wall.measured, { kind: 'linear' }>
    expect([a[1], b[1]].sort((p, q) => p - q)).toEqual([expect.closeTo(-40, 6), expect.closeTo(-30, 6)])
  })
})

/*
 * The line of a half section's plane turns its corner where the view looks along the axis, and its arrows point the way
 * that the section is looked at, clear of the line itself (ISO 128-3:2022, ASME Y14.3; from memory).
 */
describe.each(['ISO', 'ASME'])('the cutting-plane line of a half section, %s', (practice) => {
  it('stands in the view along the axis, its arrows clear of it', () => {
    const { sheet, views, marks, part } = compile(
      `part Cap\nunits mm\npractice ${practice}\nmaterial S235JR\ngeneral ISO 2768-m\nscale 1:1\ntube ⌀60 outside, wall 9, 75 long, axis up-down\ngroove outside: 3 wide, 1.5 deep\n  lower side 10 from bottom face\nviews front, top; section A-A half as right\n`,
      kernel,
    )
    kernel.free(part!.solid)
    const planes = (id: string) => views!.views.find((v) => v.id === id)!.cuttingPlanes
    expect(planes('front')).toEqual([])
    const [plane] = planes('top')
    expect(plane!.path).toHaveLength(3)
    expect(marks.filter((m) => m.text.includes('arrowhead stands on something'))).toEqual([])
    const { min, max } = sheet!.views.find((v) => v.id === 'top')!.box
    const own = sheet!.items.filter((i) => 'tie' in i && i.tie?.view === 'top')
    const heads = own.flatMap((i) =>
      i.item === 'fill' && i.kind === 'arrowhead' && i.tie?.dimension === undefined ? [i.outline] : [],
    )
    expect(heads).toHaveLength(2)
    for (const outline of heads) {
      for (const c of outline) {
        if (c.kind !== 'line') continue
        const [x, y] = c.a
        expect(x > max[0] || x < min[0] || y > max[1] || y < min[1], `${x}, ${y}`).toBe(true)
      }
    }
  })
})
