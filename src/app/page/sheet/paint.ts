import type { Vec2 } from '../../../geometry/vec.ts'
import { EM_OVER_CAPITAL } from '../../../sheet/lettering/metrics.ts'
import type { Sheet, SheetItem } from '../../../sheet/sheet.ts'
import { pathOf } from '../../../write/path-data.ts'
import type { Light } from './light.ts'

const SVG = 'http://www.w3.org/2000/svg'

/** An item that lies on the paper. */
interface Laid {
  readonly element: SVGElement
  readonly form: string
  item: SheetItem
  attributes: Attributes
}

/**
 * The ink of one sheet in the document. An element stays with the next sheet where an item of its form is there again,
 * and only what changed of it is set: most of what a keystroke changes are places.
 */
export class Ink {
  readonly #group: SVGGElement
  #sheet: Sheet | undefined
  #laid: Laid[] = []
  #lit: number[] = []

  constructor(group: SVGGElement) {
    this.#group = group
  }

  /** Puts the sheet's items into the group, one element an item, in their order. False where they lie there already. */
  paint(sheet: Sheet): boolean {
    if (this.#sheet === sheet) return false
    this.unlight()
    // Places are measured from the paper's upper edge.
    const moved = this.#sheet?.height !== sheet.height
    this.#sheet = sheet
    const free = new Map<string, Laid[]>()
    for (const laid of this.#laid.toReversed()) {
      const alike = free.get(laid.form)
      if (alike) alike.push(laid)
      else free.set(laid.form, [laid])
    }
    this.#laid = sheet.items.map((item) => {
      const form = formOf(item)
      const old = free.get(form)?.pop()
      if (!old) return lay(item, form, sheet.height)
      if (moved || !sameInk(old.item, item)) change(old, item, sheet.height)
      old.item = item
      return old
    })
    for (const alike of free.values()) for (const { element } of alike) element.remove()
    let next = this.#group.firstChild
    for (const { element } of this.#laid) {
      if (element === next) next = next.nextSibling
      else this.#group.insertBefore(element, next)
    }
    return true
  }

  /** Lights these items of the sheet and no others; nothing where another sheet lies there by now. */
  light(sheet: Sheet, light: Light | undefined): void {
    this.unlight()
    if (!light || this.#sheet !== sheet) return
    for (const i of light.beside) this.#mark(i, 'beside')
    for (const i of light.items) this.#mark(i, 'lit')
  }

  unlight(): void {
    for (const i of this.#lit) this.#laid[i]?.element.classList.remove('lit', 'beside')
    this.#lit = []
  }

  #mark(i: number, name: string): void {
    this.#laid[i]?.element.classList.add(name)
    this.#lit.push(i)
  }
}

type Attributes = Readonly<Record<string, string>>

/** What an item must share with another for its element to serve for that one too: all but places, figures and words. */
function formOf(item: SheetItem): string {
  const { tie } = item
  const kind = item.item === 'text' ? `${item.role} ${item.bold ?? ''}` : item.item === 'glyph' ? '' : item.kind
  return `${item.item} ${kind} ${item.pencil ?? ''} ${tie?.view ?? ''} ${tie?.dimension ?? ''} ${tie?.features?.join(' ') ?? ''}`
}

/**
 * True where two items of one form look the same. Their words in the brief and their edges of the solid do not count:
 * they shift with every keystroke before them, and are looked up in the sheet.
 */
function sameInk(a: SheetItem, b: SheetItem): boolean {
  const { tie: _, ...one } = a
  const { tie: __, ...other } = b
  return same(one, other)
}

function same(a: unknown, b: unknown): boolean {
  if (a === b) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((value, i) => same(value, b[i]))
  const keys = Object.keys(a)
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => same(a[key as keyof typeof a], b[key as keyof typeof b]))
  )
}

function lay(item: SheetItem, form: string, height: number): Laid {
  const attributes = attributesOf(item, height)
  return { element: made(item, attributes), form, item, attributes }
}

function change(laid: Laid, item: SheetItem, height: number): void {
  const attributes = attributesOf(item, height)
  for (const [key, value] of Object.entries(attributes)) {
    if (laid.attributes[key] !== value) laid.element.setAttribute(key, value)
  }
  for (const key of Object.keys(laid.attributes)) if (!(key in attributes)) laid.element.removeAttribute(key)
  if (item.item === 'text' && laid.element.textContent !== item.text) laid.element.textContent = item.text
  laid.attributes = attributes
}

function made(item: SheetItem, attributes: Attributes): SVGElement {
  const element = document.createElementNS(SVG, item.item === 'text' ? 'text' : 'path')
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value)
  if (item.item === 'text') element.textContent = item.text
  return element
}

/** The element of an item; the paper's height turns y about. */
export const elementOf = (item: SheetItem, height: number): SVGElement => made(item, attributesOf(item, height))

function attributesOf(item: SheetItem, height: number): Attributes {
  const { tie, pencil } = item
  const { class: name, ...rest } = inkOf(item, (p) => [p[0], height - p[1]])
  return {
    class: `ink ${name}${pencil ? ` pencil-${pencil}` : ''}`,
    ...rest,
    ...(tie?.view ? { 'data-view': tie.view } : {}),
    ...(tie?.dimension ? { 'data-dimension': tie.dimension } : {}),
    ...(tie?.features?.length ? { 'data-features': tie.features.join(' ') } : {}),
  }
}

function inkOf(item: SheetItem, flip: (p: Vec2) => Vec2): Attributes & { readonly class: string } {
  switch (item.item) {
    case 'stroke':
      return {
        class: item.kind.replace(' ', '-'),
        d: pathOf([item.curve], flip),
        'stroke-width': String(item.width),
        ...(item.dashes ? { 'stroke-dasharray': item.dashes.join(' ') } : {}),
      }
    case 'fill':
      return { class: `filled ${item.kind}`, d: `${pathOf(item.outline, flip)}Z` }
    case 'glyph':
      return { class: 'symbol', d: pathOf(item.strokes, flip), 'stroke-width': String(item.width) }
    case 'text': {
      const [x, y] = flip(item.at)
      const turn = item.angle ? ` rotate(${-item.angle})` : ''
      const narrow = item.stretch && item.stretch !== 1 ? ` scale(${item.stretch} 1)` : ''
      return {
        class: `${item.role.replace(' ', '-')}${item.bold ? ' bold' : ''}`,
        transform: `translate(${x} ${y})${turn}${narrow}`,
        'font-size': String(item.height * EM_OVER_CAPITAL),
        'text-anchor': item.anchor,
      }
    }
  }
}
