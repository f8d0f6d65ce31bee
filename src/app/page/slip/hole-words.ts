/**
 * Which words of a hole's statement may come next, by what stands before the cursor: face, diameter, THRU or a depth,
 * then a seat for the head, then the places. The callout's order is that of ASME Y14.5-2018 on hole callouts (from
 * memory).
 */
export function nextHoleWords(before: string): readonly string[] {
  const callout = /:(.*)$/s.exec(before)?.[1]
  if (callout === undefined) return []
  const diameter = /(?:⌀|ø|dia\s*|drill\s*|tapped\s*)\S*\d/iu.exec(callout)
  if (!diameter) return ['dia', 'drill', 'tapped']
  const rest = callout.slice(diameter.index + diameter[0].length)
  if (!/\bthru\b|\bthrough\b|\bdeep\b|↧/iu.test(rest)) return ['THRU', 'deep']
  // Before the first semicolon or line break the callout goes on; after it stand the places.
  return /[;\n]/.test(rest) ? ['across', 'apart', 'centred', 'up', 'from'] : ['cbore', 'csk', 'spotface']
}
