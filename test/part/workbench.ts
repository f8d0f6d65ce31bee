import { afterEach, beforeAll } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import { type OcctKernel, openKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import type { Part } from '../../src/part/part.ts'

export interface Bench {
  readonly kernel: OcctKernel
  /** The part of a short brief, in millimetres unless a header says otherwise. */
  part(text: string, header?: string): Part
}

/** Builds parts for the tests of one file, and frees them after each. */
export function openBench(): Bench {
  const parts: Part[] = []
  let kernel: OcctKernel
  beforeAll(async () => {
    kernel = await openKernel()
  })
  afterEach(() => {
    for (const part of parts.splice(0)) kernel.free(part.solid)
  })
  return {
    get kernel() {
      return kernel
    },
    part(text, header = 'units mm\npractice ISO') {
      const brief = readBrief(`${header}\n${text}\n`)
      const part = buildPart(brief, kernel)
      parts.push(part)
      return { ...part, marks: [...brief.marks, ...part.marks] }
    },
  }
}

/** Marks that must be answered. */
export const faults = (part: Part) => part.marks.filter((m) => m.weight === 'must change').map((m) => m.rule)

/** Faces of the body by the start of their name. */
export const named = (part: Part, start: string) => part.body.faces.filter((f) => f.name?.startsWith(start))
