import type { Drawn } from '../engine/messages.ts'

/** Why a line stands on the sheet, in a sentence; undefined for what is no line of a view. */
export function whyIsIt(drawn: Drawn, index: number): string | undefined {
  const item = drawn.sheet?.items[index]
  if (item?.item !== 'stroke' || !item.tie?.view || item.tie.dimension) return undefined
  const { tie, kind } = item
  if (kind === 'centre') {
    const ids = tie.features ?? []
    const words = ids.map((id) => drawn.features.find((f) => f.id === id)?.words ?? (id === 'axis' ? 'the axis' : id))
    return ids.length > 0
      ? `Centre line of ${listed([...new Set(words)])}.`
      : 'Middle line of what is the same on both sides.'
  }
  if (kind === 'hatching') return 'Hatching: material that the cutting plane goes through.'
  if (kind === 'cutting plane') return 'Cutting plane of a section.'
  const names = drawn.faceNames.map((n) => n || UNNAMED)
  const name = (face: number) => names[face] ?? UNNAMED
  const reasons = (tie.sources ?? []).map((source) => {
    if (source.edge === undefined) return `the outline of ${source.faces.map(name).join(', ')} as seen from here`
    // Where the surface only closes on itself: what is seen is its outline.
    const [a, b] = drawn.edges[source.edge]?.faces ?? []
    if (a !== undefined && (b === undefined || a === b)) return `the outline of ${name(a)} as seen from here`
    return edgeReason(drawn.edges, names, source.edge)
  })
  const all = [...new Set(reasons)]
  if (all.length === 0) return undefined
  const more = all.length > 2 ? `, and ${all.length - 2} more in line with it` : ''
  const behind = kind === 'hidden' ? 'Hidden behind nearer faces: ' : ''
  return sentence(`${behind}${all.slice(0, 2).join('; ')}${more}.`)
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

const UNNAMED = 'an unnamed face'

/** What an edge of the solid is, in a sentence. */
export const edgeWords = (edges: Drawn['edges'], faces: readonly string[], edge: number): string =>
  sentence(`${edgeReason(edges, faces, edge)}.`)

function edgeReason(edges: Drawn['edges'], faces: readonly string[], edge: number): string {
  const [a, b] = edges[edge]?.faces ?? []
  const name = (face: number | undefined) => (face === undefined ? '' : (faces[face] ?? UNNAMED))
  if (b === undefined || a === b) return `an edge of ${name(a)}`
  // One order for a pair of names, so that like edges are told once.
  const [one, other] = [name(a), name(b)].sort((p, q) => p.length - q.length || (p < q ? -1 : 1))
  return `the edge where ${one} meets ${other}`
}

const sentence = (words: string): string => words[0]!.toUpperCase() + words.slice(1)
