import type { Body } from '../../kernel/body.ts'
import { type Groups, groupsOf } from '../part/round-features.ts'
import type { ReadSolid } from '../part-from-solid.ts'
import { type Recognised, recognise } from '../recognise/recognise.ts'
import { edgeWords } from './edges.ts'
import { featureWords } from './features.ts'
import { type Outline, outlineAlong } from './outline.ts'
import { prismWords, type StockWords } from './prism.ts'
import { turnedWords } from './turned.ts'
import { statement, type Wording, wordingOf } from './wording.ts'

/** A brief that would make a solid, as far as it is described. */
export interface Beginning {
  readonly text: string
  /** Faces of the solid that no statement accounts for. */
  readonly undescribed: readonly number[]
}

/**
 * Briefs that may make the solid, the fullest first: a turned part, an outline along each axis, and at least the block
 * that it fits in. Sizes are those measured; nothing is said of tolerances, material or finish.
 */
export function beginnings(read: ReadSolid): Beginning[] {
  const { body, unit } = read
  const found = recognise(body)
  const words = wordingOf(unit)
  const groups = groupsOf(found)
  const turned = turnedWords(body, found, groups, words)
  const made: Beginning[] = turned ? [briefOf(read, found, groups, words, turned, undefined)] : []
  for (const axis of [2, 1, 0] as const) {
    const outline = outlineAlong(body, found, axis)
    if (outline) made.push(briefOf(read, found, groups, words, prismWords(body, found, outline, words), outline))
  }
  made.push(briefOf(read, found, groups, words, boxWords(body, words), undefined))
  return made.sort((a, b) => a.undescribed.length - b.undescribed.length)
}

function briefOf(
  read: ReadSolid,
  found: Recognised,
  groups: Groups,
  words: Wording,
  stock: StockWords,
  outline: Outline | undefined,
): Beginning {
  const { body } = read
  const worked = featureWords(body, found, groups, stock, words, outline?.openSlots ?? new Set())
  const edges = edgeWords(body, found, stock, words)
  const told = new Set([...stock.faces, ...worked.faces, ...edges.faces])
  const undescribed = body.faces.filter((f) => !told.has(f.id)).map((f) => f.id)
  const lines = [...header(read), ...stock.lines, ...worked.lines, ...(stock.after ?? []), ...edges.lines]
  return { text: `${lines.join('\n')}\n`, undescribed }
}

function header({ name, unit }: ReadSolid): string[] {
  const inch = unit === 'inch'
  return [statement('part', name), statement('units', unit), statement('practice', inch ? 'ASME' : 'ISO, first angle')]
}

/** The block that the solid fits in, with nothing said of what is taken off it. */
function boxWords({ box, faces }: Body, words: Wording): StockWords {
  const extent = ([0, 1, 2] as const).map((k) => words.length(box.max[k] - box.min[k]))
  const outer = new Set<number>()
  for (const f of faces)
    for (const k of [0, 1, 2] as const)
      if (
        f.surface.kind === 'plane' &&
        Math.abs(f.surface.axes.z[k]) > 1 - 1e-9 &&
        [box.min[k], box.max[k]].includes(f.surface.axes.origin[k])
      )
        outer.add(f.id)
  return { lines: [statement('block', extent.join(' × '))], faces: outer, nameOf: () => undefined }
}
