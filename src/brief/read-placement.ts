import type { Anchor, Mirror, Name, Placement, Run } from './brief.ts'
import { type Cursor, show, spanOf } from './cursor.ts'
import { inTheMiddle } from './in-the-middle.ts'
import { readName } from './read-name.ts'
import { atAngle, mostRepeats, readAngle, readSize, sensibleCount } from './read-size.ts'
import type { Count, Size } from './size.ts'
import type { Span } from './span.ts'

type Which = Anchor['which']

interface DraftRun {
  count?: Count
  way?: 'across' | 'up'
  pitch?: Size
  /** That the pitch is missing is marked already. */
  pitchTold?: true
  anchor?: Run['anchor']
  from: number
  to: number
}

const members: Readonly<Record<string, Which>> = {
  lowest: 'lowest',
  highest: 'highest',
  leftmost: 'leftmost',
  rightmost: 'rightmost',
  frontmost: 'frontmost',
  rearmost: 'rearmost',
}
/** `left end`, `lower side`: the wall or end that a distance reaches. */
const walls: Readonly<Record<string, Which>> = {
  lower: 'lowest',
  bottom: 'lowest',
  upper: 'highest',
  top: 'highest',
  left: 'leftmost',
  right: 'rightmost',
  front: 'frontmost',
  rear: 'rearmost',
}

/** `lowest 1.38 from bottom`, `left end .50 from collar right face`, `centres 1.12 from heel`, `.62 from right`. */
export function readAnchor(c: Cursor): (Anchor & { readonly span: Span }) | undefined {
  const from = c.peek().from
  const read = (): (Anchor & { span: Span }) | undefined => {
    const which = readWhich(c)
    // `right side at collar left face`: no distance is left between them
    const at = which === 'all' || c.isSizeAhead(1) ? undefined : c.takeWord('at')
    if (at) {
      const name = readName(c, 'the face that it sits at')
      const { unit } = c.setting
      const span = { from: at.from, to: at.to }
      const none = { text: '0', value: 0, form: 'whole', decimals: 0, span, unit, unitTyped: false, mm: 0 } as const
      return name && { which, distance: none, from: name, span: { from, to: c.before } }
    }
    if (!c.atSize() && !(c.at('minus') && c.peek(1).kind === 'number')) return undefined
    const distance = readSize(c, { what: 'the distance', zero: true })
    if (!c.takeWord('from')) return undefined
    const name = readName(c, 'what the distance is measured from')
    if (!distance || !name) return undefined
    return { which, distance, from: name, span: { from, to: c.before } }
  }
  return c.attempt(read)
}

const withoutWay = ({ way: _, ...anchor }: Anchor & { readonly way: 'across' | 'up'; readonly span: Span }) => anchor

function readWhich(c: Cursor): Which {
  const word = c.peek().text.toLowerCase()
  if (c.at('word') && members[word]) {
    c.index++
    return members[word]
  }
  if (c.at('word') && walls[word] && c.isWord(1, 'end', 'side', 'wall')) {
    c.index += 2
    return walls[word]
  }
  c.takeWord('centre', 'centres', 'center', 'centers', 'axis')
  return 'all'
}

/** `mirrored left-right` */
export function readMirror(c: Cursor): Mirror | undefined {
  const { from } = c.peek()
  c.index++
  c.takeWord('about', 'across')
  const across = c.takeLie()
  if (across) return { across, span: { from, to: c.before } }
  return c.mark('missing-name', spanOf(c.peek()), 'mirrored which way?', {
    expected: 'left-right, front-rear or up-down',
  })
}

/** Gathers the phrases that say where a feature's members sit. */
export class PlacementReader {
  private readonly runs: DraftRun[] = []
  private fresh = true
  private circle: { diameter: Size; from: number; to: number } | undefined
  private first: { degrees: number | 'astride'; text: string; span: Span } | undefined
  private about: Name | undefined
  /** `equal` was said: without a circle it says nothing of where. */
  private evenly = false
  private other: Placement | undefined
  mirror: Mirror | undefined
  private readonly c: Cursor
  /** Front-rear is across on the left and right faces, and up on the others. */
  private readonly face: string

  constructor(c: Cursor, face: string) {
    this.c = c
    this.face = face
  }

  /** A semicolon or a new line begins the next run. */
  endClause(): void {
    this.fresh = true
  }

  get empty(): boolean {
    return this.runs.length === 0 && !this.circle && !this.other
  }

