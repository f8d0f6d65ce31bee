import { readBrief } from '../../src/brief/read.ts'
import type { OcctKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import type { Part } from '../../src/part/part.ts'

/** Builds parts from short briefs in millimetres and frees them together. */
export function workbench(kernel: OcctKernel) {
  const parts: Part[] = []
  return {
    part(text: string, header = 'units mm\npractice ISO'): Part {
      const brief = readBrief(`${header}\n${text}\n`)
      const part = buildPart(brief, kernel)
      parts.push(part)
      return { ...part, marks: [...brief.marks, ...part.marks] }
    },
    clear() {
      for (const part of parts.splice(0)) kernel.free(part.solid)
    },
  }
}

/** Marks that must be answered. */
export const faults = (part: Part) => part.marks.filter((m) => m.weight === 'must change').map((m) => m.rule)

/** Faces of the body by the start of their name. */
export const named = (part: Part, start: string) => part.body.faces.filter((f) => f.name?.startsWith(start))
