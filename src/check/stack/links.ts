import { locate } from '../../brief/locate.ts'
import type { Angle, Size } from '../../brief/size.ts'
import type { Span } from '../../brief/span.ts'
import type { Part } from '../../part/part.ts'
import { plainText } from '../../sizes/callout/plain-text.ts'
import type { Dimension, SizeSet } from '../../sizes/dimension.ts'
import { framedSizes } from '../../sizes/geometric/basic-sizes.ts'
import type { Equation } from '../../sizes/proof/condition.ts'
import { equationsOf } from '../../sizes/proof/equations.ts'
import { flushEnds } from '../../sizes/proof/flush.ts'
import type { Leverage } from '../../sizes/proof/leverage.ts'
import { makingOf } from '../../sizes/proof/making.ts'
import { type Model, modelOf } from '../../sizes/proof/model.ts'
import { tangencies } from '../../sizes/proof/tangency.ts'
import type { Link } from '../../tolerance/stack/link.ts'
import { type Deviations, deviationsOf } from '../measure/deviation.ts'
import { bonusOf } from '../measure/frame-conditions.ts'
import { framedBy } from '../measure/framed.ts'
import { once } from '../measure/once.ts'
import { quoted } from '../measure/said.ts'

/** One link of a drawing's stack, lengths in mm, angles in degrees. */
export interface SizeLink extends Link {
  /** A size of the sheet, the zone of a frame, or the play between two parts. */
  readonly of: 'size' | 'zone' | 'play'
  readonly unit: 'mm' | 'degrees'
  /** Line of the brief. */
  readonly line?: number
  /** Of a zone: the bonus of its material condition that is left out, mm either way. */
  readonly leftOut?: number
  /** Nothing on the drawing says how exact it is; it is taken as exact. */
  readonly open?: true
}

/** What the sheet says about the solid, as the proof reads it. */
export interface Said {
  readonly model: Model
  readonly equations: readonly Equation[]
  readonly dimensions: ReadonlyMap<
    string,
    Pick<Dimension, 'value' | 'callout' | 'feature' | 'span' | 'alike' | 'tolerance'>
  >
}

export type Sized = { readonly part: Part; readonly sizes: SizeSet }

/** The conditions of a sheet; worked out once for a set of sizes. */
export const saidOf = (drawing: Sized): Said => heard(drawing.sizes)(drawing.part)

const heard = once((sizes: SizeSet) =>
  once((part: Part): Said => {
    const model = modelOf(part.body, makingOf(part))
    const rows = sizes.tables.flatMap((table) =>
      table.rows.map((row) => ({
        id: `${table.view}/${row.tag}`,
        states: row.states ?? [],
        reference: false,
        value: Number.NaN,
        callout: row.size,
        feature: row.feature,
        ...(row.span ? { span: row.span } : {}),
      })),
    )
    const all = [...sizes.dimensions, ...rows]
    const stock = part.chosen.filter((c) => c.kind === 'thickness')
    const noted = stock.flatMap((c) => {
      const [a, b] = [c.from, c.to].map((id) => part.data.find((d) => d.id === id))
      if (!a || !b || all.some((d) => d.span?.from === c.span.from)) return []
      const reach = (d: typeof a) => ({ at: d.point, name: d.name })
      return [
        {
          id: 'thickness note',
          states: [{ kind: 'distance' as const, direction: c.direction, from: reach(a), to: reach(b) }],
          reference: false,
          value: c.size.mm,
          callout: { lines: [[`${c.size.text} THK`]] },
          span: c.span,
        },
      ]
    })
    const stated = [...all, ...noted]
    return {
      model,
      equations: [...tangencies(model), ...flushEnds(model), ...equationsOf(model, stated).equations],
      dimensions: new Map(stated.map((d) => [d.id, d])),
    }
  }),
)

/** A number of the brief behind a condition. */
interface Number_ {
  readonly size: Size | Angle
  /** The number over what the condition measures: 2 for a diameter over a radius. */
  readonly ratio: number
  readonly unit: 'mm' | 'degrees'
}