  /** Reads one phrase; false where what follows is no matter of placement. */
  take(): boolean {
    const { c } = this
    const from = c.peek().from
    if (c.takeWord('centred', 'centered', 'central')) this.takeCentred(from)
    else if (c.atWord('mirrored', 'mirror')) this.mirror = readMirror(c) ?? this.mirror
    else if (c.atWord('on')) return this.takeOn(from)
    else if (c.atWord('at') && c.isSizeAhead(1)) this.takePoints(from)
    else if (c.takeWord('equal', 'equally')) {
      c.takeWord('spaced')
      this.evenly = true
    } else if (c.atWord('one', 'first') && c.isWord(1, 'at')) this.takeFirst(from)
    else if (c.takeWord('astride')) this.takeAstride(from)
    else if (c.takeWord('about')) this.about = readName(c, 'the centre of the bolt circle')
    else return this.takeRun(from)
    return true
  }

  private run(from: number): DraftRun {
    let run = this.runs[this.runs.length - 1]
    if (!run || this.fresh) {
      run = { from, to: from }
      this.runs.push(run)
      this.fresh = false
    }
    return run
  }

  private wayWord(): 'across' | 'up' | undefined {
    const { c } = this
    if (c.takeWord('across')) return 'across'
    if (c.takeWord('up')) return 'up'
    if (!c.isLie(0)) return undefined
    const lie = c.takeLie()
    if (lie === 'left-right') return 'across'
    if (lie === 'up-down') return 'up'
    return /\b(left|right)\b/.test(this.face) ? 'across' : 'up'
  }

  private takeCentred(from: number): void {
    const { c } = this
    const start = c.before
    const put = (run: DraftRun) => {
      run.anchor = { kind: 'centred', span: { from, to: c.before } }
      run.to = c.before
    }
    if (c.takeWord('both') && c.takeWord('ways', 'way', 'directions')) {
      let run = this.run(from)
      if (run.anchor) {
        this.fresh = true
        run = this.run(from)
      }
      const bare = !run.way && !run.pitch
      if (bare) run.way = 'across'
      put(run)
      this.fresh = true
      const second = this.run(from)
      if (run.way) second.way = run.way === 'across' ? 'up' : 'across'
      put(second)
      return
    }
    const way = this.wayWord()
    let run = this.run(from)
    if (run.anchor || (way && run.way && run.way !== way)) {
      this.fresh = true
      run = this.run(from)
    }
    if (way) run.way = way
    run.anchor = { kind: 'centred', span: { from, to: Math.max(start, c.before) } }
    run.to = c.before
  }

  private takeOn(from: number): boolean {
    const { c } = this
    const bare = c.isWord(1, 'axis')
    if (bare || (c.isWord(1, 'the') && c.isWord(2, 'axis', 'centre', 'center'))) {
      c.index += bare ? 2 : 3
      const of = c.takeWord('of') ? readName(c, 'whose axis') : undefined
      this.other = { kind: 'axis', ...(of ? { of } : {}), span: { from, to: c.before } }
      return true
    }
    if (!c.isSizeAhead(1) && c.peek(1).kind !== 'open') return false
    c.index++
    c.takeDia()
    const diameter = readSize(c, { what: 'the diameter of the bolt circle' })
    c.takeDia()
    if (!c.takeWords('bolt', 'circle') && !c.takeWords('pitch', 'circle') && !c.takeWord('circle', 'bc', 'pcd')) {
      c.mark('missing-name', spanOf(c.peek()), 'on a circle of what kind?', { expected: 'bolt circle' })
    }
    if (diameter) this.circle = { diameter, from, to: c.before }
    return true
  }

  private takeFirst(from: number): void {
    const { c } = this
    c.index += 2
    if (c.at('number') && c.isWord(1, "o'clock", 'o’clock', 'oclock')) {
      const hour = Number(c.peek().text)
      const span = { from, to: c.peek(1).to }
      c.index += 2
      if (Number.isInteger(hour) && hour >= 1 && hour <= 12) {
        this.first = { degrees: (((90 - 30 * hour) % 360) + 360) % 360, text: `one at ${hour} o'clock`, span }
      } else
        c.mark('clock-out-of-range', span, `there is no ${show(String(hour))} o'clock`, {
          expected: 'a whole hour from 1 to 12, or first at 45°',
        })
      return
    }
    if (c.at('number') && /^0+(\.0+)?$/.test(c.peek().text)) {
      const zero = c.take('number')!
      if (!c.take('degree')) c.takeWord('deg', 'degrees')
      this.first = { degrees: 0, text: `first at ${zero.text}°`, span: { from, to: c.before } }
      return
    }
    if (!atAngle(c))
      c.mark('missing-size', spanOf(c.peek()), 'where does the first hole sit?', {
        expected: "one at 12 o'clock, or first at 45°",
      })
    else {
      const angle = readAngle(c, 'the place of the first hole')
      if (angle)
        this.first = { degrees: angle.value % 360, text: `first at ${angle.text}°`, span: { from, to: c.before } }
    }
  }

