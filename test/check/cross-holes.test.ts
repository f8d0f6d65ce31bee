import { beforeAll, describe, expect, it } from 'vitest'
import { rules } from '../../src/check/rules/rules.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { lazySubject, onHeader } from './subject.ts'

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

function asked(name: string, lines: string) {
  const subject = lazySubject(onHeader('iso', lines), kernel)
  const found = rules.find((r) => r.name === name)!.check(subject)
  subject.free()
  return found
}

// The wall before a cross hole whose axis the drill meets is its distance less its radius: 20 − 8 = 12 mm.
const block = 'block 80 × 50 × 30'
const cross = 'hole B top: ⌀16 THRU\n  20 from left; centred up'
const cut = (size: string) => `hole C left: ${size}\n  centred both ways`

describe('a blind hole that ends in a hole across it', () => {
  it.each([
    ['tapped, one depth', `${cross}\n${cut('M12 ↧ 13')}`],
    ['tapped, stated before it', `${cut('M12 ↧ 13')}\n${cross}`],
    ['tapped, two depths', `${cross}\n${cut('M12 ↧ 6, drill ⌀10.2 ↧ 13')}`],
    ['drilled, by its point alone', `${cross}\n${cut('⌀12 ↧ 10')}`],
  ])('%s', (_, holes) => {
    const found = asked('drill-breaks-sideways', `${block}\n${holes}`)
    expect(found.map((f) => f.text)).toEqual([
      'The bottom of hole C breaks into the hole B: the wall there is 12 mm thick.',
    ])
  })

  it.each([
    ['stops before it', `${block}\n${cross}\n${cut('⌀12 ↧ 8')}`],
    ['passes beside it', `${block}\n${cross}\nhole C left: ⌀6 ↧ 30\n  centred up; 8 from front`],
    [
      'is drilled on with a smaller drill',
      'turned axis left-right\n  body ⌀50, 40 long\nhole A left: ⌀20 ↧ 15\n  on axis\nhole B right: ⌀8 THRU\n  on axis',
    ],
  ])('is silent where it %s', (_, lines) => {
    expect(asked('drill-breaks-sideways', lines)).toEqual([])
  })
})

describe('the depth of drill offered for one depth of a tapped hole', () => {
  it('is 4 pitches more where there is room', () => {
    const [found] = asked('tap-drill-depth-missing', `${block}\n${cut('M12 ↧ 13')}`)
    expect(found?.mends?.map((m) => m.text)).toEqual(['13, drill ⌀10.2 ↧ 20'])
  })

  it.each([
    ['a hole across it', `${block}\n${cross}\n${cut('M12 ↧ 7')}`],
    ['the far side', `block 18 × 50 × 30\n${cut('M12 ↧ 10')}`],
  ])('is not offered where it would break into %s', (_, lines) => {
    const [found] = asked('tap-drill-depth-missing', lines)
    expect(found?.text).toMatch(/one depth.*breaks through/)
    expect(found?.mends).toBeUndefined()
  })
})
