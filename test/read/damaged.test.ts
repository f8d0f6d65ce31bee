import { beforeAll, describe, expect, it } from 'vitest'
import { compileSolid } from '../../src/app/compile-solid.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { shapes } from '../../src/kernel/shapes.ts'

let kernel: OcctKernel
let whole: string
beforeAll(async () => {
  kernel = await openKernel()
  const make = shapes(kernel)
  const solid = make.cut(make.box([0, 0, 0], [40, 30, 10]), make.cylinder([12, 15, 0], [0, 0, 1], 4, 10))
  whole = kernel.step(solid, { name: 'Plate', unit: 'mm' })
  kernel.free(solid)
})

/** A record's text, its values and the numbers of the records it refers to. */
function record(id: number | string) {
  const text = whole.match(new RegExp(`#${id} = [^;]*;`))![0]
  return { text, refs: [...text.matchAll(/#(\d+)/g)].slice(1).map((m) => Number(m[1])) }
}

/** The first face: its record, its only border and that border's four edges, its plane. */
function firstFace() {
  const face = Number(whole.match(/#(\d+) = ADVANCED_FACE/)![1])
  const [bound, plane] = record(face).refs as [number, number]
  const [loop] = record(bound).refs as [number]
  const edges = record(loop).refs
  return { face, bound, plane, loop, edges }
}
const swapped = (id: number, refs: readonly (number | string)[]) => {
  const { text } = record(id)
  return whole.replace(text, text.replace(/\(#[\d,#]*\)/, `(${refs.map((r) => `#${r}`).join(',')})`))
}

function drawn(text: string) {
  expect(text).not.toBe(whole)
  const before = kernel.kept()
  const drawing = compileSolid(text, kernel)
  const volume = drawing.part && kernel.properties(drawing.part.solid).volume
  if (drawing.part) kernel.free(drawing.part.solid)
  expect(kernel.kept()).toBe(before)
  const said = drawing.marks.filter((m) => m.rule !== 'measured-from-solid')
  return { ...drawing, volume, said: said.map((m) => `${m.weight}: ${m.text}`).join('\n') }
}

// What ISO 10303-42 asks of a face: a surface, and borders that run round once and close.
describe('a face that cannot be drawn is named with what is wrong, and the rest is drawn', () => {
  const lost = (change: () => string) => {
    const { face, plane } = firstFace()
    const { said, part, views, sizes, sheet } = drawn(change())
    expect(said).toContain(
      `must change: Plate: 1 face could not be read and is missing from the drawing: #${face} ADVANCED_FACE on `,
    )
    // six planes and a cylinder, less one
    expect(part!.body.faces).toHaveLength(6)
    expect(views!.views.length).toBeGreaterThan(1)
    expect(sizes!.proof.complete).toBe(false)
    expect(sheet!.items.some((i) => i.item === 'text' && i.role === 'stamp')).toBe(true)
    return said.replaceAll(`#${plane}`, 'PLANE').replaceAll(`#${face}`, 'FACE')
  }

  it('its surface is gone', () => {
    expect(lost(() => whole.replace(record(firstFace().plane).text, ''))).toMatch(/PLANE is not in the file/)
  })

  it('its surface is of no known kind', () => {
    const { plane } = firstFace()
    expect(lost(() => whole.replace(`#${plane} = PLANE`, `#${plane} = PLAIN`))).toMatch(/on PLAIN/)
  })

  it('its plane faces nowhere', () => {
    const [place] = record(firstFace().plane).refs as [number]
    const axis = record(place).refs[1]!
    const text = () => whole.replace(record(axis).text, `#${axis} = DIRECTION('',(0.,0.,0.));`)
    expect(lost(text)).toMatch(new RegExp(`#${axis} DIRECTION points nowhere`))
  })

  it('it has no border', () => {
    expect(lost(() => swapped(firstFace().face, []))).toMatch(/FACE ADVANCED_FACE has no border/)
  })

  it('its border has no edges, or is gone', () => {
    const { loop } = firstFace()
    expect(lost(() => swapped(loop, []))).toMatch(new RegExp(`#${loop} EDGE_LOOP has no edges`))
    expect(lost(() => whole.replace(record(loop).text, ''))).toMatch(new RegExp(`#${loop} is not in the file`))
  })

  it.each([
    ['0.', '0'],
    ['-4.', '-4'],
    ['1.E400', 'Infinity'],
  ])('its radius is %s', (radius, told) => {
    const text = whole.replace(/(CYLINDRICAL_SURFACE\('',#\d+,)[^)]*\)/, `$1${radius})`)
    const { said, part } = drawn(text)
    expect(said).toMatch(new RegExp(`#\\d+ ADVANCED_FACE on CYLINDRICAL_SURFACE #\\d+ \\(.*${told}\\)`))
    expect(part!.body.faces).toHaveLength(6)
  })

  it('its border runs there and back along one edge: it is degenerate', () => {
    const { loop, edges } = firstFace()
    const [curve] = record(edges[0]!).refs
    const way = record(edges[0]!).text.includes('.F.') ? 'T' : 'F'
    const back = `#9001 = ORIENTED_EDGE('',*,*,#${curve},.${way}.);`
    expect(lost(() => swapped(loop, [edges[0]!, 9001]).replace('DATA;', `DATA;\n${back}`))).toMatch(
      new RegExp(`its border #${loop} runs back along itself and holds no area`),
    )
  })

  it('an edge that two faces share is gone: both are named', () => {
    const [edge] = record(firstFace().edges[0]!).refs as [number]
    const { said, part } = drawn(whole.replace(record(edge).text, ''))
    expect(said).toMatch(/2 faces could not be read and are missing from the drawing: #\d+ .*; #\d+ /)
    expect(part!.body.faces).toHaveLength(5)
  })
})

describe('a border that is wrong is named, and drawn as well as may be', () => {
  it('open: an edge is left out', () => {
    const { face, loop, edges } = firstFace()
    const [a, , c, d] = edges
    const { said, sheet } = drawn(swapped(loop, [a!, c!, d!]))
    expect(said).toContain(
      `#${face} ADVANCED_FACE on PLANE #${firstFace().plane} (its border is open between #${a} and #${c})`,
    )
    expect(sheet).toBeDefined()
  })

  // The plate is 40 × 30 × 10 with a hole ⌀8: the kernel puts the edges in order again.
  it('out of order: its edges do not follow each other', () => {
    const { loop, edges } = firstFace()
    const [a, b, c, d] = edges
    const { said, volume } = drawn(swapped(loop, [a!, c!, b!, d!]))
    expect(said).toMatch(/^look again: Plate: 1 face is drawn as well as may be: .*its border is open between/)
    expect(volume).toBeCloseTo(40 * 30 * 10 - Math.PI * 16 * 10, 6)
  })

  it('crossing itself: two corners changed places', () => {
    const { edges } = firstFace()
    const [edge] = record(edges[0]!).refs as [number]
    const [a, b] = record(edge).refs.map((vertex) => record(vertex).refs[0]!) as [number, number]
    const at = (id: number) => record(id).text.replace(/^#\d+/, '')
    const text = whole.replace(record(a).text, `#${a}${at(b)}`).replace(record(b).text, `#${b}${at(a)}`)
    expect(drawn(text).said).toMatch(/its border crosses itself where #\d+ meets #\d+/)
  })
})

describe('a file that holds less than it should', () => {
  it('a solid without faces is said to be one', () => {
    const { said, sheet } = drawn(whole.replace(/CLOSED_SHELL\('',\([^)]*\)\)/, "CLOSED_SHELL('',())"))
    expect(said).toMatch(/must change: Plate has no faces; nothing of it can be drawn/)
    expect(sheet).toBeUndefined()
  })

  it.each([0.02, 0.2, 0.5, 0.8, 0.95])('cut off after %d of it, always says where', (share) => {
    const { said } = drawn(whole.slice(0, Math.floor(share * whole.length)))
    expect(said).toMatch(/must change: The file is cut off: it ends in line \d+ of its data, after \d+ records/)
    expect(said).not.toMatch(/undefined|null|Nullify|at .*:\d+/)
  })
})
