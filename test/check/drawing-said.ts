import { withoutPlaces } from '../../src/brief/without-places.ts'
import type { OcctKernel } from '../../src/kernel/open.ts'
import { lazySubject } from './subject.ts'

/**
 * What a drawing says, as text to be compared: the title block, the solid's surfaces, the numbers with their tolerances,
 * the frames, and the requests about the sheet. A fault that leaves all this alone is none. Undefined: nothing was built.
 */
export function drawingSaid(text: string, kernel: OcctKernel): string | undefined {
  const { brief, part, free } = lazySubject(text, kernel)
  try {
    if (brief.marks.some((m) => m.weight === 'must change') || part.body.faces.length === 0) return undefined
    const { header, datums, frames, textures, views, schemes, shows, places, stacks } = withoutPlaces(brief) as Record<
      string,
      unknown
    >
    const rounded = (_: string, v: unknown) => (typeof v === 'number' ? Number(v.toFixed(5)) + 0 : v)
    const faces = part.body.faces.map((f) => JSON.stringify(f.surface, rounded)).sort()
    const chosen = part.chosen
      .map((c) => {
        const number = c.kind === 'angle' ? c.angle : c.size
        return `${c.kind} ${number.text} ${JSON.stringify(number.tolerance, (key, v) => (key === 'span' ? undefined : v))}`
      })
      .sort()
    return JSON.stringify([header, datums, frames, textures, views, schemes, shows, places, stacks, faces, chosen])
  } finally {
    free()
  }
}
