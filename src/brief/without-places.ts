import type { Brief } from './brief.ts'

/**
 * What a brief says, wherever in its text it says it: plain JSON with its keys in order, without spans, text and
 * marks. Two briefs that say the same give equal values.
 */
export function withoutPlaces(brief: Brief): unknown {
  const { text: _text, marks: _marks, ...value } = brief
  return plain(value)
}

function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain)
  if (value === null || typeof value !== 'object') return value
  const out: Record<string, unknown> = {}
  for (const [key, inner] of Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (key === 'span' || key === 'said' || (key === 'of' && typeof inner === 'number') || inner === undefined) continue
    out[key] = plain(inner)
  }
  return out
}