  private takeAstride(from: number): void {
    const { c } = this
    c.takeWord('the')
    c.takeWord('vertical')
    c.takeWord('centre', 'center')
    c.takeWord('line', 'centreline', 'centerline')
    this.first = { degrees: 'astride', text: 'astride', span: { from, to: c.before } }
  }

  private takePoints(from: number): void {
    const { c } = this
    c.index++
    const points: { a: Size; b: Size; span: Span }[] = []
    let broken = false
    do {
      const start = c.peek().from
      const a = readSize(c, { what: 'the first distance of the point', signed: true })
      c.take('comma')
      const b = a && readSize(c, { what: 'the second distance of the point', signed: true })
      if (!a || !b) {
        broken = true
        break
      }
      points.push({ a, b, span: { from: start, to: c.before } })
    } while (this.morePoints())
    if (points.length > 0 && !broken) {
      c.skipSeparators()
      if (!c.takeWord('from')) {
        c.mark('missing-name', { from, to: c.before }, 'from where are the points measured?', {
          expected: 'from left and bottom',
        })
        return
      }
      const fromA = readName(c, 'the first face of the points')
      c.take('comma')
      c.takeWord('and')
      const fromB = fromA && readName(c, 'the second face of the points')
      if (fromA && fromB) this.other = { kind: 'points', points, fromA, fromB, span: { from, to: c.before } }
    }
  }

  private morePoints(): boolean {
    const { c } = this
    const start = c.index
    c.skipSeparators()
    if (c.isSizeAhead(0)) return true
    c.index = start
    return false
  }

  private takeRun(from: number): boolean {
    const { c } = this
    const counted = c.attempt(() => {
      const number = c.take('number')
      if (!number || !/^\d+$/.test(number.text)) return undefined
      const way = this.wayWord()
      // `8 up from axis` is a distance
      return way && !c.atWord('from') ? { number, way } : undefined
    })
    if (counted) {
      const last = this.runs[this.runs.length - 1]
      if (last && (last.count || last.pitch)) this.fresh = true
      const run = this.run(from)
      run.way = counted.way
      const count = sensibleCount(c, Number(counted.number.text), spanOf(counted.number))
      run.count = count ?? { value: 1, span: spanOf(counted.number) }
      run.to = c.before
      return true
    }
    const pitch = c.attempt(() => {
      if (!c.atSize()) return undefined
      const size = readSize(c, { what: 'the distance apart' })
      return c.takeWord('apart', 'pitch', 'spacing') && size
    })
    if (pitch) {
      const last = this.runs[this.runs.length - 1]
      if (last?.pitch) this.fresh = true
      const run = this.run(from)
      run.pitch = pitch
      run.to = c.before
      return true
    }
    // the word that only follows a figure: the figure is what is missing
    if (c.atWord('apart') && this.runs.length > 0) {
      const run = this.runs[this.runs.length - 1]!
      const word = c.takeWord('apart')!
      const n = run.count?.value
      c.mark('missing-size', spanOf(word), `how far apart are ${n === undefined ? 'they' : `the ${n}`}?`, {
        expected: '1.250 apart',
      })
      run.pitchTold = true
      run.to = c.before
      return true
    }
    const upFrom = c.attempt(() => {
      if (!c.atSize()) return undefined
      const distance = readSize(c, { what: 'the distance', zero: true })
      const toward = this.wayWord()
      if (!toward || !c.takeWord('from')) return undefined
      const name = readName(c, 'what the distance is measured from')
      if (!distance || !name) return undefined
      return { way: toward, which: 'all', distance, from: name, span: { from, to: c.before } } as const
    })
    // `across 30 from corner 3`: the way, where what is measured from does not say it
    const way = upFrom?.way ?? (c.isSizeAhead(1) && c.peek(1).kind !== 'minus' ? this.wayWord() : undefined)
    const anchor = upFrom ? withoutWay(upFrom) : readAnchor(c)
    if (!anchor) return false
    let run = this.run(from)
    if (run.anchor || (way && run.way && run.way !== way)) {
      this.fresh = true
      run = this.run(from)
    }
    if (way) run.way = way
    run.anchor = { kind: 'from', ...anchor }
    run.to = c.before
    return true
  }

