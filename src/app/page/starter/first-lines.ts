import type { Practice } from '../../../brief/brief.ts'
import type { Unit } from '../../../brief/size.ts'
import type { Vec3 } from '../../../geometry/vec.ts'
import type { StockName } from './sketches.ts'

/** A size that stands on a sketch, to be written over. */
export interface SketchSize {
  readonly name: string
  /** Point of the sketch that the size stands at. */
  readonly at: Vec3
  readonly inch: string
  readonly mm: string
}

const size = (name: string, at: Vec3, inch: string, mm: string): SketchSize => ({ name, at, inch, mm })

/** The few sizes of each stock, where they stand on its sketch. */
export const sketchSizes: Readonly<Record<StockName, readonly SketchSize[]>> = {
  plate: [
    size('length', [4.5, 0, -1], '4.00', '100'),
    size('width', [10, 3, 0], '2.00', '60'),
    size('thickness', [0, 0, 1.6], '.25', '8'),
  ],
  block: [
    size('length', [3, 0, -1], '3.00', '80'),
    size('width', [7, 2.2, 0], '2.00', '50'),
    size('height', [-0.6, 0, 2], '1.50', '40'),
  ],
  angle: [
    size('length', [3.5, 0, -1.2], '3.00', '80'),
    size('base', [8.4, 2.5, 0], '2.00', '50'),
    size('upright', [8, 5.6, 4.4], '3.00', '80'),
    size('thickness', [-0.4, 5, 7.4], '.188', '5'),
    size('inside radius', [3.5, 3, 2], '.19', '5'),
  ],
  channel: [
    size('length', [4, 0, -1.2], '8.00', '200'),
    size('height', [9.4, 4, 3.4], '3.00', '80'),
    size('width', [9, 1.4, -0.5], '1.50', '45'),
    size('thickness', [0, 0, 7.4], '.25', '6'),
  ],
  tee: [
    size('length', [4, 0, 0.2], '6.00', '120'),
    size('height', [9.5, 4, 1.8], '2.00', '50'),
    size('width', [3, 2.5, 6.4], '2.00', '50'),
    size('thickness', [-0.6, 0, 5.4], '.25', '6'),
  ],
  'flat bar': [
    size('length', [5.5, 0, -1], '8.00', '150'),
    size('width', [12.2, 1.3, 0], '1.50', '40'),
    size('thickness', [0, 0, 1.7], '.25', '8'),
  ],
  'round bar': [size('length', [4.5, -1.2, -2], '5.00', '120'), size('diameter', [10.6, 1, 1], '1.00', '25')],
  tube: [
    size('length', [3.5, -1.6, -2.4], '4.00', '100'),
    size('outside', [8, 2.4, 2.4], '2.00', '60'),
    size('inside', [8.6, 0, 0], '1.50', '45'),
  ],
  disc: [size('diameter', [0, 0, -4.6], '4.00', '120'), size('thickness', [2.8, 1, 2.8], '.50', '16')],
  turned: [
    size('left ⌀', [0.2, 0, 2.4], '.75', '20'),
    size('left length', [1.2, -1.2, -2], '1.00', '28'),
    size('collar ⌀', [4.6, 0, 3.8], '1.25', '28'),
    size('collar length', [3.8, -2.4, -2.6], '.25', '6'),
    size('right ⌀', [8.4, 0, 2.6], '.88', '22'),
    size('right length', [7.2, -1.4, -2.2], '2.00', '58'),
  ],
  outline: [
    size('length', [3.5, 0, -1], '4.00', '120'),
    size('right height', [8.2, 0.4, 0.8], '.75', '20'),
    size('height', [-1, 0, 3], '3.00', '120'),
    size('top width', [1, 0.4, 7], '.75', '20'),
    size('thickness', [8, 1.6, -0.6], '.25', '8'),
  ],
}

export interface Beginning {
  readonly stock: StockName
  readonly title: string
  readonly unit: Unit
  readonly practice: Practice
  readonly sizes: Readonly<Record<string, string>>
}

/** The first lines of a brief: header, stock, and nothing that was not said. */
export function firstLines({ stock, title, unit, practice, sizes }: Beginning): string {
  const s = (name: string) => (sizes[name] ?? '').trim() || '?'
  const slope = (whole: string, part: string) => {
    const left = Number(whole) - Number(part)
    return Number.isFinite(left) && left > 0 ? String(Math.round(left * 1e4) / 1e4) : '?'
  }
  const lines: Readonly<Record<StockName, readonly string[]>> = {
    plate: [`plate     ${s('length')} × ${s('width')} × ${s('thickness')}`],
    block: [`block     ${s('length')} × ${s('width')} × ${s('height')}`],
    angle: [
      `angle     formed, ${s('thickness')} STK, inside R ${s('inside radius')}`,
      `          upright ${s('upright')} high, at rear; base ${s('base')} toward front; length ${s('length')}`,
    ],
    channel: [
      `channel   ${s('height')} high × ${s('width')} wide × ${s('thickness')} thick, ${s('length')} long, axis left-right`,
    ],
    tee: [
      `tee       ${s('height')} high × ${s('width')} wide × ${s('thickness')} thick, ${s('length')} long, axis left-right`,
    ],
    'flat bar': [`flat bar  ${s('width')} × ${s('thickness')}, ${s('length')} long`],
    'round bar': [`round bar ⌀${s('diameter')}, ${s('length')} long, axis left-right`],
    tube: [`tube      ⌀${s('outside')} outside, ⌀${s('inside')} inside, ${s('length')} long, axis left-right`],
    disc: [`disc      ⌀${s('diameter')} × ${s('thickness')}, outer face front`],
    turned: [
      'turned    axis left-right',
      `          left    ⌀${s('left ⌀')}, ${s('left length')} long`,
      `          collar  ⌀${s('collar ⌀')}, ${s('collar length')} long`,
      `          right   ⌀${s('right ⌀')}, ${s('right length')} long`,
    ],
    outline: [
      `outline   ${s('thickness')} thick, face front`,
      `          right ${s('length')}; up ${s('right height')}; slope left ${slope(s('length'), s('top width'))} up ${slope(s('height'), s('right height'))}; left ${s('top width')}; close`,
    ],
  }
  return [
    `part      ${title.trim() || 'Untitled'}`,
    `units     ${unit}`,
    `practice  ${practice}`,
    '',
    ...lines[stock],
    '',
  ].join('\n')
}
