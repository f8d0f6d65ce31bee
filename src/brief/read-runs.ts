import type { Anchor, Run } from './brief.ts'
import { type Cursor, spanOf } from './cursor.ts'
import { readAnchor } from './read-anchor.ts'
import { readName } from './read-name.ts'
import { readSize, sensibleCount } from './read-size.ts'
import type { Count, Size } from './size.ts'
import type { Span } from './span.ts'

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

const withoutWay = ({ way: _, ...anchor }: Anchor & { readonly way: 'across' | 'up'; readonly span: Span }) => anchor

/** Gathers the rows that a feature's members stand in: `2 across 1.250 apart, centred; lowest 1.38 from bottom`. */
export class RunsReader {
  private readonly runs: DraftRun[] = []
  private fresh = true
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
    return this.runs.length === 0
  }

  /** From the first run's beginning to the last one's end. */
  get span(): Span {
    return { from: this.runs[0]!.from, to: this.runs[this.runs.length - 1]!.to }
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

  /** After `centred`, which began at `from`. */
  takeCentred(from: number): void {
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

  /** Reads one phrase of a run; false where what follows is none. */
  take(from: number): boolean {
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

  /** The runs with their counts, where `each` members share them. */
  counted(each: number | undefined): Run[] {
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
}
