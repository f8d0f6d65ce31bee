import type { Practice } from '../../../brief/brief.ts'
import type { Unit } from '../../../brief/size.ts'
import type { StockName } from './sketches.ts'

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
    // without a name the checker asks for one
    ...(title.trim() ? [`part      ${title.trim()}`] : []),
    `units     ${unit}`,
    `practice  ${practice}`,
    '',
    ...lines[stock],
    '',
  ].join('\n')
}
