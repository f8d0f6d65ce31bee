import type { Header } from '../../brief/brief.ts'
import type { Span } from '../../brief/span.ts'

/** A standard called up in the title block or a note. */
export interface Citation {
  /** `ISO`, `EN`, `ASTM`, `DIN`. */
  readonly body: string
  /** `2081`, `A36`. */
  readonly number: string
  readonly text: string
  readonly span: Span
}

const FORM = /\b(EN ISO|ISO|EN|ASTM|DIN)\s+([A-G]?\d{2,})(?![\w.]*\/)/g

/** Every standard that the header's free words name, in the order of the statements. */
export function citationsOf({ material, coating, standard, notes, edgeBreak, general }: Header): Citation[] {
  const all = [material, coating, standard, edgeBreak, ...notes, ...general.filter((g) => g.kind === 'standard')]
  return all.flatMap((words) =>
    words
      ? [...words.text.matchAll(FORM)].map((m) => ({
          body: m[1] === 'EN ISO' ? 'ISO' : m[1]!,
          number: m[2]!,
          text: m[0],
          // The words stand in the brief as they are kept, blanks and all, unless they run over lines.
          span:
            words.span.to - words.span.from === words.text.length
              ? { from: words.span.from + m.index, to: words.span.from + m.index + m[0].length }
              : words.span,
        }))
      : [],
  )
}

/** Numbers that workshop drawings call up often. From memory; by far not all there are. */
const KNOWN: Readonly<Record<string, readonly string[]>> = {
  ISO: `128 129 286 683 898 965 1101 1302 1461 1660 2063 2081 2692 2768 3040 3098 3506 3522 4042 4957 5455 5457 5458 5459
    6410 6411 7200 7573 8015 9717 10042 10578 10579 13715 13920 14405 15786 16016 21920 22081`.split(/\s+/),
  EN: `485 515 573 586 754 755 1090 1561 1562 1563 1652 1982 10025 10028 10051 10058 10060 10083 10084 10087 10088
    10111 10130 10131 10139 10143 10149 10204 10210 10219 10277 10278 10305 10346 12163 12164 12165 12167`.split(/\s+/),
  ASTM: `A27 A29 A36 A48 A53 A108 A123 A148 A153 A240 A269 A276 A304 A311 A312 A322 A331 A434 A500 A513 A514 A519 A536
    A564 A572 A576 A582 A653 A666 A668 A992 A1008 A1011 B16 B26 B85 B108 B117 B124 B138 B139 B140 B152 B187 B209 B210
    B211 B221 B241 B308 B505 B584 B633 B733`.split(/\s+/),
  DIN: '76 332 471 472 509 974 6784 6885 7168'.split(' '),
}

/** The one known number that a digit too many was typed into; undefined where it is known, or unlike any. */
export function meant({ body, number }: Citation): string | undefined {
  const known = KNOWN[body] ?? []
  if (known.includes(number)) return undefined
  const [letter, digits] = [/^[A-G]?/.exec(number)![0], number.replace(/^[A-G]/, '')]
  if (digits.length < 4) return undefined
  const shorter = new Set([...digits].map((_, i) => letter + digits.slice(0, i) + digits.slice(i + 1)))
  const found = known.filter((k) => shorter.has(k))
  return found.length === 1 ? found[0] : undefined
}
