import type { Part } from '../../part/part.ts'

/** Thickness in mm where the part is cut from sheet or thin plate and its holes are punched or cut with it; else undefined. */
export function sheetThickness(part: Part): number | undefined {
  const { stock, header } = part.brief
  if (stock?.kind === 'angle' && stock.make === 'formed') return stock.thickness.mm
  if (part.flat && part.flat.thickness.mm <= 6.5) return part.flat.thickness.mm
  if (part.flat && /\bsheet\b/i.test(header.material?.text ?? '')) return part.flat.thickness.mm
  return undefined
}
