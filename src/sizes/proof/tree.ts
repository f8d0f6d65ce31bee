import type { Equation } from './condition.ts'

/**
 * Union-find over the unknowns of a block whose conditions are all plain distances. The block is fixed exactly once
 * when the distances are a spanning tree from the datum over all its planes and axes, and every closed loop is one
 * size too many.
 */
class Tree {
  private readonly parent = new Map<number, number>()
  private readonly edges = new Map<number, { to: number; equation: number }[]>()

  private find(node: number): number {
    let root = node
    while ((this.parent.get(root) ?? root) !== root) root = this.parent.get(root)!
    for (let at = node; at !== root; ) {
      const next = this.parent.get(at) ?? at
      this.parent.set(at, root)
      at = next
    }
    return root
  }

  /** True when the distance joins two parts of the tree; false when it closes a loop. */
  join(a: number, b: number, equation: number): boolean {
    const [p, q] = [this.find(a), this.find(b)]
    if (p === q) return false
    this.parent.set(p, q)
    this.link(a, b, equation)
    this.link(b, a, equation)
    return true
  }

  joined(a: number, b: number): boolean {
    return this.find(a) === this.find(b)
  }

  /** The equations along the tree between two nodes: with the closing one they are the loop. */
  path(from: number, to: number): number[] {
    const came = new Map<number, { node: number; equation: number }>()
    const queue = [from]
    for (let at = queue.shift(); at !== undefined && at !== to; at = queue.shift()) {
      for (const edge of this.edges.get(at) ?? []) {
        if (edge.to === from || came.has(edge.to)) continue
        came.set(edge.to, { node: at, equation: edge.equation })
        queue.push(edge.to)
      }
    }
    const result: number[] = []
    for (let step = came.get(to); step; step = step.node === from ? undefined : came.get(step.node))
      result.push(step.equation)
    return result
  }

  private link(a: number, b: number, equation: number): void {
    if (!this.edges.has(a)) this.edges.set(a, [])
    this.edges.get(a)!.push({ to: b, equation })
  }
}

/** What a block of equations leaves open and what it says twice. */
export interface Verdict {
  readonly rank: number
  /** Unknowns that can still move, in sets that move together: each set needs one size more. */
  readonly loose: readonly (readonly number[])[]
  /** Equations that fix nothing new, each with those that already say it. */
  readonly repeated: readonly { readonly equation: number; readonly with: readonly number[] }[]
}

/** Node of everything already fixed: datum positions, and the nothing that radii are measured from. */
const GROUND = -1

/** Judges a block by the spanning-tree theorem; `order` lists the equations, implied conditions first. */
export function judgeTree(
  unknowns: readonly number[],
  datums: readonly number[],
  equations: readonly Equation[],
  order: readonly number[],
): Verdict {
  const tree = new Tree()
  let rank = 0
  for (const datum of datums) tree.join(GROUND, datum, -1)
  const repeated: { equation: number; with: number[] }[] = []
  for (const index of order) {
    const [a, b] = equations[index]!.pair!
    if (tree.join(a, b ?? GROUND, index)) rank++
    else repeated.push({ equation: index, with: tree.path(a, b ?? GROUND).filter((e) => e >= 0) })
  }
  const loose: number[][] = []
  for (const u of unknowns) {
    if (tree.joined(u, GROUND)) continue
    const set = loose.find((l) => tree.joined(l[0]!, u))
    if (set) set.push(u)
    else loose.push([u])
  }
  return { rank, loose, repeated }
}
