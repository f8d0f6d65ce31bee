import { UNITS } from './data.ts'
import { fromBase, locate, type PartDraft } from './part-draft.ts'

/** Rounds, fillets and other arcs by their radii; those that nothing holds in place by their axes too. */
export function blendFeatures(draft: PartDraft): void {
  const { found, body, listing, features, chosen, data } = draft
  const count = { round: 0, fillet: 0 }
  for (const { kind, radius, places } of found.blends) {
    const id = `${kind} ${++count[kind]}`
    const size = listing.size(`${id} radius`, radius)
    const members = places.map((p, n) => ({
      id: places.length > 1 ? `${id}.${n + 1}` : id,
      axes: [],
      faces: p.faces,
      point: body.box.min,
    }))
    features.push({ id, kind, outward: [0, 0, 1], members })
    const faces = places.flatMap((p) => p.faces)
    chosen.push({ kind: 'radius', size, of: id, faces, count: places.length, span: size.span, group: id })
    places.forEach(({ line, loose, faces: own }, n) => {
      if (!loose) return
      const axis = `${members[n]!.id} axis`
      data.push({ id: axis, kind: 'axis', name: axis, point: line.point, direction: line.direction, faces: own })
      locate(draft, id, [{ axis, at: line.point }], line.direction, { kind: 'single' })
    })
  }
}

/** Chamfers, equal ones together; slopes by their corners. */
export function slopeFeatures(draft: PartDraft): void {
  const { found, body, listing, features, chosen, data } = draft
  const sets = new Map<string, (typeof found.chamfers)[number][]>()
  for (const chamfer of found.chamfers) {
    const key = [chamfer.leg, chamfer.otherLeg ?? 0, chamfer.angle].map((n) => n.toFixed(4)).join()
    sets.set(key, [...(sets.get(key) ?? []), chamfer])
  }
  ;[...sets.values()].forEach((set, i) => {
    const id = `chamfer ${i + 1}`
    const first = set[0]!
    const size = listing.size(`${id} leg`, first.leg)
    const leg = first.otherLeg === undefined ? undefined : listing.size(`${id} other leg`, first.otherLeg)
    const angle = leg ? undefined : listing.angle(`${id} angle`, first.angle)
    features.push({
      id,
      kind: 'chamfer',
      outward: [0, 0, 1],
      members: set.map((c, n) => ({
        id: set.length > 1 ? `${id}.${n + 1}` : id,
        axes: [],
        faces: c.faces,
        point: body.box.min,
      })),
    })
    chosen.push({
      kind: 'chamfer',
      size,
      ...(leg ? { leg } : {}),
      ...(angle ? { angle } : {}),
      edges: [],
      faces: set.flatMap((c) => c.faces),
      count: set.length,
      span: size.span,
      group: id,
    })
  })
  let corners = 0
  for (const [n, { face, along, corners: own }] of found.slopes.entries()) {
    const group = `slope ${n + 1}`
    features.push({
      id: group,
      kind: 'step',
      outward: UNITS[along],
      members: [{ id: group, axes: [], faces: [face], point: own[0]?.at ?? body.box.min }],
    })
    for (const { at, known } of own) {
      const id = `corner ${++corners}`
      data.push({ id, kind: 'axis', name: id, point: at, direction: UNITS[along] })
      for (const k of [0, 1, 2] as const)
        if (k !== along && !known.includes(k)) fromBase(draft, group, { axis: id, at }, k)
    }
  }
}
