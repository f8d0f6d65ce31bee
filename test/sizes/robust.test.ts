import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sized } from './sized.ts'

const folder = new URL('../../examples/', import.meta.url)
const briefs = readdirSync(folder)
  .filter((name) => name.endsWith('.brief'))
  .map((name) => readFileSync(new URL(name, folder), 'utf8'))

/** A brief with some statements left out, some doubled, and some numbers changed. */
const mangled = fc
  .record({
    text: fc.constantFrom(...briefs),
    drop: fc.array(fc.nat(40), { maxLength: 3 }),
    double: fc.array(fc.nat(40), { maxLength: 2 }),
    change: fc.array(fc.tuple(fc.nat(60), fc.constantFrom('0', '1', '7.5', '.25', '40', '1/3', '?')), { maxLength: 3 }),
    more: fc.constantFrom('', 'sizes baseline\n', 'sizes ordinate\n', 'sizes chain\n', 'sizes hole table\n'),
  })
  .map(({ text, drop, double, change, more }) => {
    const lines = text.split('\n').flatMap((line, i) => {
      if (drop.includes(i - 18)) return []
      return double.includes(i - 18) ? [line, line] : [line]
    })
    let n = 0
    const body = lines.join('\n').replace(/\d*\.?\d+(?=[ ,;×\n])/g, (number, at: number) => {
      if (at < text.indexOf('\n\n')) return number
      n++
      return change.find(([k]) => k === n)?.[1] ?? number
    })
    return `${body}\n${more}`
  })

describe('mangled briefs', () => {
  it('always yield sizes, marks and a proof whose counts agree with itself', () => {
    fc.assert(
      fc.property(mangled, (text) => {
        const { proof, dimensions } = sized(text).sizes
        expect(new Set(dimensions.map((d) => d.id)).size).toBe(dimensions.length)
        // Each freedom is fixed or missing; what is too much never counts as fixing.
        if (proof.missing.every((m) => m.element !== undefined))
          expect(proof.sizes + proof.implied + proof.missing.length).toBe(proof.freedoms)
        expect(proof.complete).toBe(proof.missing.length === 0 && proof.repeated.length === 0)
        for (const d of dimensions) expect(Number.isFinite(d.value), d.id).toBe(true)
      }),
      { seed: 20240611, numRuns: Number(process.env.MANGLED ?? 60) },
    )
  })
})
