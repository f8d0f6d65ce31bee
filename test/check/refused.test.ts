import { beforeAll, describe, expect, it } from 'vitest'
import { checkDrawing } from '../../src/check/check-drawing.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { lazySubject, onHeader } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

// Rules of the checker are the project's own; a keyseat's width without a tolerance is one of its marks.
describe('a statement that was refused', () => {
  const shaft = 'turned axis left-right\n  body ⌀30, 60 long'
  const marks = (key: string) => {
    const subject = lazySubject(onHeader('iso', `${shaft}\n${key}`), kernel)
    const found = checkDrawing(subject).map((m) => m.rule)
    const refused = subject.part.marks.filter((m) => m.weight === 'must change')
    subject.free()
    return { found, refused }
  }

  it('is judged no further: the cause is said', () => {
    const { found, refused } = marks('keyseat body, top: 8 wide × 4 deep × 80 long\n  right end at right face')
    expect(refused.length).toBeGreaterThan(0)
    expect(found).not.toContain('key-width-untoleranced')
  })

  it('is judged where it is made', () => {
    const { found, refused } = marks('keyseat body, top: 8 wide × 4 deep × 20 long\n  right end at right face')
    expect(refused.map((m) => m.text)).toEqual([])
    expect(found).toContain('key-width-untoleranced')
  })
})
