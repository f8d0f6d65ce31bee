import type { Brief } from '../../brief/brief.ts'
import type { FaceTexture } from '../../brief/geometric.ts'

/** Every roughness Ra that a text names, µm: `Ra 3.2`, `63 µin`. */
export function roughnessIn(text: string): number[] {
  const micrometres = [...text.matchAll(/\bRa\s*(\d+(?:[.,]\d+)?)/g)].map((m) => Number(m[1]!.replace(',', '.')))
  const microinches = [...text.matchAll(/(\d+(?:\.\d+)?)\s*(?:[µμ]in|microinch|RMS)/gi)].map(
    (m) => Number(m[1]) * 0.0254,
  )
  return [...micrometres, ...microinches]
}

/** Ra that is asked of one surface, µm; undefined for other parameters. */
export function localRoughness({ parameter, value, unit }: FaceTexture): number | undefined {
  return parameter === 'Ra' ? value.value * (unit === 'µin' ? 0.0254 : 1) : undefined
}

/** The finest Ra that the title block or a note asks for, of any surface without a symbol, µm. */
export function generalRoughness({ header }: Pick<Brief, 'header'>): number | undefined {
  const all = [header.texture, ...header.notes].flatMap((w) => (w ? roughnessIn(w.text) : []))
  return all.length > 0 ? Math.min(...all) : undefined
}
