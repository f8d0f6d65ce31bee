import type { Context } from '../choose/context.ts'
import type { HoleTable } from '../dimension.ts'
import { framedSizes } from './basic-sizes.ts'

/**
 * What a hole table cannot box: that the coordinates of holes held in position are basic (ASME Y14.5-2018 3.15: a note
 * may say so; from memory). Holes are named by the tags of the table.
 */
export function tableNotes(context: Context, tables: readonly HoleTable[]): string[] {
  const framed = new Set(framedSizes(context.part).flatMap(({ chosen }) => (chosen.group ? [chosen.group] : [])))
  const iso = context.header.practice === 'ISO'
  return tables.flatMap(({ rows }) => {
    const held = rows.filter((r) => framed.has(r.feature)).map((r) => r.tag)
    if (held.length === 0) return []
    const of = held.length === rows.length ? '' : iso ? ` of ${held.join(', ')}` : ` OF ${held.join(', ')}`
    return [
      iso ? `x and y${of} in the hole table are theoretically exact.` : `X AND Y${of} IN THE HOLE TABLE ARE BASIC.`,
    ]
  })
}
