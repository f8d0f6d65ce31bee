/** A closed stretch along a carrier, `from` < `to`. */
export interface Interval {
  readonly from: number
  readonly to: number
}

/** Union of intervals; neighbours closer than `gap` grow together. Sorted. */
export function united(intervals: readonly Interval[], gap: number): Interval[] {
  const sorted = [...intervals].sort((a, b) => a.from - b.from)
  const out: { from: number; to: number }[] = []
  for (const next of sorted) {
    const last = out[out.length - 1]
    if (last && next.from <= last.to + gap) last.to = Math.max(last.to, next.to)
    else out.push({ from: next.from, to: next.to })
  }
  return out
}

/** What is left of `of` outside `taken` (sorted, disjoint); leftovers not longer than `least` vanish. */
export function without(of: readonly Interval[], taken: readonly Interval[], least: number): Interval[] {
  const out: Interval[] = []
  for (const whole of of) {
    let from = whole.from
    for (const hole of taken) {
      if (hole.to <= from || hole.from >= whole.to) continue
      if (hole.from - from > least) out.push({ from, to: hole.from })
      from = Math.max(from, hole.to)
    }
    if (whole.to - from > least) out.push({ from, to: whole.to })
  }
  return out
}

/** Cuts an interval of a closed carrier into pieces within [0, period]. */
export function unwound(interval: Interval, period: number): Interval[] {
  if (interval.to - interval.from >= period) return [{ from: 0, to: period }]
  const from = interval.from - Math.floor(interval.from / period) * period
  const to = from + (interval.to - interval.from)
  return to <= period
    ? [{ from, to }]
    : [
        { from, to: period },
        { from: 0, to: to - period },
      ]
}

/** Joins the piece that ends at `period` to the piece that starts at 0. */
export function rewound(intervals: readonly Interval[], period: number, gap: number): Interval[] {
  const first = intervals[0]
  const last = intervals[intervals.length - 1]
  if (!first || !last || first === last || first.from > gap || last.to < period - gap) return [...intervals]
  return [...intervals.slice(1, -1), { from: last.from, to: first.to + period }]
}
