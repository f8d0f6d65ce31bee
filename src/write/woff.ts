/**
 * Unpacks a WOFF 1.0 file (W3C Recommendation, 13 December 2012) to the TrueType file it holds: readers of TrueType
 * then find their tables at once, instead of inflating them one by one in script.
 */
export async function unpackWoff(woff: Uint8Array): Promise<Uint8Array> {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength)
  if (from.getUint32(0) !== 0x774f4646) return woff
  const count = from.getUint16(12)
  const tables = await Promise.all(
    Array.from({ length: count }, async (_, i) => {
      const at = 44 + 20 * i
      const [tag, offset, packed, length, checksum] = [0, 4, 8, 12, 16].map((k) => from.getUint32(at + k))
      const bytes = woff.subarray(offset!, offset! + packed!)
      return { tag: tag!, checksum: checksum!, bytes: packed! < length! ? await inflated(bytes) : bytes }
    }),
  )
  const padded = (n: number) => Math.ceil(n / 4) * 4
  const size = 12 + 16 * count + tables.reduce((sum, t) => sum + padded(t.bytes.length), 0)
  const out = new Uint8Array(size)
  const to = new DataView(out.buffer)
  const power = 2 ** Math.floor(Math.log2(count))
  to.setUint32(0, from.getUint32(4))
  to.setUint16(4, count)
  to.setUint16(6, 16 * power)
  to.setUint16(8, Math.log2(power))
  to.setUint16(10, 16 * (count - power))
  let end = 12 + 16 * count
  tables.forEach((t, i) => {
    const at = 12 + 16 * i
    to.setUint32(at, t.tag)
    to.setUint32(at + 4, t.checksum)
    to.setUint32(at + 8, end)
    to.setUint32(at + 12, t.bytes.length)
    out.set(t.bytes, end)
    end += padded(t.bytes.length)
  })
  return out
}

async function inflated(bytes: Uint8Array): Promise<Uint8Array> {
  const stream = new Blob([Uint8Array.from(bytes)]).stream().pipeThrough(new DecompressionStream('deflate'))
  return new Uint8Array(await new Response(stream).arrayBuffer())
}
