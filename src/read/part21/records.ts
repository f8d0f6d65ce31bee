/** A value of a record: number, string, `#reference`, `.ENUMERATION.`, list, typed value, or nothing (`$`, `*`). */
export type Value =
  | number
  | string
  | { readonly ref: number }
  | { readonly word: string }
  | readonly Value[]
  | { readonly name: string; readonly args: readonly Value[] }
  | undefined

/** One entity of a record; a complex record has several. */
export interface Entity {
  readonly name: string
  readonly args: readonly Value[]
}

/** The records of an ISO 10303-21 data section, found by number and read when asked for. */
export interface Records {
  /** Record numbers in the order of the file. */
  readonly ids: readonly number[]
  /** Place of a record among all, counted from 1; 0 where it is not there. */
  readonly placeOf: (id: number) => number
  /** The record's entities; none where there is no such record or it cannot be read. */
  readonly entities: (id: number) => readonly Entity[]
  /** Where what stands after the record's `=` begins and ends in the text. */
  readonly spanOf: (id: number) => readonly [from: number, to: number] | undefined
  /** Numbers of the records that have an entity of this name. */
  readonly named: (name: string) => readonly number[]
  /** Where the last whole statement ends, in the text. */
  readonly end: number
}

const QUOTE = 39
const SEMICOLON = 59
const HASH = 35
const SLASH = 47
const STAR = 42

/** Finds the statements of the text's data sections. Never throws: what is no record is passed over. */
export function recordsOf(text: string): Records {
  const spans = new Map<number, readonly [from: number, to: number]>()
  const byName = new Map<string, number[]>()
  let start = 0
  let end = 0
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i)
    if (c === QUOTE) {
      i = text.indexOf("'", i + 1)
      if (i < 0) break
    } else if (c === SLASH && text.charCodeAt(i + 1) === STAR) {
      i = text.indexOf('*/', i + 2) + 1
      if (i === 0) break
    } else if (c === SEMICOLON) {
      const head = headOf(text, start, i)
      if (head) {
        spans.set(head.id, [head.from, i])
        for (const name of head.names) {
          const list = byName.get(name)
          if (list) list.push(head.id)
          else byName.set(name, [head.id])
        }
      }
      start = i + 1
      end = start
    }
  }
  const ids = [...spans.keys()]
  const places = new Map(ids.map((id, i) => [id, i + 1]))
  const read = new Map<number, readonly Entity[]>()
  return {
    ids,
    end,
    placeOf: (id) => places.get(id) ?? 0,
    spanOf: (id) => spans.get(id),
    named: (name) => byName.get(name) ?? [],
    entities: (id) => {
      let known = read.get(id)
      if (!known) {
        const span = spans.get(id)
        known = span ? entitiesIn(text.slice(...span)) : []
        read.set(id, known)
      }
      return known
    },
  }
}

/** Number and entity names of the record in a statement; undefined for other statements. */
function headOf(text: string, start: number, to: number) {
  let i = start
  for (;;) {
    while (i < to && text.charCodeAt(i) <= 32) i++
    if (text.charCodeAt(i) !== SLASH || text.charCodeAt(i + 1) !== STAR) break
    i = text.indexOf('*/', i) + 2
  }
  if (text.charCodeAt(i) !== HASH) return undefined
  const equals = text.indexOf('=', i)
  if (equals < 0 || equals > to) return undefined
  const id = Number(text.slice(i + 1, equals))
  if (!Number.isInteger(id)) return undefined
  let from = equals + 1
  while (from < to && text.charCodeAt(from) <= 32) from++
  if (text[from] === '(') {
    const names = [...text.slice(from, to).matchAll(/([A-Z][A-Z0-9_]*)\s*\(/g)].map((m) => m[1]!)
    return { id, from, names }
  }
  const open = text.indexOf('(', from)
  if (open < 0 || open > to) return undefined
  return { id, from, names: [text.slice(from, open).trim()] }
}

function entitiesIn(text: string): readonly Entity[] {
  const reader = new ValueReader(text)
  if (!reader.take('(')) {
    const entity = reader.entity()
    return entity ? [entity] : []
  }
  const list: Entity[] = []
  while (!reader.take(')')) {
    const entity = reader.entity()
    if (!entity) break
    list.push(entity)
  }
  return list
}

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y
const WORD = /[A-Za-z_][A-Za-z0-9_]*/y

class ValueReader {
  private at = 0
  private readonly text: string

  constructor(text: string) {
    this.text = text
  }

  private skip(): void {
    for (;;) {
      while (this.at < this.text.length && this.text.charCodeAt(this.at) <= 32) this.at++
      if (!this.text.startsWith('/*', this.at)) return
      const end = this.text.indexOf('*/', this.at)
      this.at = end < 0 ? this.text.length : end + 2
    }
  }

  take(c: string): boolean {
    this.skip()
    if (this.text[this.at] !== c) return false
    this.at++
    return true
  }

  private match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.at
    const found = pattern.exec(this.text)?.[0]
    if (found !== undefined) this.at += found.length
    return found
  }

  entity(): Entity | undefined {
    this.skip()
    const name = this.match(WORD)
    if (name === undefined || !this.take('(')) return undefined
    return { name, args: this.list() }
  }

  private list(): Value[] {
    const values: Value[] = []
    if (this.take(')')) return values
    do values.push(this.value())
    while (this.take(','))
    this.take(')')
    return values
  }

  private value(): Value {
    this.skip()
    const c = this.text[this.at]
    if (c === '#') {
      this.at++
      return { ref: Number(this.match(NUMBER) ?? Number.NaN) }
    }
    if (c === "'") return this.string()
    if (c === '(') {
      this.at++
      return this.list()
    }
    if (c === '$' || c === '*') {
      this.at++
      return undefined
    }
    const number = this.match(NUMBER)
    if (number !== undefined) return Number(number)
    if (c === '.') {
      this.at++
      const word = this.match(WORD) ?? ''
      this.take('.')
      return { word }
    }
    const typed = this.entity()
    // whatever it is, the next comma is looked for
    if (!typed) this.at++
    return typed
  }

  private string(): string {
    let raw = ''
    for (;;) {
      const end = this.text.indexOf("'", this.at + 1)
      if (end < 0) {
        raw += this.text.slice(this.at + 1)
        this.at = this.text.length
        break
      }
      raw += this.text.slice(this.at + 1, end)
      this.at = end + 1
      if (this.text[this.at] !== "'") break
      raw += "'"
    }
    return plainString(raw)
  }
}

/** The text of an ISO 10303-21 string: line breaks dropped, \X\, \X2\, \X4\ and \S\ read as the letters they stand for. */
export function plainString(raw: string): string {
  return raw
    .replace(/[\r\n]/g, '')
    .replace(/\\X2\\((?:[0-9A-Fa-f]{4})*)\\X0\\/g, (_, hex: string) =>
      hex.replace(/.{4}/g, (unit) => String.fromCharCode(Number.parseInt(unit, 16))),
    )
    .replace(/\\X4\\((?:[0-9A-Fa-f]{8})*)\\X0\\/g, (_, hex: string) =>
      hex.replace(/.{8}/g, (unit) => letter(Number.parseInt(unit, 16))),
    )
    .replace(/\\X\\([0-9A-Fa-f]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/\\S\\(.)/g, (_, c: string) => String.fromCharCode(c.charCodeAt(0) + 128))
    .replace(/\\\\/g, '\\')
}

const letter = (code: number): string => (code <= 0x10ffff ? String.fromCodePoint(code) : '�')
