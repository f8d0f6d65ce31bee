import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { dot } from '../../src/geometry/vec3.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import type { Part } from '../../src/part/part.ts'
import { plainText } from '../../src/sizes/callout/plain-text.ts'
import { chooseSizes } from '../../src/sizes/choose-sizes.ts'
import type { Dimension, SizeSet } from '../../src/sizes/dimension.ts'
import { makingOf } from '../../src/sizes/proof/making.ts'
import { modelOf } from '../../src/sizes/proof/model.ts'
import { prove } from '../../src/sizes/proof/prove.ts'
import { rankOf } from '../../src/sizes/proof/rank.ts'
import { drawViews } from '../../src/views/draw-views.ts'
import type { ViewSet } from '../../src/views/view.ts'

const folder = new URL('../../examples/', import.meta.url)
const kernel = await openKernel()
const names = readdirSync(folder).filter((name) => name.endsWith('.brief'))

describe.each(names)('%s', (name) => {
  let part: Part
  let views: ViewSet
  let sizes: SizeSet
  let noted: { id: string; text: string; states: NonNullable<Dimension['states']> }[]

  beforeAll(() => {
    part = buildPart(readBrief(readFileSync(new URL(name, folder), 'utf8')), kernel)
    views = drawViews(part, kernel)
    sizes = chooseSizes(part, views)
    noted = notesOf(part, views)
  })

  const proofOf = (dimensions: readonly Dimension[]) => prove(part, dimensions, { notes: noted, tables: sizes.tables })

  it('is complete, and sizes and conditions add up to its freedoms', () => {
    const { proof } = sizes
    expect({ missing: proof.missing, repeated: proof.repeated }).toEqual({ missing: [], repeated: [] })
    expect(proof.complete).toBe(true)
    expect(proof.sizes + proof.implied).toBe(proof.freedoms)
    expect(proof.sentence).toBe(
      `complete: ${proof.sizes} sizes and ${proof.implied} implied conditions fix ${proof.freedoms} freedoms`,
    )
  })

  it('earns no marks', () => {
    expect([...part.brief.marks, ...part.marks, ...sizes.marks].map((m) => m.text)).toEqual([])
  })

  it('has the sizes of each feature that is seen end-on together in one view', () => {
    const shown = new Map<string, Set<string>>()
    for (const d of sizes.dimensions) {
      const kind = part.features.find((f) => f.id === d.feature)?.kind
      if (!d.feature || (kind !== 'hole' && kind !== 'slot')) continue
      shown.set(d.feature, (shown.get(d.feature) ?? new Set()).add(d.view))
    }
    for (const [feature, in_] of shown) expect([...in_], feature).toHaveLength(1)
  })

  it('is missed by the proof when any one size is left out', () => {
    for (const one of sizes.dimensions) {
      if (one.reference || !one.states?.length) continue
      const less = proofOf(sizes.dimensions.filter((d) => d !== one))
      expect(less.complete, `without ${plainText(one.callout)} (${one.id})`).toBe(false)
      expect(less.missing.length, `without ${plainText(one.callout)} (${one.id})`).toBeGreaterThan(0)
    }
  })

  it('is too much for the proof with any one size twice', () => {
    for (const one of sizes.dimensions) {
      if (one.reference || !one.states?.length) continue
      const more = proofOf([...sizes.dimensions, { ...one, id: `${one.id} again` }])
      expect(more.complete, `with ${plainText(one.callout)} twice`).toBe(false)
      expect(more.repeated.flatMap((r) => r.dimensions)).toContain(`${one.id} again`)
    }
  })

  it('is too much for the proof with any size between two planes or axes that are already fixed', () => {
    const model = modelOf(part.body, makingOf(part))
    const bars = model.unknowns.filter((u) => u.kind === 'position' && u.elements.length > 0)
    for (const a of bars) {
      for (const b of bars) {
        if (a.id >= b.id || a.along !== b.along || a.along === undefined) continue
        const direction = [0, 1, 2].map((i) => (i === a.along ? 1 : 0)) as unknown as [number, number, number]
        const reach = (u: typeof a) => {
          const { surface } = model.elements[u.elements[0]!]!
          const at = surface.kind === 'spline' ? [0, 0, 0] : [...surface.axes.origin]
          at[a.along!] = model.values[u.id]!
          return { at: at as unknown as [number, number, number], name: `${u.id}` }
        }
        const extra: Dimension = {
          ...sizes.dimensions[0]!,
          id: 'extra',
          reference: false,
          states: [{ kind: 'distance', direction, from: reach(a), to: reach(b) }],
        }
        if (Math.abs(model.values[a.id]! - model.values[b.id]!) < 1e-4) continue
        const proof = proofOf([...sizes.dimensions, extra])
        expect(proof.complete, `${a.id} to ${b.id}`).toBe(false)
      }
    }
  })

  it('is judged the same by the rank of its whole Jacobian', () => {
    const all = [...sizes.dimensions, ...noted.map((n) => ({ ...n, reference: false }))]
    expect(rankOf(part.body, makingOf(part), all)).toMatchObject({ missing: 0, repeated: 0 })
    const [first] = sizes.dimensions.filter((d) => !d.reference && d.states?.length)
    const less = all.filter((d) => d !== first)
    expect(rankOf(part.body, makingOf(part), less).missing).toBe(
      proofOf(sizes.dimensions.filter((d) => d !== first)).missing.length,
    )
  })

  it('measures on paper what it says, in millimetres', () => {
    for (const d of sizes.dimensions) {
      const frame = views.views.find((v) => v.id === d.view)!.frame
      if (d.measured.kind === 'linear') {
        const { a, b, along } = d.measured
        const length = Math.abs((b[0] - a[0]) * along[0] + (b[1] - a[1]) * along[1])
        expect(Math.hypot(...along)).toBeCloseTo(1, 9)
        expect(length, d.id).toBeCloseTo(d.value, 4)
        const said = d.states?.find((s) => s.kind === 'distance')
        if (said?.kind === 'distance' && !said.from.middle && !said.to.middle) {
          // The ends on paper are the levels that the proof hears.
          expect(Math.abs(dot(said.direction, frame.toViewer)), d.id).toBeLessThan(1e-6)
        }
      }
      if (d.measured.kind === 'diameter') expect(2 * d.measured.radius, d.id).toBeCloseTo(d.value, 4)
      if (d.measured.kind === 'radius' && d.states?.some((x) => x.kind === 'radius'))
        expect(d.measured.radius, d.id).toBeCloseTo(d.value, 4)
      if (d.measured.kind === 'angle') expect((Math.abs(d.measured.sweep) * 180) / Math.PI).toBeCloseTo(d.value, 4)
    }
  })

  it('keeps each number of the brief as typed, in a size of its own span', () => {
    const { text } = part.brief
    for (const d of sizes.dimensions) {
      if (!d.span || d.derived || !d.states?.some((x) => x.kind !== 'full round')) continue
      const typed = text.slice(d.span.from, d.span.to)
      const digits = /[\d.,/-]*\d/.exec(typed)?.[0].replace(/^0(?=[.,])/, '') ?? typed
      const shown = plainText(d.callout).replaceAll(',', '.')
      if (/\d/.test(digits) && !/\//.test(shown)) expect(shown, d.id).toContain(digits.replaceAll(',', '.'))
    }
  })

  it('points notes at visible circles and arcs only', () => {
    const excused = sizes.marks.filter((m) => m.rule === 'size-to-hidden-line').map((m) => m.text)
    for (const d of sizes.dimensions) {
      if (d.measured.kind !== 'leader' || excused.some((text) => text.startsWith(`${plainText(d.callout)} `))) continue
      const { lines } = views.views.find((v) => v.id === d.view)!
      for (const target of d.measured.targets) {
        const seen = lines.some(({ kind, curve }) => {
          if (kind !== 'visible') return false
          if (target.kind === 'circle') {
            if (curve.kind !== 'arc') return false
            const off = Math.hypot(curve.c[0] - target.centre[0], curve.c[1] - target.centre[1])
            return off < 1e-4 && Math.abs(curve.r - target.radius) < 1e-4
          }
          if (curve.kind !== 'line') return false
          const [p, q] = [curve.a, curve.b].map((e) => Math.hypot(e[0] - target.at[0], e[1] - target.at[1]))
          return Math.abs(p! + q! - Math.hypot(curve.b[0] - curve.a[0], curve.b[1] - curve.a[1])) < 1e-4
        })
        expect(seen, `${plainText(d.callout)} in ${d.view}`).toBe(true)
      }
    }
  })

  it('gives every size an id of its own', () => {
    expect(new Set(sizes.dimensions.map((d) => d.id)).size).toBe(sizes.dimensions.length)
  })
})

/** The thickness said in the title area, as the proof hears it. */
function notesOf(part: Part, views: ViewSet): { id: string; text: string; states: NonNullable<Dimension['states']> }[] {
  if (!views.thicknessNote) return []
  const chosen = part.chosen.find((c) => c.kind === 'thickness')
  if (chosen?.kind !== 'thickness') return []
  const at = (id: string) => {
    const datum = part.data.find((d) => d.id === id)!
    return { at: datum.point, name: id }
  }
  return [
    {
      id: 'note',
      text: views.thicknessNote,
      states: [{ kind: 'distance', direction: chosen.direction, from: at(chosen.from), to: at(chosen.to) }],
    },
  ]
}
