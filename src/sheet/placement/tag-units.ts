import type { Vec2 } from '../../geometry/vec.ts'
import type { HoleTable } from '../../sizes/dimension.ts'
import { blockOf } from './callout-block.ts'
import { type Desk, drawn, type Member, nothing, type Option, textSlab, type Unit } from './form.ts'
import { onPaper } from './ink.ts'
import { once } from './once.ts'
import { along, polar } from './vec.ts'
import { WEIGHTS } from './weights.ts'

/** Bearings about the hole, upper right first, and clear distances from its edge. */
const BEARINGS = [45, 315, 135, 225, 30, 60, 330, 300, 150, 120, 210, 240, 10, 80, 100, 170, 190, 260, 280, 350]
const CLEAR = [1.2, 2.5, 4, 6]

/** Letter tags of a hole table, each beside its hole. */
export function tagUnits(desk: Desk, owner: number, table: HoleTable): Unit[] {
  const { placed } = desk.ink.views[owner]!
  return table.rows.map((row): Unit => {
    const centre = onPaper(placed, row.at)
    const r = desk.ink.radiusAt(owner, centre)
    const block = blockOf({ lines: [[row.tag]] }, desk.figures)
    const options = CLEAR.flatMap((clear) =>
      BEARINGS.map((bearing, i): Option => {
        const way = polar((bearing * Math.PI) / 180)
        // The block's corner or side nearest to the hole stands at the clear distance.
        const half = Math.min(block.width / 2 / Math.abs(way[0]), block.height / 2 / Math.abs(way[1]))
        const at: Vec2 = along(centre, way, r + clear + half)
        const member: () => readonly Member[] = once(() => [
          {
            dimension: undefined,
            tie: { view: table.view, features: [row.feature] },
            fixed: nothing(),
            alternatives: [
              { own: 0, ...drawn([textSlab(block, at, 0)], [], [{ block, centre: at, angle: 0, justify: 'middle' }]) },
            ],
          },
        ])
        // A slot's tag stands within its own outline.
        const astray = r > 0 && desk.ink.nearerThan(owner, at, { c: centre, r }) ? WEIGHTS.tagAstray : 0
        return { own: 0.3 * clear + 0.05 * i + astray, members: member }
      }),
    ).sort((a, b) => a.own - b.own)
    return { id: `tag ${row.tag}`, owner, dimensions: [], rank: [4, 0], options, name: `the tag ${row.tag}` }
  })
}
