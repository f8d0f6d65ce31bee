import type { Mark } from '../../brief/mark.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import type { Annotation, Sign } from '../annotation.ts'
import type { Context } from '../choose/context.ts'
import type { Dimension, Statement } from '../dimension.ts'
import { borderOf } from './border.ts'
import { datumSign, frameSign, standsAtSize, textureSign } from './signs.ts'
import { borderPlaces, surfacePlaces } from './surface-places.ts'

/** Sizes with the signs that stand at them, and the signs that stand at surfaces. */
export interface Annotated {
  readonly dimensions: readonly Dimension[]
  readonly annotations: readonly Annotation[]
}

/** Gives the brief's frames, datum letters and textures their places: with a feature's own size, or at its surface. */
export function annotate(context: Context, dimensions: readonly Dimension[]): Annotated {
  const asked = signsOf(context)
  if (asked.length === 0) return { dimensions, annotations: [] }
  const atSizes = new Map<string, Sign[]>()
  const atSurfaces = new Map<string, { feature: NamedFeature; signs: Sign[]; border?: readonly number[] }>()
  for (const { feature, sign, atSize, border } of asked) {
    const own = atSize ? ownSize(feature, dimensions) : undefined
    if (own) atSizes.set(own.id, [...(atSizes.get(own.id) ?? []), sign])
    else {
      // A texture stands by itself; frames and letters of one surface stand together.
      const key = sign.kind === 'texture' ? sign.id : border ? `border of ${feature.id}` : feature.id
      const group = atSurfaces.get(key) ?? { feature, signs: [], ...(border ? { border } : {}) }
      group.signs.push(sign)
      atSurfaces.set(key, group)
    }
  }
  return {
    dimensions: dimensions.map((d) => (atSizes.has(d.id) ? { ...d, signs: ordered(atSizes.get(d.id)!) } : d)),
    annotations: [...atSurfaces.values()].flatMap(({ feature, signs, border }) => {
      const shown = border ? borderPlaces(context, feature, border) : surfacePlaces(context, feature)
      const [first] = ordered(signs)
      if (shown && first) {
        const { view, places } = shown
        const of = feature.feature ? { feature: feature.feature } : {}
        const many = context.features.get(feature.feature ?? '')?.members.length ?? 1
        const count = many > 1 ? { count: context.writing.habit.times(many).trim() } : {}
        return [{ id: first.id, view, signs: ordered(signs), places, ...count, ...of, span: first.span }]
      }
      context.marks.push(...signs.map((s) => nowhere(s, feature, border !== undefined)))
      return []
    }),
  }
}

/** Frames in the order written, the datum letter under them. */
function ordered(signs: readonly Sign[]): Sign[] {
  return [...signs].sort((a, b) => Number(a.kind === 'datum') - Number(b.kind === 'datum'))
}

interface Asked {
  readonly feature: NamedFeature
  readonly sign: Sign
  readonly atSize: boolean
  /** The faces that a profile all around holds. */
  readonly border?: readonly number[]
}

function signsOf({ part, header, writing }: Context): Asked[] {
  const { datums = [], frames = [], textures = [] } = part.brief
  const { named } = part
  if (!named) return []
  const with_ = <T>(
    list: readonly T[],
    found: readonly (NamedFeature | undefined)[],
    make: (said: T, i: number, feature: NamedFeature) => Asked,
  ) =>
    list.flatMap((said, i) => {
      const feature = found[i]
      return feature ? [make(said, i, feature)] : []
    })
  return [
    ...with_(frames, named.frames, (said, i, feature) => {
      const border = borderOf(part, said, feature)
      return {
        feature,
        sign: frameSign(said, i + 1, writing),
        atSize: standsAtSize(said.frame, feature, header.practice),
        ...(border ? { border } : {}),
      }
    }),
    ...with_(datums, named.datums, (said, _, feature) => ({
      feature,
      sign: datumSign(said),
      atSize: feature.kind !== 'plane',
    })),
    ...with_(textures, named.textures, (said, i, feature) => ({
      feature,
      sign: textureSign(said, i + 1, writing),
      atSize: false,
    })),
  ]
}

/** The size of the feature alone: one that is said for others too would take the letter for all of them. */
function ownSize(feature: NamedFeature, dimensions: readonly Dimension[]): Dimension | undefined {
  const { size, faces } = feature
  if (!size) return undefined
  return dimensions.find((d) => {
    if (!d.span || d.reference || d.span.from > size.span.from || d.span.to < size.span.to) return false
    if (d.group && !d.states?.some((s) => isAcross(s, feature))) return false
    return (d.states ?? []).every(
      (s) => s.kind !== 'radius' || feature.feature === d.feature || s.faces.every((f) => faces.includes(f)),
    )
  })
}

/** A scheme's place of the feature bears the words of its size; only the extent from face to face is the size itself. */
const isAcross = (said: Statement, { faces }: NamedFeature): boolean =>
  said.kind === 'distance' && [said.from, said.to].every((r) => r.faces?.some((f) => faces.includes(f)))

function nowhere(sign: Sign, feature: NamedFeature, around: boolean): Mark {
  const what = sign.kind === 'texture' ? 'surface texture' : sign.kind === 'frame' ? 'tolerance frame' : sign.id
  return {
    rule: 'no-view-for-sign',
    weight: 'must change',
    text: `No view shows ${feature.id} where its ${what} could stand.`,
    span: sign.span,
    expected: around
      ? 'a view that looks onto the face, by `views`, or no “all around”'
      : 'a view that shows the surface edge-on, or a section through it',
    source: 'ASME Y14.5-2018, ISO 1101: signs stand where the feature shows true (from memory)',
  }
}
