import type { Mark } from '../../brief/mark.ts'
import type { Size } from '../../brief/size.ts'
import type { ChosenSize, Part } from '../../part/part.ts'
import { runIntoMarks } from './run-into.ts'

/** Marks that the brief's own numbers earn, whatever view they stand in. */
export function sizeMarks(part: Part): Mark[] {
  const sized = part.chosen.flatMap((chosen) =>
    chosen.kind === 'angle' ? [] : [{ chosen: chosen as Sized, size: chosen.size }],
  )
  return [
    ...sized.flatMap(({ chosen, size }) => fits(part, chosen, size)),
    ...decimals(part, sized),
    ...runIntoMarks(part),
  ]
}

type Sized = Exclude<ChosenSize, { readonly kind: 'angle' }>

const NO_FIT: Readonly<Partial<Record<ChosenSize['kind'], string>>> = {
  pitch: 'a distance between axes',
  'bolt circle': 'a bolt circle',
  radius: 'a radius',
  chamfer: 'a chamfer',
  'arc length': 'a length along an arc',
  depth: 'a depth',
  length: 'the length of a slot',
}

/** A fit symbol needs a feature of size: a bore or shaft, or two parallel opposite faces (ISO 286-1, 3.1). */
function fits(part: Part, chosen: Sized, size: Size): Mark[] {
  const own = size.tolerance
  if (own?.kind !== 'fit') return []
  const located = chosen.kind === 'distance' && chosen.group !== 'stock' && chosen.group !== 'lengths'
  const what = located ? 'a distance that locates a feature' : NO_FIT[chosen.kind]
  if (what) {
    return [
      {
        rule: 'fit-without-feature',
        weight: 'must change',
        text: `${own.symbol} is a fit, and ${what} has none.`,
        span: own.span,
        expected: '± and a number, or no tolerance',
        source: 'ISO 286-1:2010: fits are for cylinders and for two parallel opposite surfaces (from memory)',
      },
    ]
  }
  if (chosen.kind !== 'diameter') return []
  const faces = part.body.faces.filter((f) => chosen.faces.includes(f.id) && f.surface.kind === 'cylinder')
  const first = faces[0]
  if (!first || faces.some((f) => f.reversed !== first.reversed)) return []
  const isHole = first.reversed
  const capital = /^[A-Z]/.test(own.symbol)
  if (isHole === capital) return []
  const letters = own.symbol.replace(/\d+$/, '')
  const instead = (isHole ? letters.toUpperCase() : letters.toLowerCase()) + own.symbol.slice(letters.length)
  return [
    {
      rule: 'fit-letter-case',
      weight: 'must change',
      text: `${own.symbol} is the symbol of a ${capital ? 'hole' : 'shaft'}, but this is a ${isHole ? 'hole' : 'shaft'}.`,
      span: own.span,
      expected: instead,
      mends: [{ label: `Write ${instead}`, span: own.span, text: instead }],
      source: 'ISO 286-1:2010: capital letters for holes, small ones for shafts (from memory)',
    },
  ]
}

/** More decimals than its sisters tighten a size by the title block, often without anyone meaning it. */
function decimals(part: Part, sized: readonly { chosen: Sized; size: Size }[]): Mark[] {
  if (!part.brief.header.general.some((g) => g.kind === 'decimals')) return []
  const families = new Map<string, Size[]>()
  for (const { chosen, size } of sized) {
    if (size.tolerance || size.unknown || size.form === 'fraction' || size.unit !== part.brief.header.units) continue
    if (chosen.kind === 'diameter' || chosen.kind === 'radius' || chosen.kind === 'chamfer') continue
    const key = `${chosen.group ?? 'stock'}/${chosen.kind}`
    families.set(key, [...(families.get(key) ?? []), size])
  }
  return [...families.values()].flatMap((sizes): Mark[] => {
    const least = Math.min(...sizes.map((s) => s.decimals))
    return sizes.flatMap((size): Mark[] => {
      const sister = sizes.find((s) => s.decimals === least)!
      if (size.decimals <= least || sizes.filter((s) => s.decimals === size.decimals).length > sizes.length / 2)
        return []
      return [
        {
          rule: 'decimals-tighten',
          weight: 'look again',
          text: `${size.text} has more decimals than ${sister.text} beside it, and so a tighter tolerance by the title block. Is that meant?`,
          span: size.span,
          expected: `${least} decimals, or a tolerance written at the size`,
          source: 'common practice, no source',
        },
      ]
    })
  })
}
