import type { Brief, Feature, HoleFeature, Run } from '../../src/brief/brief.ts'
import { readBrief } from '../../src/brief/read.ts'
import type { Size } from '../../src/brief/size.ts'
import type { Span } from '../../src/brief/span.ts'
import { sizesOf } from '../../src/check/measure/all-sizes.ts'

/** A good brief with one fault put in, as a tired drafter would. */
export interface Mutation {
  readonly kind: string
  readonly text: string
  /** What was changed, in words. */
  readonly change: string
  /** The lines that were touched, counted from 1; absent where a statement is gone, or where every size is concerned. */
  readonly lines?: readonly [number, number]
}

/** Numbers from 0 up to 1, the same ones for the same seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

interface Desk {
  readonly brief: Brief
  readonly random: () => number
}
interface Edit {
  readonly span: Span
  readonly text: string
}
type Maker = (desk: Desk) => Edit | undefined

/** One fault in a brief, of a kind that the brief can have; undefined where the kinds tried did not apply. */
export function mutate(text: string, random: () => number): Mutation | undefined {
  const brief = readBrief(text)
  const kinds = Object.keys(makers)
  for (let tries = 0; tries < 40; tries++) {
    const kind = kinds[Math.floor(random() * kinds.length)]!
    const edit = makers[kind]!({ brief, random })
    if (!edit) continue
    const after = text.slice(0, edit.span.from) + edit.text + text.slice(edit.span.to)
    if (after === text) continue
    const line = (at: number) => after.slice(0, at).split('\n').length
    const was = text.slice(edit.span.from, edit.span.to).trim()
    return {
      kind,
      text: after,
      change: `${was} → ${edit.text.trim() || 'nothing'}`,
      ...(edit.text === '' || kind === 'units changed'
        ? {}
        : { lines: [line(edit.span.from), line(edit.span.from + edit.text.length)] as const }),
    }
  }
  return undefined
}

const pick = <T>(list: readonly T[], random: () => number): T | undefined => list[Math.floor(random() * list.length)]
const holes = (brief: Brief) => brief.features.filter((f): f is HoleFeature => f.kind === 'hole')
const runsOf = (f: Feature): readonly Run[] => ('placement' in f && f.placement.kind === 'runs' ? f.placement.runs : [])

/** Digits in the style of the size that they replace. */
function digits(size: Size, mm: number, decimals = Math.max(size.decimals, size.unit === 'inch' ? 2 : 1)): string {
  const value = size.unit === 'inch' ? mm / 25.4 : mm
  const text = value.toFixed(decimals)
  const plain = size.unit === 'inch' ? text.replace(/^0\./, '.') : String(Number(text))
  return size.text.includes(',') ? plain.replace('.', ',') : plain
}
const set = (size: Size, mm: number, decimals?: number): Edit => ({ span: size.span, text: digits(size, mm, decimals) })

/** The whole statement, its continuation lines and its line end. */
function statement(text: string, at: number): Span {
  const from = text.lastIndexOf('\n', at - 1) + 1
  let to = text.indexOf('\n', at) + 1
  while (/^[ \t]/.test(text.slice(to)) && to > 0) to = text.indexOf('\n', to) + 1
  return { from, to: to > 0 ? to : text.length }
}

