import type { Mark } from '../brief/mark.ts'
import type { Unit } from '../brief/size.ts'
import type { Vec3 } from '../geometry/vec.ts'
import type { Body } from '../kernel/body.ts'
import type { AssemblyItem } from '../part/part.ts'
import { interpenetrations } from '../views/exact/interpenetrations.ts'

/**
 * A mark for each two parts of an assembly whose solids take up the same room. The curve in which they cut each other is
 * an edge of neither part, and where an overlap is meant, as with threads and press fits, parts are drawn without it.
 */
export function overlapMarks(body: Body, items: readonly AssemblyItem[], unit: Unit, stop?: () => boolean): Mark[] {
  const nameOf = new Map(items.flatMap(({ name, instances }) => instances.flat().map((face) => [face, name] as const)))
  const byNames = new Map<string, { at: Vec3; count: number }>()
  for (const { faces, at } of interpenetrations(body, stop ? { stop } : {})) {
    const names = faces.map((face) => nameOf.get(face) ?? 'a solid').sort()
    const key = names[0] === names[1] ? `two of ${names[0]}` : names.join(' and ')
    const known = byNames.get(key)
    if (known) known.count++
    else byNames.set(key, { at, count: 1 })
  }
  return [...byNames].map(([names, { at, count }]) => ({
    rule: 'solids-overlap',
    weight: 'look again',
    text: `${capital(names)} take up the same room${count > 1 ? `, ${count} times` : ''}: at ${placeOf(at, unit)} one runs into the other. The curve in which they cut each other is not drawn.`,
    expected:
      'solids that touch without cutting into each other; or an overlap that is meant, as of a thread or a press fit',
    source: 'common practice, no source',
  }))
}

const placeOf = (at: Vec3, unit: Unit): string =>
  unit === 'inch'
    ? `${at.map((c) => Number((c / 25.4).toFixed(3))).join(', ')} in`
    : `${at.map((c) => Number(c.toFixed(2))).join(', ')} mm`

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