  /** The placement with the count it makes, checked against the count that was written. */
  finish(given: Count | undefined, plural: string): { placement: Placement; count: Count } {
    const { c } = this
    const at = c.statement.keyword.span
    const copies = this.mirror ? 2 : 1
    if (this.circle) return { placement: this.boltCircle(given, plural), count: given ?? { value: 1, span: at } }
    if (this.other) {
      const made = (this.other.kind === 'points' ? this.other.points.length : 1) * copies
      const count = given ?? { value: made, span: this.other.span }
      if (count.value !== made) this.miscount(count, made, plural)
      return { placement: this.other, count }
    }
    if (this.runs.length === 0) {
      c.mark('missing-place', at, `where do the ${plural} sit?`, {
        expected:
          'centred both ways, or 2 across 1.250 apart, centred; 1.38 from bottom, or on ⌀4.00 bolt circle, or on axis',
        mends: [inTheMiddle(c.statement, given?.value ?? 1)],
      })
      return { placement: { kind: 'runs', runs: [], span: at }, count: given ?? { value: 1, span: at } }
    }
    const each = given ? given.value / copies : undefined
    const runs = this.countedRuns(each)
    const made = runs.reduce((n, run) => n * run.count.value, 1) * copies
    const span = { from: this.runs[0]!.from, to: this.runs[this.runs.length - 1]!.to }
    const count = given ?? sensibleCount(c, made, span)
    if (count && count.value !== made) this.miscount(count, made, plural)
    return { placement: { kind: 'runs', runs, span }, count: count ?? { value: 1, span } }
  }

  private miscount(count: Count, made: number, plural: string): void {
    const text = `${count.value}X, but the places written make ${made} ${plural}`
    if (made > mostRepeats)
      this.c.mark('contradiction', count.span, text, {
        expected: `places for ${count.value}, and at most ${mostRepeats}`,
      })
    else if (this.evenly && !this.circle)
      this.c.mark('contradiction', count.span, `${text}: equal spacing is read of a bolt circle alone`, {
        expected: `on a bolt circle; round an outside one statement a direction, each THRU both walls: from top, from front`,
      })
    else
      this.c.mark('contradiction', count.span, text, {
        expected: `${made}X, or places for ${count.value}`,
        mends: [{ label: `write ${made}X`, span: count.span, text: `${made}X` }],
      })
  }

  private countedRuns(each: number | undefined): Run[] {
    const { c } = this
    const stated = this.runs.reduce((n, run) => n * (run.count?.value ?? 1), 1)
    const open = this.runs.filter((run) => !run.count && run.pitch)
    return this.runs.map((draft): Run => {
      const span = { from: draft.from, to: draft.to }
      let count = draft.count
      if (!count && draft.pitch) {
        const share = each !== undefined && open.length === 1 ? each / stated : Number.NaN
        if (Number.isInteger(share) && share >= 2) count = { value: share, span: draft.pitch.span }
        else {
          c.mark('missing-count', draft.pitch.span, 'how many are so far apart?', { expected: '2 across 1.250 apart' })
        }
      }
      count ??= { value: 1, span }
      if (count.value > 1 && !draft.pitch && !draft.pitchTold) {
        c.mark('missing-size', span, `how far apart are the ${count.value}?`, { expected: '1.250 apart' })
      }
      if (!draft.anchor) {
        c.mark('missing-place', span, 'the pattern is located from nothing', {
          expected: 'centred, or lowest 1.38 from bottom',
        })
      }
      return {
        count,
        ...(draft.way ? { way: draft.way } : {}),
        ...(draft.pitch ? { pitch: draft.pitch } : {}),
        anchor: draft.anchor ?? { kind: 'centred', span },
        span,
      }
    })
  }

  private boltCircle(given: Count | undefined, plural: string): Placement {
    const { c } = this
    const circle = this.circle!
    const span = { from: circle.from, to: this.first ? Math.max(circle.to, this.first.span.to) : circle.to }
    // `hole … on ⌀100 bolt circle` is one; `holes` needs its number.
    if (!given && /[^s]s$|es$/i.test(c.statement.keyword.text))
      c.mark('missing-count', span, `how many ${plural} are on the circle?`, { expected: '6X, before the callout' })
    if (!this.first) {
      const at = { from: circle.to, to: circle.to }
      c.mark('first-hole-not-said', span, 'where on the circle does the first one sit?', {
        expected: "one at 12 o'clock, first at 30°, or astride the vertical centre line",
        mends: [{ label: "say one at 12 o'clock", span: at, text: ", one at 12 o'clock" }],
      })
    }
    const first = this.first && {
      ...this.first,
      degrees: this.first.degrees === 'astride' ? (90 + 180 / (given?.value ?? 1)) % 360 : this.first.degrees,
    }
    const about = this.about
    return { kind: 'bolt circle', diameter: circle.diameter, first, ...(about ? { about } : {}), span }
  }
}
