import type { Brief } from './brief.ts'

/** True where both briefs say the same, wherever in their texts they say it: spans, texts and marks are left aside. */
export function sameBrief(a: Brief, b: Brief): boolean {
  return JSON.stringify(withoutPlaces(a)) === JSON.stringify(withoutPlaces(b))
}

/** The brief's value alone, in plain JSON with its keys in order. */
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
