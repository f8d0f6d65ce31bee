// Random streams for the simulation: sfc32 (Chris Doty-Humphrey, PractRand; public domain algorithm), seeded by splitmix32,
// with normal values by the ziggurat of Marsaglia and Tsang (Journal of Statistical Software 5(8), 2000).
// Each link has a stream of its own, so that taking one out leaves the others as they were.

/** Most values that one call may add. */
export const blockSize = 4096

/** State of one stream. */
export type Stream = Uint32Array

/** A stream for a seed and an index; streams of different index are unrelated. */
export function stream(seed: number, index: number): Stream {
  let z = (Math.imul(seed | 0, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b)) | 0
  const state = new Uint32Array(4)
  for (let i = 0; i < 3; i++) {
    z = (z + 0x9e3779b9) | 0
    let t = z ^ (z >>> 16)
    t = Math.imul(t, 0x21f0aaad)
    t ^= t >>> 15
    t = Math.imul(t, 0x735a2d97)
    state[i] = t ^ (t >>> 15)
  }
  state[3] = 1
  const warm = new Float64Array(12)
  addUniform(warm, 12, 0, state)
  return state
}

/** Adds `half × u` to each entry, u uniform in −1 … 1. */
export function addUniform(into: Float64Array, count: number, half: number, state: Stream): void {
  let a = state[0]! | 0
  let b = state[1]! | 0
  let c = state[2]! | 0
  let d = state[3]! | 0
  const scale = half / 2147483648
  for (let i = 0; i < count; i++) {
    const t = (((a + b) | 0) + d) | 0
    d = (d + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (((c << 21) | (c >>> 11)) + t) | 0
    into[i]! += t * scale
  }
  state[0] = a
  state[1] = b
  state[2] = c
  state[3] = d
}

/** Adds a triangular value with peak at 0 and ends at ±half: the sum of two uniform ones of half the width. */
export function addTriangular(into: Float64Array, count: number, half: number, state: Stream): void {
  addUniform(into, count, half / 2, state)
  addUniform(into, count, half / 2, state)
}

const layers = 128
const edge = 3.442619855899
const accept = new Int32Array(layers)
const width = new Float64Array(layers)
const height = new Float64Array(layers)
{
  const area = 9.91256303526217e-3
  let x = edge
  let next = edge
  const q = area / Math.exp(-0.5 * x * x)
  accept[0] = (x / q) * 2147483648
  accept[1] = 0
  width[0] = q / 2147483648
  width[layers - 1] = x / 2147483648
  height[0] = 1
  height[layers - 1] = Math.exp(-0.5 * x * x)
  for (let i = layers - 2; i >= 1; i--) {
    x = Math.sqrt(-2 * Math.log(area / x + Math.exp(-0.5 * x * x)))
    accept[i + 1] = (x / next) * 2147483648
    next = x
    height[i] = Math.exp(-0.5 * x * x)
    width[i] = x / 2147483648
  }
}

const draws = new Int32Array(blockSize)
const scaled = new Float64Array(layers)

/** Adds a normal value of mean 0 and the given standard deviation; `count` up to `blockSize`. */
export function addNormal(into: Float64Array, count: number, deviation: number, state: Stream): void {
  fill(draws, count, state)
  for (let i = 0; i < layers; i++) scaled[i] = width[i]! * deviation
  for (let i = 0; i < count; i++) {
    const t = draws[i]!
    const layer = t & 127
    if (Math.abs(t) < accept[layer]!) into[i]! += t * scaled[layer]!
    else into[i]! += rareNormal(t, state) * deviation
  }
}

function fill(into: Int32Array, count: number, state: Stream): void {
  let a = state[0]! | 0
  let b = state[1]! | 0
  let c = state[2]! | 0
  let d = state[3]! | 0
  for (let i = 0; i < count; i++) {
    const t = (((a + b) | 0) + d) | 0
    d = (d + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (((c << 21) | (c >>> 11)) + t) | 0
    into[i] = t
  }
  state[0] = a
  state[1] = b
  state[2] = c
  state[3] = d
}

const one = new Float64Array(1)

/** A uniform value in 0 … 1, open at both ends. */
function unit(state: Stream): number {
  one[0] = 0
  addUniform(one, 1, 0.5, state)
  return one[0]! + 0.5 + 1.1641532182693481e-10
}

/** The ziggurat's slow path: wedges and the tail beyond the last layer. */
function rareNormal(first: number, state: Stream): number {
  let t = first
  for (;;) {
    const layer = t & 127
    let x = t * width[layer]!
    if (layer === 0) {
      let y: number
      do {
        x = -Math.log(unit(state)) / edge
        y = -Math.log(unit(state))
      } while (y + y < x * x)
      return t > 0 ? edge + x : -edge - x
    }
    if (height[layer]! + unit(state) * (height[layer - 1]! - height[layer]!) < Math.exp(-0.5 * x * x)) return x
    one[0] = 0
    addUniform(one, 1, 2147483648, state)
    t = one[0]!
    if (Math.abs(t) < accept[t & 127]!) return t * width[t & 127]!
  }
}
