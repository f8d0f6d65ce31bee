import type { Vec2 } from '../../../geometry/vec.ts'
import { EM_OVER_CAPITAL } from '../../../sheet/lettering/metrics.ts'
import type { Sheet, SheetItem } from '../../../sheet/sheet.ts'
import { pathOf } from '../../../write/path-data.ts'
import type { Light } from './light.ts'

const SVG = 'http://www.w3.org/2000/svg'

/** The ink of one sheet in the document. Elements whose item did not change stay, so that a small change paints fast. */
export class Ink {
  readonly #group: SVGGElement
  #keys: string[] = []
  #lit: number[] = []

  constructor(group: SVGGElement) {
    this.#group = group
  }

  /** Puts the sheet's items into the group, one element an item, in their order. */
  paint(sheet: Sheet): void {
    this.unlight()
    const keys = sheet.items.map((item) => keyOf(item, sheet.height))
    const { children } = this.#group
    // What is the same at both ends of the list is left alone.
    let head = 0
    while (head < keys.length && head < this.#keys.length && keys[head] === this.#keys[head]) head++
    let tail = 0
    while (
      tail < keys.length - head &&
      tail < this.#keys.length - head &&
      keys[keys.length - 1 - tail] === this.#keys[this.#keys.length - 1 - tail]
    ) {
      tail++
    }
    const oldMiddle = new Map<string, Element[]>()
    for (let i = this.#keys.length - tail - 1; i >= head; i--) {
      const element = children[i]!
      const key = this.#keys[i]!
      oldMiddle.set(key, [...(oldMiddle.get(key) ?? []), element])
    }
    const before = children[this.#keys.length - tail] ?? null
    const fresh = document.createDocumentFragment()
    for (let i = head; i < keys.length - tail; i++) {
      fresh.append(oldMiddle.get(keys[i]!)?.pop() ?? elementOf(sheet.items[i]!, sheet.height))
    }
    for (const left of oldMiddle.values()) for (const element of left) element.remove()
    this.#group.insertBefore(fresh, before)
    this.#keys = keys
  }

  /** Lights the items and no others. */
  light(light: Light | undefined): void {
    this.unlight()
    if (!light) return
    for (const i of light.beside) this.#mark(i, 'beside')
    for (const i of light.items) this.#mark(i, 'lit')
  }

  unlight(): void {
    for (const i of this.#lit) this.#group.children[i]?.classList.remove('lit', 'beside')
    this.#lit = []
  }

  #mark(i: number, name: string): void {
    this.#group.children[i]?.classList.add(name)
    this.#lit.push(i)
  }
}

/**
 * What an item's element is made of. Its words in the brief and its edges of the solid are not: they shift with every
 * keystroke before them, and are looked up in the sheet.
 */
function keyOf({ tie, ...ink }: SheetItem, height: number): string {
  return `${height} ${tie?.view ?? ''} ${tie?.dimension ?? ''} ${tie?.features?.join(' ') ?? ''} ${JSON.stringify(ink)}`
}

function make(name: string, attributes: Readonly<Record<string, string>>): SVGElement {
  const element = document.createElementNS(SVG, name)
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value)
  return element
}

/** The element of an item; the paper's height turns y about. */
export function elementOf(item: SheetItem, height: number): SVGElement {
  const flip = (p: Vec2): Vec2 => [p[0], height - p[1]]
  const element = drawn(item, flip)
  const { tie, pencil } = item
  if (pencil) element.classList.add(`pencil-${pencil}`)
  if (tie?.view) element.dataset.view = tie.view
  if (tie?.dimension) element.dataset.dimension = tie.dimension
  if (tie?.features?.length) element.dataset.features = tie.features.join(' ')
  return element
}

function drawn(item: SheetItem, flip: (p: Vec2) => Vec2): SVGElement {
  switch (item.item) {
    case 'stroke':
      return make('path', {
        class: `ink ${item.kind.replace(' ', '-')}`,
        d: pathOf([item.curve], flip),
        'stroke-width': String(item.width),
        ...(item.dashes ? { 'stroke-dasharray': item.dashes.join(' ') } : {}),
      })
    case 'fill':
      return make('path', { class: `ink filled ${item.kind}`, d: `${pathOf(item.outline, flip)}Z` })
    case 'glyph':
      return make('path', {
        class: 'ink symbol',
        d: pathOf(item.strokes, flip),
        'stroke-width': String(item.width),
      })
    case 'text': {
      const [x, y] = flip(item.at)
      const turn = item.angle ? ` rotate(${-item.angle})` : ''
      const narrow = item.stretch && item.stretch !== 1 ? ` scale(${item.stretch} 1)` : ''
      const element = make('text', {
        class: `ink ${item.role.replace(' ', '-')}${item.bold ? ' bold' : ''}`,
        transform: `translate(${x} ${y})${turn}${narrow}`,
        'font-size': String(item.height * EM_OVER_CAPITAL),
        'text-anchor': item.anchor,
      })
      element.textContent = item.text
      return element
    }
  }
}