export interface Chain {
  readonly links: readonly SizeLink[]
  /** What the drawing implies without a number, taken as exact: `centred`, `equally spaced`. */
  readonly assumed: readonly string[]
  /** A bolt circle, an angle or a slope is in the loop: the figures are to first order. */
  readonly oblique: boolean
}

/** One end of a length: the faces of the feature it stands on, and its own slopes by unknown. */
export interface End {
  readonly faces: readonly number[]
  readonly slopes: ReadonlyMap<number, number>
}

/**
 * The links of a length, each counted as often and as much as it moves the length. `bonus`: that of material conditions
 * counts too, as a link of its own beside the size it comes from: a range on the safe side, since the full bonus and the
 * size without it cannot be had together.
 */
export function chainOf(
  { part }: Sized,
  said: Said,
  { levers, slopes }: Leverage,
  ends: readonly End[],
  bonus = false,
): Chain {
  const { equations, dimensions, model } = said
  const { brief } = part
  const links: SizeLink[] = []
  const assumed = new Set<string>()
  const by = new Map(levers.map((l) => [l.equation, l.by]))
  const value = (e: Equation) => e.of(model.values)
  const weights = new Map<number, number>()
  const give = (i: number, weight: number) => weights.set(i, (weights.get(i) ?? 0) + weight)
  const basic = new Map<number, number>()
  for (const [i, lever] of by) {
    const e = equations[i]!
    const now = value(e)
    const number = numberOf(e, now)
    const carrier = number ?? numberOf(e, value(equations[firstOf(i) ?? i]!))
    // What holds the true places, not the places as made.
    if (carrier ? isBasic(carrier.size) : e.kind !== 'size' && e.kind !== 'equal')
      for (const [u, slope] of slopes(i)) basic.set(u, (basic.get(u) ?? 0) + lever * slope)
    if (e.kind === 'size' || (number && Math.abs(now) > 1e-6)) give(i, lever * (Math.sign(now) || 1))
    else if (e.kind === 'equal') {
      // As the first, but made by itself: it strays by a tolerance of its own.
      give(i, lever)
      const first = firstOf(i)
      if (first !== undefined) give(first, -lever)
    } else assumed.add(e.kind)
  }
  for (const [i, weight] of weights) {
    if (Math.abs(weight) < 1e-6) continue
    const e = equations[i]!
    const now = e.kind === 'equal' ? value(equations[firstOf(i) ?? i]!) : value(e)
    const number = numberOf(e, now)
    const dimension = e.dimension === undefined ? undefined : dimensions.get(e.dimension)
    if (number && isBasic(number.size)) links.push(linkOf(number.size, number, weight, { upper: 0, lower: 0 }))
    else if (number) links.push(linkOf(number.size, number, weight, deviations(number)))
    else {
      const t = dimension?.tolerance
      const known = dimension && t && t.from !== 'none' && Math.abs(dimension.value - Math.abs(now)) < 1e-6
      const at = dimension?.span && locate(brief.text, dimension.span.from).line
      links.push({
        name: dimension ? plainText(dimension.callout) : e.kind,
        nominal: Math.abs(now),
        upper: known ? t.upper : 0,
        lower: known ? t.lower : 0,
        sensitivity: weight,
        of: 'size',
        unit: 'mm',
        ...(known ? {} : { open: true as const }),
        ...(at ? { line: at } : {}),
        ...(dimension?.span ? { span: dimension.span } : {}),
      })
    }
  }
  links.push(...zones(basic))
  const plain = (s: number) => [0.25, 0.5, 1, 2].some((p) => Math.abs(Math.abs(s) - p) < 1e-6)
  return {
    links,
    assumed: [...assumed],
    oblique: links.some((l) => l.unit === 'degrees' || !plain(l.sensitivity)),
  }

  /** The condition that carries the number which this one is said to be as. */
  function firstOf(i: number): number | undefined {
    for (let j = i - 1; j >= 0 && equations[j]!.dimension === equations[i]!.dimension; j--)
      if (equations[j]!.kind === 'size') return j
    return undefined
  }

  function numberOf(e: Equation, now: number): Number_ | undefined {
    const dimension = e.dimension === undefined ? undefined : dimensions.get(e.dimension)
    if (!dimension) return undefined
    const length = Math.abs(now)
    const degrees = (length / model.scale) * (180 / Math.PI)
    const places = [dimension.span, ...(dimension.alike ?? [])].flatMap((s) => (s ? [s.from] : []))
    const fits = part.chosen.flatMap((c): (Number_ & { here: boolean })[] => {
      const here = places.includes(c.span.from)
      if (!here && (c.group === undefined || c.group !== dimension.feature)) return []
      if (c.kind === 'angle') {
        const [whole, half] = [degrees, 2 * degrees]
        const ratio = [1, 2].find((r) => Math.abs((r === 1 ? whole : half) - c.angle.value) < 1e-4)
        return ratio ? [{ size: c.angle, ratio: (ratio * 180) / (Math.PI * model.scale), unit: 'degrees', here }] : []
      }
      const ratio = [1, 2].find((r) => Math.abs(r * length - c.size.mm) < 1e-4)
      return ratio ? [{ size: c.size, ratio, unit: 'mm', here }] : []
    })
    return fits.find((f) => f.here) ?? fits[0]
  }

  function isBasic(size: Size | Angle): boolean {
    return !size.tolerance && framedSizes(part).some((f) => f.size === size)
  }

  function deviations({ size, unit }: Number_): Deviations | undefined {
    if (unit === 'mm') return deviationsOf(size as Size, brief.header)
    const t = size.tolerance
    if (t?.kind === 'plus-minus') return { upper: t.value.value, lower: -t.value.value }
    return t?.kind === 'unequal' ? { upper: t.upper.value, lower: t.lower.value } : undefined
  }

  function linkOf(size: Size | Angle, { ratio, unit }: Number_, weight: number, d: Deviations | undefined): SizeLink {
    return {
      name: 'mm' in size ? quoted(size) : `${size.text}°`,
      nominal: 'mm' in size ? size.mm : size.value,
      upper: d?.upper ?? 0,
      lower: d?.lower ?? 0,
      sensitivity: weight / ratio,
      of: 'size',
      unit,
      span: size.span,
      line: locate(brief.text, size.span.from).line,
      ...(d ? {} : { open: true as const }),
    }
  }

  /** A feature on basic sizes strays from its true place by half its zone. */
  function zones(pull: ReadonlyMap<number, number>): SizeLink[] {
    return framedBy(part).flatMap((held): SizeLink[] => {
      const { said: frame, faces, id, zone } = held
      const gain = bonusOf(held, { brief })
      const bars = new Set(
        faces.flatMap((f) => {
          const element = model.elementOf.get(f)
          const reading = element && model.readings[element.id]
          if (!reading) return []
          return reading.form === 'plane' ? [...reading.uses] : reading.bars.filter((u) => u >= 0)
        }),
      )
      return [...bars].flatMap((u): SizeLink[] => {
        const mine = model.unknowns[u]!.elements.every((e) => model.elements[e]!.faces.some((f) => faces.includes(f)))
        // A place shared with others (a hole on a centre line) strays with them only where it is an end itself.
        const own = ends.filter((end) => end.faces.some((f) => faces.includes(f)))
        const weight = mine ? (pull.get(u) ?? 0) : own.reduce((sum, end) => sum + (end.slopes.get(u) ?? 0), 0)
        if (Math.abs(weight) < 1e-6) return []
        const span: Span = frame.frame.rows[0]!.span
        const link = (name: string, wide: number, more: Partial<SizeLink> = {}): SizeLink => ({
          name,
          nominal: 0,
          upper: wide / 2,
          lower: -wide / 2,
          sensitivity: Math.round(weight * 1e6) / 1e6,
          of: 'zone',
          unit: 'mm',
          span,
          line: locate(brief.text, span.from).line,
          ...more,
        })
        if (gain < 1e-9) return [link(`zone of ${id}`, zone)]
        return bonus
          ? [link(`zone of ${id}`, zone), link(`bonus of ${id}`, gain)]
          : [link(`zone of ${id}`, zone, { leftOut: gain / 2 })]
      })
    })
  }
}
