import type { Mark } from '../../brief/mark.ts'
import type { Box2 } from '../../geometry/evaluate.ts'
import type { Vec2 } from '../../geometry/vec.ts'
import { grownBy, overlap } from '../../sheet/arrange/boxes.ts'
import type { Pencil, Sheet, SheetItem } from '../../sheet/sheet.ts'
import type { Subject } from '../rule.ts'
import { strip } from './list.ts'
import type { Pencilled } from './pencilled.ts'
import { boxOfItem, placeOnSheet } from './places.ts'
import { balloon, type Change, changeStrokes, frame, stroke, tint } from './strokes.ts'

const BALLOON = 2.6

/**
 * The sheet as a check print in the old office custom: yellow under the figures that no mark touches, red about what must
 * change or wants another look, blue about remarks, numbered, with the list and the legend on a strip at the right.
 * Circle and square, full and broken frames, caret and cross tell the same without colour.
 */
export function checkPrint(
  subject: Pick<Subject, 'brief' | 'part' | 'sheet' | 'sizes'>,
  marks: readonly Mark[],
): Sheet {
  const { sheet, sizes } = subject
  const pencilled = marks.map((mark, i): Pencilled => {
    const box = placeOnSheet(mark, subject)
    return {
      number: i + 1,
      mark,
      pencil: mark.weight === 'remark' ? 'blue' : 'red',
      change: changeOf(mark),
      ...(box ? { box: grownBy(box, 0.8) } : {}),
    }
  })
  const side = strip(subject, pencilled, sheet)
  return {
    ...sheet,
    width: sheet.width + side.width,
    title: `${sheet.title} (check print)`,
    items: [...verified(sheet, sizes, pencilled), ...sheet.items, ...over(sheet, pencilled), ...side.items],
  }
}

/** What is missing is to be added; what a mend takes out is to be deleted. */
function changeOf(mark: Mark): Change {
  if (mark.weight === 'remark') return 'remark'
  if (/-missing$/.test(mark.rule)) return 'add'
  if (mark.rule === 'size-repeated' || mark.mends?.some((m) => m.text === '')) return 'delete'
  return 'change'
}

/** Yellow under the figures of every size that the program found consistent: no mark points at it. */
function verified(sheet: Sheet, sizes: Subject['sizes'], pencilled: readonly Pencilled[]): SheetItem[] {
  const marked = pencilled.flatMap((p) => (p.box ? [p.box] : []))
  const repeated = new Set(sizes.proof.repeated.flatMap((r) => r.dimensions))
  return sheet.items.flatMap((item) => {
    if (item.item !== 'text' || item.role !== 'dimension' || item.angle % 90 !== 0) return []
    if (item.tie?.dimension !== undefined && repeated.has(item.tie.dimension)) return []
    const box = boxOfItem(item)
    return marked.some((m) => overlap(m, box)) ? [] : [tint(grownBy(box, 0.5), 'yellow')]
  })
}

/** Frames and balloons over the ink. A balloon takes the nearest place about its frame that is free. */
function over(sheet: Sheet, pencilled: readonly Pencilled[]): SheetItem[] {
  const taken = sheet.items.filter((i) => i.item === 'text' || i.item === 'fill').map(boxOfItem)
  for (const { box } of pencilled) if (box) taken.push(box)
  const lines = sheet.items
    .flatMap((i) => (i.item === 'stroke' && i.kind !== 'hatching' ? [boxOfItem(i)] : []))
    .filter(isThin)
  return pencilled.flatMap(({ box, number, mark, pencil, change }) => {
    if (!box) return []
    const at = freeSpot(box, [...taken, ...lines], sheet) ?? freeSpot(box, taken, sheet) ?? beside(box)
    taken.push({ min: [at[0] - BALLOON, at[1] - BALLOON], max: [at[0] + BALLOON, at[1] + BALLOON] })
    const dash = mark.weight === 'must change' ? undefined : mark.weight === 'look again' ? 1.6 : 0.7
    return [
      ...frame(box, pencil, mark.weight === 'must change' ? 0.6 : 0.4, dash),
      ...changeStrokes(change, box, pencil),
      leader(box, at, pencil),
      ...balloon(at, String(number), pencil, BALLOON),
    ]
  })
}

function freeSpot(box: Box2, taken: readonly Box2[], sheet: Sheet): Vec2 | undefined {
  const middle: Vec2 = [(box.min[0] + box.max[0]) / 2, (box.min[1] + box.max[1]) / 2]
  const half: Vec2 = [(box.max[0] - box.min[0]) / 2, (box.max[1] - box.min[1]) / 2]
  const free = (p: Vec2) => {
    const own = { min: [p[0] - BALLOON, p[1] - BALLOON], max: [p[0] + BALLOON, p[1] + BALLOON] } as const
    const on = own.min[0] > 3 && own.min[1] > 3 && own.max[0] < sheet.width - 3 && own.max[1] < sheet.height - 3
    return on && !taken.some((t) => overlap(t, own))
  }
  for (let far = 2; far < 40; far += 3) {
    for (let k = 0; k < 16; k++) {
      const a = Math.PI / 4 + (k * Math.PI) / 8
      const p: Vec2 = [
        middle[0] + Math.sign(Math.round(Math.cos(a) * 4)) * half[0] + (far + BALLOON) * Math.cos(a),
        middle[1] + Math.sign(Math.round(Math.sin(a) * 4)) * half[1] + (far + BALLOON) * Math.sin(a),
      ]
      if (free(p)) return p
    }
  }
  return undefined
}

const beside = (box: Box2): Vec2 => [box.max[0] + BALLOON + 2, box.max[1] + BALLOON + 2]
/** Upright and level lines: of a slope or an arc the box says too little. */
const isThin = (b: Box2) => Math.min(b.max[0] - b.min[0], b.max[1] - b.min[1]) < 0.5

function leader(box: Box2, at: Vec2, pencil: Pencil): SheetItem {
  const near: Vec2 = [
    Math.max(box.min[0], Math.min(box.max[0], at[0])),
    Math.max(box.min[1], Math.min(box.max[1], at[1])),
  ]
  const d = Math.hypot(at[0] - near[0], at[1] - near[1]) || 1
  const rim: Vec2 = [at[0] - ((at[0] - near[0]) / d) * BALLOON, at[1] - ((at[1] - near[1]) / d) * BALLOON]
  return stroke(near, rim, pencil, 0.3)
}
