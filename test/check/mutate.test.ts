import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { baseOf, catches } from './catch.ts'
import { drawingSaid } from './drawing-said.ts'
import { mutate, randomFrom } from './mutate.ts'
import { slip } from './mutate-text.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const files = readdirSync('examples').filter((f) => f.endsWith('.brief'))
const textOf = (file: string) => readFileSync(`examples/${file}`, 'utf8')

describe('faults put into good briefs', () => {
  it('are the same for the same seed', () => {
    const [a, b] = [1, 1].map((seed) => {
      const random = randomFrom(seed)
      return files.map((f) => mutate(textOf(f), random)?.text)
    })
    expect(a).toEqual(b)
    expect(a!.every((t, i) => t !== undefined && t !== textOf(files[i]!))).toBe(true)
  })

  // The whole run of three hundred is `bench/check.ts`; this is a sample of it with a seed of its own.
  it('are caught, 34 of 36 and more', () => {
    const random = randomFrom(20240211)
    const bases = new Map(files.map((f) => [f, baseOf(textOf(f), kernel)]))
    const missed: string[] = []
    for (let i = 0; i < 36; i++) {
      const file = files[i % files.length]!
      const mutation = mutate(textOf(file), random)!
      if (!catches(mutation, bases.get(file)!, kernel)) missed.push(`${file}: ${mutation.kind}: ${mutation.change}`)
    }
    expect(missed.length, missed.join('\n')).toBeLessThanOrEqual(2)
  }, 180_000)

  it('are not found where none was put in', () => {
    for (const file of files) {
      const base = baseOf(textOf(file), kernel)
      expect(catches({ kind: 'none', text: textOf(file), change: '' }, base, kernel), file).toBeUndefined()
    }
  }, 180_000)
})

describe('slips of the pen', () => {
  it('are the same for the same seed, of all kinds, and change one place of the text', () => {
    const made = [1, 1].map((seed) => {
      const random = randomFrom(seed)
      return Array.from({ length: 120 }, (_, i) => slip(textOf(files[i % files.length]!), random)!)
    })
    expect(made[0]).toEqual(made[1])
    expect(new Set(made[0]!.map((m) => m.kind)).size).toBe(14)
    for (const [i, { text }] of made[0]!.entries()) expect(text).not.toBe(textOf(files[i % files.length]!))
  })

  it('count only where the drawing says something else', () => {
    const text = textOf('base-plate.brief')
    const said = drawingSaid(text, kernel)
    const same = (after: string) => drawingSaid(after, kernel) === said
    expect(said).toBeDefined()
    expect(same(text.replace('# Ground plate', '# A plate'))).toBe(true)
    expect(same(text.replace('mm\n', 'mm\n\n'))).toBe(true)
    expect(same(text.replace('240 × 160', '160 × 240'))).toBe(false)
    expect(same(text.replace('⌀8 H7', '⌀8 H8'))).toBe(false)
    expect(same(text.replace('ISO 2768-mK', 'ISO 2768-fK'))).toBe(false)
  })
})
