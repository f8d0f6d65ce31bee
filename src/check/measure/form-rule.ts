import type { Header } from '../../brief/brief.ts'
import type { Size } from '../../brief/size.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { NamedFeature } from '../../part/named-feature.ts'
import type { ChosenSize, Part } from '../../part/part.ts'
import { readIso2768 } from '../../tolerance/general/iso2768.ts'
import { deviationsOf } from './deviation.ts'
import { once } from './once.ts'

/** Whether the title block or a note asks for the envelope at every single feature of size: ISO 14405 Ⓔ, ISO 2768-mK-E. */
const envelopeForAll = once(({ standard, notes, general }: Header): boolean => {
  const words = [...(standard ? [standard] : []), ...notes].map((w) => w.text)
  if (words.some((w) => /\bISO 14405(-1)?\b.*(Ⓔ|\(E\))|\benvelope (principle|requirement)\b/i.test(w))) return true
  return general.some((g) => {
    if (g.kind !== 'standard') return false
    const read = readIso2768(g.text)
    return read.ok && read.value.envelope
  })
})

/**
 * Whether the limits of a feature of size hold its form too: by Rule #1 of ASME Y14.5 unless Ⓘ frees it; by ISO 8015 only
 * where Ⓔ stands with the size or for all.
 */
export function keepsEnvelope({ formRule }: Size, header: Header): boolean {
  if (formRule) return formRule.kind === 'envelope'
  return header.practice === 'ASME' || envelopeForAll(header)
}

type Sized = Extract<ChosenSize, { size: unknown }>
type Solid = Pick<Part, 'data' | 'chosen'>

/** Whether a size is that of a round or of two sides that look apart or at each other; a step or a place is not. */
export function isFeatureOfSize({ data }: Solid, c: Sized): boolean {
  if (c.kind === 'diameter') return c.role !== 'countersink' && c.role !== 'drill point'
  if (c.kind === 'width' || c.kind === 'thickness') return true
  if (c.kind !== 'distance') return false
  const normal = (id: string): Vec3 | undefined => {
    const found = data.find((d) => d.id === id)
    return found?.kind === 'plane' ? found.normal : undefined
  }
  const [a, b] = [normal(c.from), normal(c.to)]
  return a !== undefined && b !== undefined && dot(a, b) < -1 + 1e-9
}

/** The size between a flat face and the one back to back or face to face with it, and that other face's name. */
export function sizeAcross(
  part: Solid,
  face: NamedFeature,
): readonly { readonly size: Size; readonly other: string }[] {
  return part.chosen.flatMap((c) => {
    if ((c.kind !== 'distance' && c.kind !== 'thickness') || !isFeatureOfSize(part, c)) return []
    if (c.from !== face.id && c.to !== face.id) return []
    return [{ size: c.size, other: c.from === face.id ? c.to : c.from }]
  })
}

/** A feature that must stay within perfect form at maximum material. */
export interface Envelope {
  readonly size: Size
  /** Id of what bears the size. */
  readonly feature: string
  /** Size at maximum material, mm: the largest shaft, the smallest hole. */
  readonly at: number
  /** Form that is left where the feature is at its least material, mm. */
  readonly form: number
}

/** The features whose size carries Ⓔ, with their envelopes (ISO 14405-1, ISO 2692). */
export function envelopesOf(part: Part): Envelope[] {
  const { header } = part.brief
  return part.chosen.flatMap((c): Envelope[] => {
    if (!('size' in c) || c.size.formRule?.kind !== 'envelope' || !isFeatureOfSize(part, c)) return []
    const d = deviationsOf(c.size, header)
    if (!d) return []
    const own = 'of' in c ? c.of : `${'from' in c ? c.from : ''} to ${'to' in c ? c.to : ''}`
    const hollow = isHollow(part, c)
    return [{ size: c.size, feature: own, at: c.size.mm + (hollow ? d.lower : d.upper), form: d.upper - d.lower }]
  })
}

function isHollow(part: Part, c: Sized): boolean {
  if (c.kind === 'diameter') return c.faces.some((f) => part.body.faces[f]?.reversed)
  if (c.kind === 'width')
    return part.features.some((f) => f.id === c.group && /^(slot|notch|keyseat|pocket)$/.test(f.kind))
  if (c.kind !== 'distance') return false
  const [a, b] = [c.from, c.to].map((id) => part.data.find((d) => d.id === id))
  // Faces that look at each other have air between them.
  if (a?.kind !== 'plane' || b?.kind !== 'plane') return false
  return dot(a.normal, b.point) - dot(a.normal, a.point) > 0
}
