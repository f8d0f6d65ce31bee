import type { Anchor } from './brief.ts'
import type { Cursor } from './cursor.ts'
import { readName } from './read-name.ts'
import { readSize } from './read-size.ts'
import type { Span } from './span.ts'

type Which = Anchor['which']

const members: Readonly<Record<string, Which>> = {
  lowest: 'lowest',
  highest: 'highest',
  leftmost: 'leftmost',
  rightmost: 'rightmost',
  frontmost: 'frontmost',
  rearmost: 'rearmost',
}
/** `left end`, `lower side`: the wall or end that a distance reaches. */
const walls: Readonly<Record<string, Which>> = {
  lower: 'lowest',
  bottom: 'lowest',
  upper: 'highest',
  top: 'highest',
  left: 'leftmost',
  right: 'rightmost',
  front: 'frontmost',
  rear: 'rearmost',
}

/** `lowest 1.38 from bottom`, `left end .50 from collar right face`, `centres 1.12 from heel`, `.62 from right`. */
export function readAnchor(c: Cursor): (Anchor & { readonly span: Span }) | undefined {
  const from = c.peek().from
  const read = (): (Anchor & { span: Span }) | undefined => {
    const { which, wall } = readWhich(c)
    const reached = wall ? { which, wall } : { which }
    // `right side at collar left face`: no distance is left between them
    const at = which === 'all' || c.isSizeAhead(1) ? undefined : c.takeWord('at')
    if (at) {
      const name = readName(c, 'the face that it sits at')
      const { unit } = c.setting
      const span = { from: at.from, to: at.to }
      const none = { text: '0', value: 0, form: 'whole', decimals: 0, span, unit, unitTyped: false, mm: 0 } as const
      return name && { ...reached, distance: none, from: name, span: { from, to: c.before } }
    }
    if (!c.atSize() && !(c.at('minus') && c.peek(1).kind === 'number')) return undefined
    const distance = readSize(c, { what: 'the distance', zero: true })
    if (!c.takeWord('from')) return undefined
    const name = readName(c, 'what the distance is measured from')
    if (!distance || !name) return undefined
    return { ...reached, distance, from: name, span: { from, to: c.before } }
  }
  return c.attempt(read)
}

function readWhich(c: Cursor): Pick<Anchor, 'which' | 'wall'> {
  const word = c.peek().text.toLowerCase()
  if (c.at('word') && members[word]) {
    c.index++
    return { which: members[word] }
  }
  if (c.at('word') && walls[word] && c.isWord(1, 'end', 'side', 'wall', 'edge')) {
    const span = { from: c.peek().from, to: c.peek(1).to }
    c.index += 2
    return { which: walls[word], wall: { word: c.peek(-1).text.toLowerCase(), span } }
  }
  c.takeWord('centre', 'centres', 'center', 'centers', 'axis')
  return { which: 'all' }
}
