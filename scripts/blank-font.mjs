// A TrueType font of blank glyphs: characters with advances and nothing drawn.
// Layout of the tables: ISO/IEC 14496-22 (Open Font Format).

/** @param {string} name @param {Record<string, number>} advances thousandths of the em by character */
export function blankFont(name, advances) {
  const chars = Object.entries(advances)
    .map(([c, w]) => ({ code: c.codePointAt(0), width: w }))
    .sort((a, b) => a.code - b.code)
  const count = chars.length + 1
  const tables = {
    'OS/2': os2(chars),
    cmap: cmap(chars),
    glyf: new Writer().u32(0).bytes(),
    head: head(),
    hhea: new Writer()
      .u32(0x00010000)
      .i16(1000)
      .i16(-200)
      .i16(0)
      .u16(2000)
      .i16(0)
      .i16(0)
      .i16(0)
      .i16(1)
      .i16(0)
      .i16(0)
      .u16(0)
      .u16(0)
      .u16(0)
      .u16(0)
      .i16(0)
      .u16(count)
      .bytes(),
    hmtx: chars.reduce((w, c) => w.u16(c.width).i16(0), new Writer().u16(500).i16(0)).bytes(),
    loca: Array.from({ length: count + 1 })
      .reduce((w) => w.u16(0), new Writer())
      .bytes(),
    maxp: new Writer()
      .u32(0x00010000)
      .u16(count)
      .u16(0)
      .u16(0)
      .u16(0)
      .u16(0)
      .u16(1)
      .u16(0)
      .u16(0)
      .u16(0)
      .u16(0)
      .u16(0)
      .u16(0)
      .u16(0)
      .u16(0)
      .bytes(),
    name: names(name),
    post: new Writer().u32(0x00030000).u32(0).i16(-100).i16(50).u32(0).u32(0).u32(0).u32(0).u32(0).bytes(),
  }
  return assemble(tables)
}

class Writer {
  #out = []
  u16(n) {
    this.#out.push((n >> 8) & 255, n & 255)
    return this
  }
  i16(n) {
    return this.u16(n & 0xffff)
  }
  u32(n) {
    return this.u16(Math.floor(n / 65536)).u16(n & 0xffff)
  }
  raw(bytes) {
    this.#out.push(...bytes)
    return this
  }
  bytes() {
    return Uint8Array.from(this.#out)
  }
}

function head() {
  return new Writer()
    .u32(0x00010000)
    .u32(0x00010000)
    .u32(0)
    .u32(0x5f0f3cf5)
    .u16(0)
    .u16(1000)
    .u32(0)
    .u32(0)
    .u32(0)
    .u32(0) // created, modified: no clock
    .i16(0)
    .i16(0)
    .i16(0)
    .i16(0)
    .u16(0)
    .u16(8)
    .i16(2)
    .i16(0)
    .i16(0)
    .bytes()
}

function os2(chars) {
  const w = new Writer().u16(4).i16(1000).u16(400).u16(5).u16(0)
  for (let i = 0; i < 10; i++) w.i16(0)
  return w
    .i16(0)
    .raw(new Uint8Array(10))
    .u32(0)
    .u32(0)
    .u32(0)
    .u32(0)
    .raw([83, 72, 87, 82])
    .u16(0x40)
    .u16(chars[0].code)
    .u16(Math.min(0xffff, chars.at(-1).code))
    .i16(1000)
    .i16(-200)
    .i16(0)
    .u16(1000)
    .u16(200)
    .u32(0)
    .u32(0)
    .i16(500)
    .i16(700)
    .u16(0)
    .u16(32)
    .u16(1)
    .bytes()
}

function cmap(chars) {
  const segments = [
    ...chars.map((c, i) => ({ end: c.code, start: c.code, delta: i + 1 - c.code })),
    { end: 0xffff, start: 0xffff, delta: 1 },
  ]
  const n = segments.length
  const power = 2 ** Math.floor(Math.log2(n))
  const w = new Writer()
    .u16(4)
    .u16(16 + 8 * n)
    .u16(0)
    .u16(2 * n)
    .u16(2 * power)
    .u16(Math.log2(power))
    .u16(2 * n - 2 * power)
  for (const s of segments) w.u16(s.end)
  w.u16(0)
  for (const s of segments) w.u16(s.start)
  for (const s of segments) w.i16(s.delta)
  for (let i = 0; i < n; i++) w.u16(0)
  return new Writer().u16(0).u16(1).u16(3).u16(1).u32(12).raw(w.bytes()).bytes()
}

function names(family) {
  const entries = [
    [1, family],
    [2, 'Regular'],
    [4, family],
    [6, family.replaceAll(' ', '')],
  ]
  const texts = entries.map(([, t]) => [...t].flatMap((c) => [0, c.charCodeAt(0)]))
  const w = new Writer()
    .u16(0)
    .u16(entries.length)
    .u16(6 + 12 * entries.length)
  let at = 0
  entries.forEach(([id], i) => {
    w.u16(3).u16(1).u16(0x409).u16(id).u16(texts[i].length).u16(at)
    at += texts[i].length
  })
  for (const t of texts) w.raw(t)
  return w.bytes()
}

function sum(bytes) {
  let total = 0
  for (let i = 0; i < bytes.length; i += 4) {
    total =
      (total +
        ((bytes[i] ?? 0) * 2 ** 24 + ((bytes[i + 1] ?? 0) << 16) + ((bytes[i + 2] ?? 0) << 8) + (bytes[i + 3] ?? 0))) %
      2 ** 32
  }
  return total
}

function assemble(tables) {
  const tags = Object.keys(tables).sort()
  const n = tags.length
  const power = 2 ** Math.floor(Math.log2(n))
  const w = new Writer()
    .u32(0x00010000)
    .u16(n)
    .u16(16 * power)
    .u16(Math.log2(power))
    .u16(16 * n - 16 * power)
  let at = 12 + 16 * n
  for (const tag of tags) {
    w.raw([...tag].map((c) => c.charCodeAt(0)))
      .u32(sum(tables[tag]))
      .u32(at)
      .u32(tables[tag].length)
    at += Math.ceil(tables[tag].length / 4) * 4
  }
  for (const tag of tags) w.raw(tables[tag]).raw(new Uint8Array((4 - (tables[tag].length % 4)) % 4))
  const out = w.bytes()
  const headAt =
    12 + 16 * n + tags.slice(0, tags.indexOf('head')).reduce((s, t) => s + Math.ceil(tables[t].length / 4) * 4, 0)
  const adjust = (0xb1b0afba - sum(out) + 2 ** 32) % 2 ** 32
  out.set([adjust >>> 24, (adjust >>> 16) & 255, (adjust >>> 8) & 255, adjust & 255], headAt + 8)
  return out
}
