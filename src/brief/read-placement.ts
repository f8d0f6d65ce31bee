import type { Mirror, Name, Placement } from './brief.ts'
import type { Cursor } from './cursor.ts'
import { inTheMiddle } from './in-the-middle.ts'
import { boltCircle, type DraftCircle, type First, readAstride, readCircle, readFirst } from './read-bolt-circle.ts'
import { readMirror } from './read-mirror.ts'
import { readName } from './read-name.ts'
import { readPoints } from './read-points.ts'
import { RunsReader } from './read-runs.ts'
import { mostRepeats, sensibleCount } from './read-size.ts'
import type { Count } from './size.ts'
import type { Span } from './span.ts'

/** Gathers the phrases that say where a feature's members sit. */
export class PlacementReader {
  private readonly runs: RunsReader
  private circle: DraftCircle | undefined
  private first: First | undefined
  private about: Name | undefined
  /** `equally spaced` was said: on a circle, or else round the axis of the worked surface. */
  private evenly: Span | undefined
  private other: Placement | undefined
  mirror: Mirror | undefined
  private readonly c: Cursor

  constructor(c: Cursor, face: string) {
    this.c = c
    this.runs = new RunsReader(c, face)
  }

  /** A semicolon or a new line begins the next run. */
  endClause(): void {
    this.runs.endClause()
  }

  get empty(): boolean {
    return this.runs.empty && !this.circle && !this.other
  }

  /** Reads one phrase; false where what follows is no matter of placement. */
  take(): boolean {
    const { c } = this
    const from = c.peek().from
    if (c.takeWord('centred', 'centered', 'central')) this.runs.takeCentred(from)
    else if (c.atWord('mirrored', 'mirror')) this.mirror = readMirror(c) ?? this.mirror
    else if (c.atWord('on')) return this.takeOn(from)
    else if (c.atWord('at') && c.isSizeAhead(1)) {
      c.index++
      this.other = readPoints(c, from) ?? this.other
    } else if (c.takeWord('equal', 'equally')) {
      c.takeWord('spaced')
      this.evenly = { from, to: c.before }
    } else if (c.atWord('one', 'first') && c.isWord(1, 'at')) this.first = readFirst(c, from) ?? this.first
    else if (c.takeWord('astride')) this.first = readAstride(c, from)
    else if (c.takeWord('about')) this.about = readName(c, 'the centre of the bolt circle')
    else return this.runs.take(from)
    return true
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
    this.circle = readCircle(c, from) ?? this.circle
    return true
  }

  /** The placement with the count it makes, checked against the count that was written. */
  finish(given: Count | undefined, plural: string): { placement: Placement; count: Count } {
    const { c } = this
    const at = c.statement.keyword.span
    const copies = this.mirror ? 2 : 1
    if (this.circle) {
      const placement = boltCircle(c, this.circle, { first: this.first, about: this.about }, given, plural)
      return { placement, count: given ?? { value: 1, span: at } }
    }
    const idle = this.first ?? this.about
    if (idle) {
      const text = c.setting.text.slice(idle.span.from, idle.span.to)
      c.mark('misplaced-words', idle.span, `“${text}” belongs to a bolt circle`, {
        expected: this.evenly
          ? 'the side of the first hole before the colon: holes outside, from top: …'
          : 'on ⌀100 bolt circle before it, or nothing',
      })
    }
    if (this.other) {
      const made = (this.other.kind === 'points' ? this.other.points.length : 1) * copies
      const count = given ?? { value: made, span: this.other.span }
      if (count.value !== made) this.miscount(count, made, plural)
      return { placement: this.other, count }
    }
    if (this.runs.empty) {
      c.mark('missing-place', at, `where do the ${plural} sit?`, {
        expected:
          'centred both ways, or 2 across 1.250 apart, centred; 1.38 from bottom, or on ⌀4.00 bolt circle, or on axis',
        mends: [inTheMiddle(c.statement, given?.value ?? 1)],
      })
      return { placement: { kind: 'runs', runs: [], span: at }, count: given ?? { value: 1, span: at } }
    }
    const each = given ? given.value / copies : undefined
    const runs = this.runs.counted(each)
    const made = runs.reduce((n, run) => n * run.count.value, 1) * copies
    const { span } = this.runs
    if (this.evenly && made === 1 && given && given.value > 1)
      return { placement: { kind: 'runs', runs, around: { span: this.evenly }, span }, count: given }
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
      this.c.mark(
        'contradiction',
        count.span,
        `${text}: equal spacing is read of a bolt circle, or round an axis from one place`,
        {
          expected: `on a bolt circle, or round an outside one place along the axis: 4X ⌀6 THRU one wall; 20 from left face, equally spaced`,
        },
      )
    else
      this.c.mark('contradiction', count.span, text, {
        expected: `${made}X, or places for ${count.value}`,
        mends: [{ label: `write ${made}X`, span: count.span, text: `${made}X` }],
      })
  }
}
