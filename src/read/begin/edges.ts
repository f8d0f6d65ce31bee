import type { Body } from '../../kernel/body.ts'
import type { Recognised } from '../recognise/recognise.ts'
import type { FeatureWords } from './features.ts'
import type { StockWords } from './prism.ts'
import { statement, type Wording } from './wording.ts'

/** Chamfers, rounds and fillets along the edges of a flat stock, equal ones in one statement, by the faces they lie between. */
export function edgeWords(body: Body, found: Recognised, stock: StockWords, words: Wording): FeatureWords {
  const sets = new Map<string, { keyword: string; size: string; edges: Set<string>; faces: number[] }>()
  const put = (keyword: string, size: string, of: readonly number[]) => {
    const edge = edgeOf(body, found, stock, of)
    if (edge === undefined) return
    const key = `${keyword} ${size}`
    const set = sets.get(key) ?? { keyword, size, edges: new Set<string>(), faces: [] }
    set.edges.add(edge)
    set.faces.push(...of)
    sets.set(key, set)
  }
  for (const { leg, otherLeg, angle, faces } of found.chamfers) {
    if (faces.some((f) => stock.faces.has(f))) continue
    const other = otherLeg === undefined ? `${words.angle(angle)}°` : words.length(otherLeg)
    put('chamfer', `${words.length(leg)} × ${other}`, faces)
  }
  for (const { kind, radius, places } of found.blends)
    for (const { faces } of places)
      if (!faces.some((f) => stock.faces.has(f))) put(kind, `R${words.length(radius)}`, faces)
  const faces = new Set<number>()
  const lines = [...sets.values()].map(({ keyword, size, edges, faces: own }) => {
    for (const f of own) faces.add(f)
    return statement(keyword, `${edgesName([...edges], stock)}: ${size}`)
  })
  return { lines, faces }
}

/** `bottom edges` for all four of a face; the corners of an angle's legs by the legs. */
function edgesName(edges: readonly string[], stock: StockWords): string {
  const parts = edges.map((e) => e.split(' '))
  const shared = edges.length === 4 && parts[0]!.slice(0, -1).find((word) => parts.every((p) => p.includes(word)))
  if (shared) return `${shared} edges`
  const names = edges.map((e, i) => stock.cornerOf?.(parts[i]!.slice(0, -1)) ?? e)
  const legs = [...new Set(names)].flatMap((name) => {
    const ends = edges.filter((_, i) => names[i] === name)
    // one end of a leg is named with its side
    return ends.length > 1 || ends[0] === name ? [name] : [ends[0]!]
  })
  return legs.join(' and ')
}

/** `front right edge`: the two named faces that a broken edge lies between. */
function edgeOf(body: Body, found: Recognised, stock: StockWords, faces: readonly number[]): string | undefined {
  const beside = faces.flatMap((f) => found.beside.get(f) ?? []).filter((n) => !faces.includes(n.face))
  const count = new Map<string, number>()
  for (const { face, edge } of beside) {
    const name = stock.nameOf(face)
    if (name === undefined) continue
    const { curve } = body.edges[edge]!
    const length = curve.kind === 'line' ? Math.hypot(...curve.a.map((c, i) => c - curve.b[i]!)) : 0
    count.set(name, Math.max(count.get(name) ?? 0, length))
  }
  // its ends touch others, along shorter borders
  const named = [...count].sort((a, b) => b[1] - a[1]).slice(0, 2)
  if (named.length < 2) return undefined
  return `${named
    .map(([name]) => name)
    .sort((a, b) => RANK.indexOf(a) - RANK.indexOf(b))
    .join(' ')} edge`
}

const RANK = ['right', 'left', 'rear', 'front', 'bottom', 'top'].reverse()
