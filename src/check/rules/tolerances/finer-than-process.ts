import { sizesOf } from '../../measure/all-sizes.ts'
import { ownDeviations, width } from '../../measure/deviation.ts'
import { quoted, said } from '../../measure/said.ts'
import type { BriefRule } from '../../rule.ts'

/** What a process holds as a matter of course, whole width in mm, at the sizes of a hand-sized part. */
const processes: readonly (readonly [form: RegExp, name: string, holds: number])[] = [
  [/\b(flame|oxy-?fuel|torch)[- ]?cut|\bcut by flame|\bflame\b/i, 'flame cutting', 2],
  [/\bplasma\b/i, 'plasma cutting', 1],
  [/\b(water ?jet)\b/i, 'water-jet cutting', 0.2],
  [/\blaser\b/i, 'laser cutting', 0.2],
  [/\bsawn|saw[- ]cut|\bsaw\b/i, 'sawing', 0.8],
  [/\bpunched|stamped|blanked\b/i, 'punching', 0.15],
  [/\bsand[- ]cast|as cast\b/i, 'sand casting', 1.5],
  [/\bforged\b/i, 'forging', 1.5],
  [/\bdrilled\b/i, 'drilling', 0.1],
]

export const rule: BriefRule = {
  name: 'finer-than-process',
  weight: 'must change',
  source:
    'ISO 9013:2017 for thermal cutting, ISO 8062-3 for castings, Machinery’s Handbook, tolerances by process (from memory, rounded)',
  about: 'A tolerance that the named process cannot hold means a second operation that nobody has asked for.',
  reads: 'brief',
  check: ({ brief }) => {
    const said1 = [brief.header.material, ...brief.header.notes].flatMap((w) => (w ? [w.text] : []))
    // The finest of the processes named: one is enough to hold the size.
    if (said1.some((t) => /\b(machined|milled|turned|ground|bored|reamed)\b/i.test(t))) return []
    const named = processes.filter(([form]) => said1.some((t) => form.test(t))).sort((a, b) => a[2] - b[2])[0]
    if (!named) return []
    const [, name, holds] = named
    return sizesOf(brief).flatMap(({ size }) => {
      const own = ownDeviations(size)
      if (!own || width(own) >= holds) return []
      return [
        {
          text: `${quoted(size)} is finer than ${name} holds, which is about ${said(holds, size.unit)} in all.`,
          span: size.span,
          expected: 'a coarser tolerance, or the process that holds this one',
          numbers: [quoted(size), name],
        },
      ]
    })
  },
}