const makers: Readonly<Record<string, Maker>> = {
  'hole at the edge': ({ brief, random }) => {
    const spots = holes(brief).flatMap((h) => {
      const runs = h.placement.kind === 'runs' ? h.placement.runs : []
      return runs.flatMap((r) => (r.anchor.kind === 'from' ? [{ h, size: r.anchor.distance }] : []))
    })
    const spot = pick(spots, random)
    return spot && set(spot.size, (spot.h.diameter.mm / 2) * (1 + 0.1 * random()), spot.size.unit === 'inch' ? 3 : 1)
  },
  'pattern spread to the edge': ({ brief, random }) => {
    const { stock } = brief
    const spots = holes(brief).flatMap((h) => {
      if (h.placement.kind === 'bolt circle' && stock?.kind === 'disc')
        return [{ size: h.placement.diameter, mm: stock.diameter.mm - h.diameter.mm * (1 + 0.2 * random()) }]
      if (stock?.kind !== 'plate' && stock?.kind !== 'block') return []
      return runsOf(h).flatMap((r, i) => {
        const room = i === 0 ? stock.length.mm : stock.width.mm
        const spaces = r.count.value - 1
        return r.pitch && spaces > 0 && h.face.text === 'top'
          ? [{ size: r.pitch, mm: (room - h.diameter.mm * (1 + 0.2 * random())) / spaces }]
          : []
      })
    })
    const spot = pick(spots, random)
    return spot && set(spot.size, spot.mm)
  },
  'pattern closed up': ({ brief, random }) => {
    const spots = holes(brief).flatMap((h) =>
      runsOf(h).flatMap((r) => (r.pitch && r.count.value > 1 ? [{ h, size: r.pitch }] : [])),
    )
    const spot = pick(spots, random)
    return spot && set(spot.size, spot.h.diameter.mm * (0.7 + 0.35 * random()))
  },
  'place dropped': ({ brief, random }) => {
    const spots = brief.features.flatMap((f) =>
      runsOf(f).flatMap((r) => (r.anchor.kind === 'from' ? [r.anchor.span] : [])),
    )
    const span = pick(spots, random)
    return span && { span, text: '' }
  },
  'placement dropped': ({ brief, random }) => {
    const placed = brief.features.flatMap((f) => ('placement' in f ? [f.placement.span] : []))
    const span = pick(placed, random)
    return span && { span, text: '' }
  },
  'depth dropped': ({ brief, random }) => {
    const cut = brief.features.flatMap((f) => {
      if (f.kind === 'notch' && f.depth) return [f.depth.span]
      if (f.kind === 'keyseat' && f.depth) return [f.depth.span]
      return f.kind === 'groove' && f.bottom ? [f.bottom.span] : []
    })
    const span = pick(cut, random)
    return span && { span, text: '' }
  },
  'stock size dropped': ({ brief, random }) => {
    const { stock } = brief
    const sizes = sizesOf(brief).filter((s) => s.in === stock)
    const size = pick(sizes, random)?.size
    return size && { span: size.span, text: '' }
  },
  'fit swapped': ({ brief, random }) => {
    const fit = pick(
      sizesOf(brief).flatMap(({ size }) => (size.tolerance?.kind === 'fit' ? [size.tolerance] : [])),
      random,
    )
    if (!fit) return undefined
    const isHole = /^[A-Z]/.test(fit.symbol)
    return { span: fit.span, text: isHole ? fit.symbol.toLowerCase() : fit.symbol.toUpperCase() }
  },
  'fit that is none': ({ brief, random }) => {
    const fit = pick(
      sizesOf(brief).flatMap(({ size }) => (size.tolerance?.kind === 'fit' ? [size.tolerance] : [])),
      random,
    )
    return (
      fit && {
        span: fit.span,
        text: pick(/^[A-Z]/.test(fit.symbol) ? ['K12', 'N2', 'P2'] : ['j14', 'v2', 'k19'], random)!,
      }
    )
  },
  'tolerance blown up': ({ brief, random }) => {
    const own = sizesOf(brief).flatMap(({ size }) =>
      size.tolerance?.kind === 'plus-minus' ? [{ size, num: size.tolerance.value }] : [],
    )
    const spot = pick(own, random)
    return spot && { span: spot.num.span, text: digits(spot.size, spot.size.mm * (1 + random()), 2) }
  },
  'limits turned': ({ brief, random }) => {
    const own = sizesOf(brief).flatMap(({ size }) => (size.tolerance?.kind === 'limits' ? [size.tolerance] : []))
    const t = pick(own, random)
    if (!t) return undefined
    const from = Math.min(t.upper.span.from, t.lower.span.from)
    const to = Math.max(t.upper.span.to, t.lower.span.to)
    return { span: { from, to }, text: `${t.lower.text}/${t.upper.text}` }
  },
  'radius impossible': ({ brief, random }) => {
    const { stock } = brief
    const rounds = brief.features.flatMap((f) => (f.kind === 'round' ? [f.size] : []))
    const round = pick(rounds, random)
    if (round && random() < 0.7) return set(round, round.mm * (8 + 8 * random()))
    if (stock?.kind === 'angle' && stock.make === 'formed' && stock.insideRadius)
      return set(stock.insideRadius, stock.thickness.mm * (0.1 + 0.3 * random()))
    return undefined
  },
  'chamfer impossible': ({ brief, random }) => {
    const chamfer = pick(
      brief.features.flatMap((f) => (f.kind === 'chamfer' ? [f.size] : [])),
      random,
    )
    return chamfer && set(chamfer, chamfer.mm * (40 + 40 * random()))
  },
  'thread too deep': ({ brief, random }) => {
    const threaded = holes(brief).flatMap((h) =>
      h.threadDepth && h.depth.kind === 'blind' ? [{ h, deep: h.depth.size }] : [],
    )
    const spot = pick(threaded, random)
    return spot && set(spot.h.threadDepth!, spot.deep.mm * (0.95 + 0.1 * random()))
  },
  'thread that is none': ({ brief, random }) => {
    const thread = pick(
      holes(brief).flatMap((h) => (h.thread ? [h.thread] : [])),
      random,
    )
    if (!thread) return undefined
    if (/^M/.test(thread.text))
      return { span: thread.span, text: `${thread.text}×${pick(['1.1', '0.9', '2.2'], random)}` }
    return {
      span: thread.span,
      text:
        random() < 0.5
          ? thread.text.replace(/2B/, '2A')
          : thread.text.replace(/-(\d\d)/, (_, n) => `-${Number(n) + 1}`),
    }
  },
  'tap drill wrong': ({ brief, random }) => {
    const drilled = pick(
      holes(brief).filter((h) => h.threadDepth),
      random,
    )
    return drilled && set(drilled.diameter, drilled.diameter.mm * (random() < 0.5 ? 0.9 : 1.1))
  },
  'drill too deep': ({ brief, random }) => {
    const blind = pick(
      holes(brief).flatMap((h) => (h.depth.kind === 'blind' ? [h.depth.size] : [])),
      random,
    )
    return blind && set(blind, blind.mm * (4 + 4 * random()))
  },
  'odd drill': ({ brief, random }) => {
    const plain = pick(
      holes(brief).filter((h) => !h.thread && !h.diameter.tolerance && h.diameter.mm < 25),
      random,
    )
    return (
      plain &&
      set(
        plain.diameter,
        plain.diameter.mm + (plain.diameter.unit === 'inch' ? 0.13 : 0.07),
        plain.diameter.unit === 'inch' ? 4 : 2,
      )
    )
  },
  'counterbore impossible': ({ brief, random }) => {
    const h = pick(
      holes(brief).filter((f) => f.counterbore),
      random,
    )
    if (!h) return undefined
    return random() < 0.5
      ? set(h.counterbore!.diameter, h.diameter.mm * (0.8 + 0.3 * random()))
      : set(h.counterbore!.depth, h.counterbore!.depth.mm * (2 + 2 * random()))
  },
  'decimal point slipped': ({ brief, random }) => {
    const spots = brief.features.flatMap((f) =>
      runsOf(f).flatMap((r) => [r.pitch, r.anchor.kind === 'from' ? r.anchor.distance : undefined]),
    )
    const size = pick(
      spots.filter((s): s is Size => s !== undefined),
      random,
    )
    return size && set(size, size.mm * 10)
  },
  'keyseat changed': ({ brief, random }) => {
    const key = pick(
      brief.features.flatMap((f) => (f.kind === 'keyseat' ? [f] : [])),
      random,
    )
    return (
      key &&
      (random() < 0.5 || !key.length ? set(key.width, key.width.mm * 1.25, 3) : set(key.length, key.length.mm * 8))
    )
  },
  'header dropped': ({ brief, random }) => {
    const { header: h } = brief
    const said = [h.material, h.number, h.general[0], h.texture, h.edgeBreak, h.part, h.drawn?.name].flatMap((w) =>
      w ? [w.span] : [],
    )
    const span = pick(said, random)
    return span && { span: statement(brief.text, span.from), text: '' }
  },
  'stock dropped': ({ brief, random }) =>
    brief.stock && random() < 0.3 ? { span: statement(brief.text, brief.stock.span.from), text: '' } : undefined,
  'said twice': ({ brief, random }) => {
    const feature = pick(brief.features, random)
    if (!feature) return undefined
    const span = statement(brief.text, feature.span.from)
    const whole = brief.text.slice(span.from, span.to)
    return { span, text: whole + whole }
  },
  'standard of the other practice': ({ brief }) =>
    brief.header.standard && {
      span: brief.header.standard.span,
      text: brief.header.practice === 'ASME' ? 'ISO 128, ISO 129-1' : 'ASME Y14.5-2018',
    },
  'coating of another metal': ({ brief }) =>
    brief.header.coating && {
      span: brief.header.coating.span,
      text: /alumin/i.test(brief.header.material?.text ?? '') ? 'hot-dip galvanized ASTM A123' : 'anodized, natural',
    },
  'dates turned': ({ brief }) => {
    const { drawn, checked } = brief.header
    return drawn?.date && checked?.date && drawn.date.text !== checked.date.text
      ? { span: checked.date.span, text: drawn.date.text.replace(/^\d{4}/, (y) => String(Number(y) - 1)) }
      : undefined
  },
  'units changed': ({ brief, random }) =>
    brief.header.said?.units && random() < 0.3
      ? { span: brief.header.said.units, text: `units     ${brief.header.units === 'inch' ? 'mm' : 'inch'}` }
      : undefined,
  'word misspelt': ({ brief, random }) => {
    const body = brief.text.slice(brief.stock?.span.from ?? 0)
    const words = [...body.matchAll(/\b[a-z]{5,}\b/g)].filter(
      (w) => !/#.*$/.test(body.slice(0, w.index).split('\n').pop()!),
    )
    const word = pick(words, random)
    if (!word) return undefined
    const from = (brief.stock?.span.from ?? 0) + word.index
    const drop = 1 + Math.floor(random() * (word[0].length - 2))
    return { span: { from, to: from + word[0].length }, text: word[0].slice(0, drop) + word[0].slice(drop + 1) }
  },
}
