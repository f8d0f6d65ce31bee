import type { Unit } from '../../brief/size.ts'
import type { SizeLink } from '../../check/stack/links.ts'
import { percent, whatToTighten } from '../../check/stack/say.ts'
import type { StackUp } from '../../check/stack/stack-up.ts'
import type { StackChart } from '../../write/stack-chart.ts'
import type { Outcome } from './stack-worker.ts'

/** A stack as a table a person reads, in the drafter's unit. */
export function printStackUp(up: StackUp, outcome: Outcome, unit: Unit, seed: number): string {
  const { result, wanted } = up
  const figure = (mm: number) => length(mm, unit)
  const shares = new Map(result.contributions.map((c) => [c.link, c]))
  const rows = [
    ['line', 'size', 'nominal', 'upper', 'lower', 'counts', 'worst', 'variance'],
    ...up.links.map((l) => [
      l.line === undefined ? '' : String(l.line),
      l.name,
      l.of === 'size' ? own(l, l.nominal, unit) : '',
      own(l, l.upper, unit, true),
      own(l, l.lower, unit, true),
      counts(l, unit),
      percent(shares.get(l)?.worstShare ?? 0),
      percent(shares.get(l)?.varianceShare ?? 0),
    ]),
  ]
  const widths = rows[0]!.map((_, c) => Math.max(...rows.map((r) => [...r[c]!].length)))
  const table = rows.map((r) =>
    r
      .map((cell, c) => (c === 1 ? cell.padEnd(widths[c]!) : cell.padStart(widths[c]!)))
      .join('  ')
      .trimEnd(),
  )
  const say = (label: string, text: string) => `${label.padEnd(18)}${text}`
  const span = (range: { min: number; max: number }) => `${figure(range.min)} to ${figure(range.max)}`
  const limits = limitWords(wanted, figure)
  const parts = (share: number) => `${Number((1e6 * share).toPrecision(3))} in a million`
  return `${[
    `${up.name}: ${up.from} to ${up.to}, ${up.way}, ${unit}`,
    '',
    ...table.map((row) => `  ${row}`),
    '',
    say('nominal', figure(result.nominal)),
    say('worst case', span(result.worstCase)),
    say('root-sum-square', span(result.rootSumSquare)),
    say(
      'simulated',
      `${span({ min: outcome.low, max: outcome.high })} holds 99.73 % of ${outcome.samples.toLocaleString('en')} (seed ${seed}), mean ${figure(outcome.mean)}, deviation ${figure(outcome.deviation)}`,
    ),
    ...(limits ? [say('asked', `${limits}: ${up.keeps ? 'keeps' : 'does not keep'} by ${up.method}`)] : []),
    ...(wanted.min === undefined ? [] : [say('too small', parts(outcome.below))]),
    ...(wanted.max === undefined ? [] : [say('too large', parts(outcome.above))]),
    say('to tighten', whatToTighten(unit, up)),
    ...up.notes.map((note) => say('note', note)),
  ].join('\n')}\n`
}

function limitWords(wanted: StackUp['wanted'], figure: (mm: number) => string): string {
  return [
    ...(wanted.min === undefined ? [] : [`min ${figure(wanted.min)}`]),
    ...(wanted.max === undefined ? [] : [`max ${figure(wanted.max)}`]),
  ].join(', ')
}

/** A length in the drafter's unit, to a tenth of a micrometre or a hundred-thousandth of an inch. */
function length(mm: number, unit: Unit, signed = false): string {
  const text = unit === 'inch' ? String(Number((mm / 25.4).toFixed(5))) : String(Number(mm.toFixed(4)))
  const short = unit === 'inch' ? text.replace(/^(-?)0\./, '$1.') : text
  return signed && mm > 0 ? `+${short}` : short
}

const own = (l: SizeLink, value: number, unit: Unit, signed = false) =>
  l.unit === 'degrees' ? `${signed && value > 0 ? '+' : ''}${Number(value.toFixed(4))}°` : length(value, unit, signed)

/** How much the length changes for a change of 1: `+0.5`; for an angle, the length for a degree. */
function counts(l: SizeLink, unit: Unit): string {
  const value = l.unit === 'degrees' && unit === 'inch' ? l.sensitivity / 25.4 : l.sensitivity
  return `${value > 0 ? '+' : ''}${Number(value.toFixed(4))}`
}

/** The chart of a stack, in the drafter's unit. */
export function chartOf(up: StackUp, outcome: Outcome, unit: Unit): StackChart {
  const scale = unit === 'inch' ? 1 / 25.4 : 1
  const range = ({ min, max }: { min: number; max: number }) => ({ min: min * scale, max: max * scale })
  const { histogram } = outcome
  const { min, max } = up.wanted
  return {
    title: `${up.name}: ${up.from} to ${up.to}`,
    unit,
    shares: up.result.contributions.map((c) => ({
      name: c.link.name,
      worst: c.worstShare,
      variance: c.varianceShare,
    })),
    histogram: { from: histogram.from * scale, to: histogram.to * scale, counts: histogram.counts },
    worstCase: range(up.result.worstCase),
    rootSumSquare: range(up.result.rootSumSquare),
    wanted: { ...(min === undefined ? {} : { min: min * scale }), ...(max === undefined ? {} : { max: max * scale }) },
    samples: outcome.samples,
  }
}

/** As plain data, lengths in mm. */
export function plainStack(file: string, up: StackUp, outcome: Outcome, seed: number) {
  const { result, wanted, advice } = up
  const shares = new Map(result.contributions.map((c) => [c.link, c]))
  return {
    file,
    name: up.name,
    from: up.from,
    to: up.to,
    way: up.way,
    nominal: result.nominal,
    worstCase: result.worstCase,
    rootSumSquare: result.rootSumSquare,
    simulated: { ...outcome, seed },
    wanted,
    method: up.method,
    keeps: up.keeps,
    tighten: advice.single.map((s) => ({ name: s.link.name, half: s.half ?? null })),
    links: up.links.map((link) => {
      const { span: _, open, ...rest } = link
      const share = shares.get(link)
      return {
        ...rest,
        known: open !== true,
        worstShare: share?.worstShare ?? 0,
        varianceShare: share?.varianceShare ?? 0,
      }
    }),
    notes: up.notes,
  }
}
