import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../src/app/compile.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { auditSizes } from '../../src/sheet/placement/audit.ts'
import { writeSvg } from '../../src/write/svg.ts'

const folder = new URL('../../examples/', import.meta.url).pathname
const names = readdirSync(folder)
  .filter((file) => file.endsWith('.brief'))
  .map((file) => file.replace('.brief', ''))

let kernel: OcctKernel
beforeAll(async () => {
  kernel = await openKernel()
})

const draw = (name: string) => {
  const drawing = compile(readFileSync(join(folder, `${name}.brief`), 'utf8'), kernel)
  if (drawing.part) kernel.free(drawing.part.solid)
  return drawing
}

describe.each(names)('%s', (name) => {
  it('is drawn complete, with nothing that must change', () => {
    const { marks, sizes } = draw(name)
    expect(marks.filter((mark) => mark.weight === 'must change').map((mark) => mark.text)).toEqual([])
    expect(sizes?.proof.complete).toBe(true)
  })

  it('has no text on text, no text on a line, no arrowhead on anything', () => {
    const { sheet, brief } = draw(name)
    const { textOnText, textOnLine, arrowCollisions, findings } = auditSizes(sheet!, brief.header.practice)
    expect({ textOnText, textOnLine, arrowCollisions }, JSON.stringify(findings)).toEqual({
      textOnText: 0,
      textOnLine: 0,
      arrowCollisions: 0,
    })
  })

  // The reference pictures are refreshed by `npm run issue-examples`, and looked at before they are committed.
  it('looks as its issued sheet', () => {
    const issued = readFileSync(join(folder, 'issued', `${name}.svg`), 'utf8')
    expect(writeSvg(draw(name).sheet!) === issued).toBe(true)
  })
})

it('covers both practices evenly', () => {
  const practices = names.map(
    (name) => compile(readFileSync(join(folder, `${name}.brief`), 'utf8'), kernel).brief.header,
  )
  expect(practices.filter((h) => h.practice === 'ASME' && h.units === 'inch')).toHaveLength(6)
  expect(practices.filter((h) => h.practice === 'ISO' && h.units === 'mm')).toHaveLength(6)
})
