import type { Mark } from '../../../brief/mark.ts'

/** Marks of one rule beyond which the rest are folded behind the last one shown. */
const SHOWN = 2

/** Which marks are folded away behind others of the same rule and weight, and how many behind each. */
export function foldAlike(
  marks: readonly Mark[],
  unfolded: readonly string[],
): { readonly folded: ReadonlySet<number>; readonly alike: ReadonlyMap<number, number> } {
  const folded = new Set<number>()
  const alike = new Map<number, number>()
  const groups = new Map<string, number[]>()
  marks.forEach((mark, i) => {
    const key = `${mark.rule} ${mark.weight} ${mark.accepted !== undefined}`
    groups.set(key, [...(groups.get(key) ?? []), i])
  })
  for (const group of groups.values()) {
    // One alone behind another would take no less room than it saves.
    if (group.length <= SHOWN + 1 || unfolded.includes(marks[group[0]!]!.rule)) continue
    for (const i of group.slice(SHOWN)) folded.add(i)
    alike.set(group[SHOWN - 1]!, group.length - SHOWN)
  }
  return { folded, alike }
}
