import type { Anchor, Depth, Feature, HoleFeature, Mirror, Name, Placement, Run, Side } from './brief.ts'
import { oppositeOf } from './opposite-side.ts'
import { dia, printAngle, printCount, printSize } from './print-size.ts'
import { wrap } from './print-stock.ts'
import { nominalSize } from './thread.ts'
import { wayOpen } from './way-open.ts'

const p = printSize

/** Keyword, with its label if any, and lines of a feature statement in canonical form. */
export function printFeature(f: Feature): { keyword: string; lines: string[] } {
  const { keyword, lines } = body(f)
  return { keyword: f.label ? `${keyword} ${f.label.text}` : keyword, lines: lines.filter((line) => line !== '') }
}

function body(f: Feature): { keyword: string; lines: string[] } {
  const many = f.count.value > 1
  switch (f.kind) {
    case 'hole': {
      const bore = onOwnAxis(f)
      const line = `${head(f.face, f.from)}${printHole(f)}`
      return bore
        ? { keyword: 'bore', lines: [line] }
        : { keyword: many ? 'holes' : 'hole', lines: [line, ...places(f, f.mirror, holeWords(many, 'hole'))] }
    }
    case 'slot': {
      const measured = f.measured === 'overall' ? 'overall' : 'centre to centre'
      const way = f.way === wayOpen(f.openTo) ? '' : `, long way ${f.way}`
      const open = f.openTo ? `, open to ${f.openTo.text}` : ''
      const line = `${head(f.face, f.from)}${printCount(f.count)}${p(f.width)} × ${p(f.length)} ${measured} ${printDepth(f.depth)}${way}${open}`
      return { keyword: many ? 'slots' : 'slot', lines: [line, ...places(f, f.mirror, holeWords(many, 'slot'))] }
    }
    case 'pocket': {
      const corner = f.cornerRadius ? `, corners R ${p(f.cornerRadius)}` : ''
      const line = `${head(f.face, f.from)}${printCount(f.count)}${p(f.across)} × ${p(f.up)} ${printDepth(f.depth)}${corner}`
      return { keyword: many ? 'pockets' : 'pocket', lines: [line, ...places(f, f.mirror, holeWords(many, 'slot'))] }
    }
    case 'step': {
      const cuts = f.cuts.map((cut) => `${p(cut.size)} from ${cut.from.text}`).join(', ')
      return { keyword: 'step', lines: [`${f.edge.text}: ${printCount(f.count)}${cuts}`] }
    }
    case 'notch': {
      const angle = f.angle ? `, ${printAngle(f.angle)}` : ''
      const depth = f.depth ? `, ${p(f.depth)} deep` : f.into ? `, to ${f.into.text}` : ''
      const line = `${f.face.text}, ${f.edge.text}: ${printCount(f.count)}${f.shape}, ${p(f.width)} wide${depth}${angle}`
      return { keyword: many ? 'notches' : 'notch', lines: [line, ...places(f, f.mirror, wallWords('side'))] }
    }
    case 'chamfer':
    case 'round':
    case 'fillet': {
      const second = f.angle ? ` × ${printAngle(f.angle)}` : f.leg ? ` × ${p(f.leg)}` : ''
      const size = f.kind === 'chamfer' ? p(f.size) : `R${/^[.\d]/.test(p(f.size)) ? '' : ' '}${p(f.size)}`
      return {
        keyword: f.kind,
        lines: [`${f.edges.map((e) => e.text).join(' and ')}: ${printCount(f.count)}${size}${second}`],
      }
    }
    case 'boss': {
      const line = `${head(f.face, f.from)}${printCount(f.count)}${dia(f.diameter)} × ${p(f.height)} high`
      if (onOwnAxis(f)) return { keyword: 'spigot', lines: [line] }
      return { keyword: many ? 'bosses' : 'boss', lines: [line, ...places(f, f.mirror, holeWords(many, 'hole'))] }
    }
    case 'groove': {
      const depth = f.bottom ? `, bottom ${dia(f.bottom)}` : f.depth ? `, ${p(f.depth)} deep` : ''
      const line = `${f.face.text}: ${printCount(f.count)}${p(f.width)} wide${depth}`
      return { keyword: many ? 'grooves' : 'groove', lines: [line, printAnchor(f.anchor, wallWords('side'))] }
    }
    case 'keyseat': {
      const depth = f.depth ? ` × ${p(f.depth)} deep` : f.over ? ` × ${p(f.over)} over bore` : ''
      const long = f.length ? ` × ${p(f.length)} long` : ''
      const line = `${f.face.text}, ${f.side}: ${printCount(f.count)}${p(f.width)} wide${depth}${long}`
      const place = f.anchor ? printAnchor(f.anchor, wallWords('end')) : ''
      return { keyword: many ? 'keyseats' : 'keyseat', lines: [line, place] }
    }
    case 'flat-cut': {
      const pair = f.count.value === 2 && f.side
      const side = pair ? `, ${f.side} and ${oppositeOf[pair]}` : f.side ? `, ${f.side}` : ''
      const count = pair ? '' : printCount(f.count)
      const line = `${f.face.text}${side}: ${count}${p(f.across)} across${f.length ? `, ${p(f.length)} long` : ''}`
      return {
        keyword: many ? 'flats' : 'flat',
        lines: [line, f.anchor ? printAnchor(f.anchor, wallWords('end')) : ''],
      }
    }
  }
}

