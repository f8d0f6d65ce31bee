import type { Mark } from '../../src/brief/mark.ts'
import { checkPrint } from '../../src/check/print/check-print.ts'
import { boxOfItem, placeOnSheet } from '../../src/check/print/places.ts'
import type { Rule, Subject } from '../../src/check/rule.ts'
import type { Box2 } from '../../src/geometry/evaluate.ts'
import type { Vec2 } from '../../src/geometry/vec.ts'
import type { OcctKernel } from '../../src/kernel/open.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { writeSvg } from '../../src/write/svg.ts'
import type { Case } from './cases.ts'
import { lazySubject, onHeader } from './subject.ts'

/** What of a sheet one half of a picture shows, paper mm. */
const SHOWN: Vec2 = [90, 62]
const GAP = 6
const CAPTION = 14

/** Both halves of a rule's picture: the sheet that raises it, pencilled, and its twin, about the same place. */
export function rulePicture(rule: Rule, found: Case, kernel: OcctKernel): string {
  const bad = lazySubject(onHeader(found.on, found.bad), kernel, found.spoilt?.by)
  const good = lazySubject(onHeader(found.on, found.good), kernel)
  try {
    const marks = rule.check(bad).map(({ weight = rule.weight, ...f }): Mark => ({ rule: rule.name, weight, ...f }))
    const mark = marks[0]!
    const [left, right] = [drawn(bad, marks), drawn(good, [])]
    const spot = left && (placeOnSheet(mark, bad) ?? titleBlock(bad.sheet))
    const view = spot && left && viewAt(bad.sheet, spot)
    const centre = spot && middle(spot)
    const twin =
      centre &&
      right &&
      (view ? besideView(bad.sheet, good.sheet, view, centre) : fromCorner(bad.sheet, good.sheet, centre))
    const [w, h] = SHOWN
    const width = 2 * w + GAP
    const height = h + CAPTION
    return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">
<title>${escaped(rule.name)}</title>
<style>.words{font:2.6px sans-serif}.bad{fill:#a51d16}.edge{fill:none;stroke:#888;stroke-width:.2}</style>
<rect width="${width}" height="${height}" fill="#fff"/>
${left && centre ? half(left, centre, 0) : ''}
${right && twin ? half(right, twin, w + GAP) : ''}
<rect class="edge" x="0.1" y="0.1" width="${w - 0.2}" height="${h - 0.2}"/><rect class="edge" x="${w + GAP + 0.1}" y="0.1" width="${w - 0.2}" height="${h - 0.2}"/>
${wrapped(mark.text, 64, 4)
  .map((line, i) => `<text class="words bad" x="1" y="${h + 3.4 + 3.2 * i}">${escaped(line)}</text>`)
  .join('\n')}
<text class="words" x="${w + GAP + 1}" y="${h + 3.4}">not raised</text>
</svg>
`
  } finally {
    bad.free()
    good.free()
  }
}

/** The sheet with the pencil's red and blue, without the yellow and the strip; undefined where nothing could be drawn. */
function drawn(subject: Subject, marks: readonly Mark[]): Sheet | undefined {
  if (subject.part.body.faces.length === 0) return undefined
  const print = checkPrint(subject, marks)
  return { ...print, width: subject.sheet.width, items: print.items.filter((i) => i.pencil !== 'yellow') }
}

function half(sheet: Sheet, centre: Vec2, at: number): string {
  const [w, h] = SHOWN
  const x = Math.min(Math.max(centre[0] - w / 2, 0), sheet.width - w)
  const y = Math.min(Math.max(centre[1] - h / 2, 0), sheet.height - h)
  const inside = ({ min, max }: Box2) => min[0] < x + w && max[0] > x && min[1] < y + h && max[1] > y
  const items = sheet.items.filter((i) => inside(boxOfItem(i)))
  const top = sheet.height - y - h
  const number = (v: number) => String(Number(v.toFixed(3)))
  return writeSvg({ ...sheet, items }, { fonts: 'referenced' })
    .replace(/^<\?xml[^>]*\?>\s*/, '')
    .replace(
      /<svg [^>]*>/,
      `<svg x="${at}" y="0" width="${w}" height="${h}" viewBox="${number(x)} ${number(top)} ${w} ${h}">`,
    )
    .replace(/ data-[a-z]+="[^"]*"/g, '')
}

/** The view that a place is nearest to, if it lies at one. */
function viewAt(sheet: Sheet, spot: Box2): string | undefined {
  const [x, y] = middle(spot)
  for (const [view, box] of viewBoxes(sheet))
    if (x > box.min[0] - 1 && x < box.max[0] + 1 && y > box.min[1] - 1 && y < box.max[1] + 1) return view
  return undefined
}

function viewBoxes(sheet: Sheet): Map<string, Box2> {
  const boxes = new Map<string, Box2>()
  for (const item of sheet.items) {
    const view = item.tie?.view
    if (!view) continue
    const own = boxOfItem(item)
    const known = boxes.get(view)
    boxes.set(
      view,
      known
        ? {
            min: [Math.min(known.min[0], own.min[0]), Math.min(known.min[1], own.min[1])],
            max: [Math.max(known.max[0], own.max[0]), Math.max(known.max[1], own.max[1])],
          }
        : own,
    )
  }
  return boxes
}

function besideView(bad: Sheet, good: Sheet, view: string, centre: Vec2): Vec2 {
  const [a, b] = [viewBoxes(bad).get(view)!, viewBoxes(good).get(view)]
  if (!b) return centre
  const [p, q] = [middle(a), middle(b)]
  return [centre[0] - p[0] + q[0], centre[1] - p[1] + q[1]]
}

/** Title block and notes hang at the sheet's lower right. */
const fromCorner = (bad: Sheet, good: Sheet, centre: Vec2): Vec2 => [centre[0] + good.width - bad.width, centre[1]]

const titleBlock = (sheet: Sheet): Box2 => ({ min: [sheet.width - 95, 5], max: [sheet.width - 5, 60] })
const middle = (b: Box2): Vec2 => [(b.min[0] + b.max[0]) / 2, (b.min[1] + b.max[1]) / 2]
const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')

function wrapped(text: string, long: number, most: number): string[] {
  const lines = ['']
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1]!
    if (last.length + word.length < long || last === '')
      lines[lines.length - 1] = last === '' ? word : `${last} ${word}`
    else lines.push(word)
  }
  return lines.length <= most ? lines : [...lines.slice(0, most - 1), `${lines[most - 1]}…`]
}
