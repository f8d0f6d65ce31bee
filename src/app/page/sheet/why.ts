import type { Drawn } from '../engine/messages.ts'

/** Why a line stands on the sheet, in a sentence; undefined for what is no line of a view. */
export function whyIsIt(drawn: Drawn, index: number): string | undefined {
  const item = drawn.sheet?.items[index]
  if (item?.item !== 'stroke' || !item.tie?.view || item.tie.dimension) return undefined
  const { tie, kind } = item
  if (kind === 'centre') {
    const ids = tie.features ?? []
    return ids.length > 0 ? `Centre line of ${ids.join(' and ')}.` : 'Middle line of what is the same on both sides.'
  }
  if (kind === 'hatching') return 'Hatching: material that the cutting plane goes through.'
  if (kind === 'cutting plane') return 'Cutting plane of a section.'
  const names = drawn.faceNames.map((n) => n || UNNAMED)
  const name = (face: number) => names[face] ?? UNNAMED
  const reasons = (tie.sources ?? []).map((source) => {
    if (source.edge === undefined) return `the outline of ${source.faces.map(name).join(', ')} as seen from here`
    return edgeReason(drawn.edges, names, source.edge)
  })
  const all = [...new Set(reasons)]
  if (all.length === 0) return undefined
  const more = all.length > 2 ? `, and ${all.length - 2} more in line with it` : ''
  const behind = kind === 'hidden' ? 'Hidden behind nearer faces: ' : ''
  return sentence(`${behind}${all.slice(0, 2).join('; ')}${more}.`)
}

const UNNAMED = 'an unnamed face'

/** What an edge of the solid is, in a sentence. */
export const edgeWords = (edges: Drawn['edges'], faces: readonly string[], edge: number): string =>
  sentence(`${edgeReason(edges, faces, edge)}.`)

function edgeReason(edges: Drawn['edges'], faces: readonly string[], edge: number): string {
  const [a, b] = edges[edge]?.faces ?? []
  const name = (face: number | undefined) => (face === undefined ? '' : (faces[face] ?? UNNAMED))
  return b === undefined || a === b ? `an edge of ${name(a)}` : `the edge where ${name(a)} meets ${name(b)}`
}

const sentence = (words: string): string => words[0]!.toUpperCase() + words.slice(1)
