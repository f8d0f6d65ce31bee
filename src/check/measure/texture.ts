import type { Header } from '../../brief/brief.ts'

/** Every roughness Ra that a text names, µm: `Ra 3.2`, `63 µin`. */
function roughnessIn(text: string): number[] {
  const micrometres = [...text.matchAll(/\bRa\s*(\d+(?:[.,]\d+)?)/g)].map((m) => Number(m[1]!.replace(',', '.')))
  const microinches = [...text.matchAll(/(\d+(?:\.\d+)?)\s*(?:[µμ]in|microinch|RMS)/gi)].map(
    (m) => Number(m[1]) * 0.0254,
  )
  return [...micrometres, ...microinches]
}

/** The finest Ra that the title block or a note asks for anywhere, µm. */
export function finestRoughness(header: Header): number | undefined {
  const all = [header.texture, ...header.notes].flatMap((w) => (w ? roughnessIn(w.text) : []))
  return all.length > 0 ? Math.min(...all) : undefined
}
