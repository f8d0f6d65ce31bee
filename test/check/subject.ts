import { readBrief } from '../../src/brief/read.ts'
import type { Subject } from '../../src/check/rule.ts'
import type { OcctKernel } from '../../src/kernel/open.ts'
import { buildPart } from '../../src/part/build.ts'
import { layOut } from '../../src/sheet/lay-out.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { chooseSizes } from '../../src/sizes/choose-sizes.ts'
import { drawViews } from '../../src/views/draw-views.ts'

/** A drawing whose later values are derived only when they are asked for: most rules read the part alone. */
export function lazySubject(
  text: string,
  kernel: OcctKernel,
  spoil: (sheet: Sheet) => Sheet = (sheet) => sheet,
): Subject & { free(): void } {
  const brief = readBrief(text)
  const part = buildPart(brief, kernel)
  const lazy = <T>(work: () => T) => {
    let known: { value: T } | undefined
    return () => (known ??= { value: work() }).value
  }
  const views = lazy(() => drawViews(part, kernel))
  const sizes = lazy(() => chooseSizes(part, views()))
  const sheet = lazy(() => spoil(layOut(part, views(), sizes()).sheet))
  return {
    brief,
    part,
    get views() {
      return views()
    },
    get sizes() {
      return sizes()
    },
    get sheet() {
      return sheet()
    },
    free: () => kernel.free(part.solid),
  }
}

/** A complete header, to which a brief's own statements are added; a statement given again takes its place. */
const headers = {
  iso: {
    part: 'Trial piece',
    number: 'TP-0001           rev A',
    units: 'mm',
    practice: 'ISO, first angle',
    material: 'C45E EN ISO 683-1, normalized, 180-220 HB',
    general: 'ISO 2768-m',
    coating: 'oiled',
    texture: 'Ra 1.6',
    edges: 'edges broken 0.2 to 0.5',
    standard: 'ISO 128, ISO 129-1',
    firm: 'Tarnholt Air & Pack Works',
    drawn: 'I. Vasperg, 2024-02-05',
    checked: 'P. Quillfeather, 2024-02-07',
    approved: 'S. Orbanek, 2024-02-08',
  },
  asme: {
    part: 'Trial piece',
    number: 'TP-0002           rev A',
    units: 'inch',
    practice: 'ASME',
    material: 'carbon steel bar, ASTM A108 grade 1045, cold drawn',
    general: 'fractions ±1/64   .XX ±.01   .XXX ±.005   angles ±1/2°',
    coating: 'oiled',
    texture: '63 µin',
    edges: 'break sharp edges .005-.015',
    standard: 'ASME Y14.5-2018',
    firm: 'Tarnholt Air & Pack Works',
    drawn: 'M. Adelund, 2024-03-11',
    checked: 'P. Quillfeather, 2024-03-14',
    approved: 'S. Orbanek, 2024-03-15',
  },
} as const

/**
 * A brief on a complete header. Lines such as `material S235JR` take the place of the header's own; `no material` drops it.
 * The texture of one surface stands beside the header's.
 */
export function onHeader(practice: keyof typeof headers, lines: string): string {
  const rows = lines.split('\n')
  const own: Record<string, string> = { ...headers[practice] }
  const rest: string[] = []
  for (const row of rows) {
    const word = /^(\w+)\s+(.*)$/.exec(row)
    if (word && word[1] === 'no' && word[2]! in own) delete own[word[2]!]
    else if (word && word[1]! in own && !/^texture\s[^:]+:/.test(row)) own[word[1]!] = word[2]!
    else rest.push(row)
  }
  const head = Object.entries(own).map(([key, value]) => `${key.padEnd(9)} ${value}`)
  return `${[...head, ...rest].join('\n')}\n`
}