function onOwnAxis(f: {
  readonly placement: Placement
  readonly count: Feature['count']
  readonly mirror?: Mirror
}): boolean {
  return f.placement.kind === 'axis' && !f.placement.of && !f.mirror && f.count.value === 1
}

const head = (face: Name, from: Side | undefined) => `${face.text}${from ? `, from ${from}` : ''}: `

function printDepth(d: Depth): string {
  if (d.kind === 'blind') return `↧ ${p(d.size)}`
  if (!d.oneWall) return 'THRU'
  return d.oneWall.into ? `THRU to ${d.oneWall.into.text}` : 'THRU one wall'
}

function printHole(f: HoleFeature): string {
  const parts: string[] = []
  const { thread } = f
  if (thread) {
    const nominal = nominalSize(thread, f.diameter.unit)
    const isNominal = nominal?.text === f.diameter.text && nominal.unit === f.diameter.unit && !f.diameter.tolerance
    const own = f.threadDepth ? `↧ ${p(f.threadDepth)}` : printDepth(f.depth)
    parts.push(`${printCount(f.count)}${thread.text} ${own}`)
    if (f.threadDepth) parts.push(`drill ${dia(f.diameter)} ${printDepth(f.depth)}`)
    else if (!isNominal) parts.push(`drill ${dia(f.diameter)}`)
  } else parts.push(`${printCount(f.count)}${dia(f.diameter)} ${printDepth(f.depth)}`)
  if (f.point) parts.push(f.point.value === 180 ? 'flat bottom' : `point ${printAngle(f.point)}`)
  if (f.counterbore) parts.push(`⌴ ${dia(f.counterbore.diameter)} ↧ ${p(f.counterbore.depth)}`)
  if (f.countersink) parts.push(`⌵ ${dia(f.countersink.diameter)} × ${printAngle(f.countersink.angle)}`)
  if (f.spotface)
    parts.push(`spotface ${dia(f.spotface.diameter)}${f.spotface.depth ? ` ↧ ${p(f.spotface.depth)}` : ''}`)
  return parts.join(', ')
}

type Words = Readonly<Record<Anchor['which'], string>>

const holeWords = (many: boolean, kind: 'hole' | 'slot'): Words => ({
  lowest: 'lowest',
  highest: 'highest',
  leftmost: 'leftmost',
  rightmost: 'rightmost',
  frontmost: 'frontmost',
  rearmost: 'rearmost',
  all: kind === 'hole' ? '' : many ? 'centres' : 'centre',
})

const wallWords = (wall: string): Words => ({
  lowest: `lower ${wall}`,
  highest: `upper ${wall}`,
  leftmost: `left ${wall}`,
  rightmost: `right ${wall}`,
  frontmost: `front ${wall}`,
  rearmost: `rear ${wall}`,
  all: 'centre',
})

function printAnchor(a: Anchor, words: Words): string {
  const which = a.wall && a.which !== 'all' ? wallWords(a.wall.word)[a.which] : words[a.which]
  if (which && a.which !== 'all' && a.distance.text === '0' && !a.distance.tolerance && !a.distance.unitTyped)
    return `${which} at ${a.from.text}`
  return `${which ? `${which} ` : ''}${p(a.distance)} from ${a.from.text}`
}

function places(
  f: { readonly placement: Placement; readonly count: Feature['count'] },
  mirror: Mirror | undefined,
  words: Words,
): string[] {
  const phrases = printPlacement(f.placement, f.count.value, words)
  return wrap([...phrases, ...(mirror ? [`mirrored ${mirror.across}`] : [])], '; ')
}

function printPlacement(place: Placement, count: number, words: Words): string[] {
  switch (place.kind) {
    case 'axis':
      return [place.of ? `on axis of ${place.of.text}` : 'on axis']
    case 'bolt circle': {
      const parts = [
        `on ${dia(place.diameter)} bolt circle`,
        ...(count > 1 ? ['equal'] : []),
        ...(place.first ? [place.first.text] : []),
      ]
      return [[...parts, ...(place.about ? [`about ${place.about.text}`] : [])].join(', ')]
    }
    case 'points': {
      const points = place.points.map(({ a, b }) => `${p(a)}, ${p(b)}`).join('; ')
      return [`at ${points}; from ${place.fromA.text} and ${place.fromB.text}`]
    }
    case 'runs': {
      const [a, b] = place.runs
      if (place.runs.length === 2 && isCentred(a, 'across') && isCentred(b, 'up')) return ['centred both ways']
      return [...place.runs.map((run) => printRun(run, words)), ...(place.around ? ['equally spaced'] : [])]
    }
  }
}

function isCentred(run: Run | undefined, way: Run['way']): boolean {
  return run !== undefined && run.way === way && run.count.value === 1 && !run.pitch && run.anchor.kind === 'centred'
}

function printRun(run: Run, words: Words): string {
  const { count, way, pitch, anchor } = run
  const single = count.value === 1 && !pitch
  if (anchor.kind === 'centred') {
    if (single) return way ? `centred ${way}` : 'centred'
    return `${run.way ? `${count.value} ${run.way} ` : ''}${pitch ? `${p(pitch)} apart, ` : ''}centred`
  }
  const counted = way ? `${count.value} ${way}${pitch ? ' ' : ', '}` : ''
  return `${counted}${pitch ? `${p(pitch)} apart, ` : ''}${printAnchor(anchor, words)}`
}
