/** Numbers from a seed, each from 0 to 1. */
export function numbers(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    let mixed = state ^ (state >>> 15)
    mixed = Math.imul(mixed, 0x2c1b3c6d)
    return ((mixed ^ (mixed >>> 12)) >>> 0) / 2 ** 32
  }
}

/** What a random brief is made with. */
export interface Dice {
  readonly int: (low: number, high: number) => number
  readonly pick: <T>(...list: T[]) => T
  readonly maybe: (chance: number, text: () => string) => string
}

export function diceOf(random: () => number): Dice {
  return {
    int: (low, high) => low + Math.floor(random() * (high - low + 1)),
    pick: (...list) => list[Math.floor(random() * list.length)]!,
    maybe: (chance, text) => (random() < chance ? text() : ''),
  }
}

/** Complete briefs (without a header) of one kind of stock with random numbers and features, by the language reference. */
export const kinds: Readonly<Record<string, (random: () => number) => string>> = {
  block: (random) => {
    const dice = diceOf(random)
    const { int, pick, maybe } = dice
    const [l, w, h] = [int(80, 140), int(50, 80), int(20, 40)]
    const side = pick('left', 'right', 'front', 'rear')
    return [
      `block ${l} × ${w} × ${h}\n`,
      maybe(0.3, () => `step top ${side}: ${int(6, 25)} from ${side}, ${int(4, h / 2)} from top\n`),
      maybe(0.6, () => holes(dice, l, w)),
      maybe(0.3, () => slot(dice, l, w)),
      maybe(0.25, () => notch(dice)),
      maybe(0.3, () => `round corners: 4X R${int(4, 12)}\n`),
      maybe(
        0.3,
        () => `chamfer ${pick('top front edge', 'bottom left edge')}: ${pick('2 × 45°', '2 × 3', '1.5 × 30°')}\n`,
      ),
    ].join('')
  },
  outline: (random) => {
    const dice = diceOf(random)
    const { int, pick, maybe } = dice
    const [l, h, r, a] = [int(90, 140), int(40, 80), int(6, 12), int(10, 15)]
    const corner = pick(
      `up ${h - 5}; left ${r}; up 5`,
      `up ${h - r}; arc R${r} to ${l - r} across, ${h} up, turning ${pick('left', 'right')}`,
      `up ${h - r}; arc R${2 * r} to ${l - r} across, ${h} up, turning ${pick('left', 'right')}`,
      `up ${h - r}; slope left ${r} up ${r}`,
      `up ${h - r}; slope left ${r} up at 1:${int(2, 9)}; to ${l - r} across, ${h} up`,
      `up ${h - r}; arc R${r + int(0, 4)}, ${r} long, turning left; to ${l - r} across, ${h} up`,
      `up ${h - 15}; left ${r}; up 15`,
    )
    const x1 = int(48, 60)
    const dip = pick(
      '',
      `left ${l - r - x1}; arc R${a} to ${x1 - 2 * a} across, ${h} up, turning right; left ${x1 - 2 * a}`,
      `left ${l - r - x1}; arc R${a + 5} to ${x1 - 2 * a} across, ${h} up, turning ${pick('left', 'right')}; left ${x1 - 2 * a}`,
      `left ${l - r - x1}; down ${a}; left ${2 * a}; up ${a}; left ${x1 - 2 * a}`,
      `left ${l - r - x1}; slope left ${a} down ${a}; slope left ${a} up ${a}; left ${x1 - 2 * a}`,
    )
    const end = pick('', `; arc R${h / 2} to 0 across, 0 up, turning left`)
    return [
      `outline ${int(6, 14)} thick, face front\n  right ${l}; ${corner}; ${dip || `left ${l - r}`}${end}; close\n`,
      maybe(0.6, () => `holes front: 2X ⌀5 THRU\n  ${int(20, 30)} apart, centred; ${int(9, 14)} from bottom\n`),
    ].join('')
  },
  turned: (random) => {
    const { int, pick, maybe } = diceOf(random)
    let d = int(18, 36)
    const steps = ['nose', 'seat', 'tail'].slice(0, int(1, 3)).map((name) => {
      const end = pick(0, 0, d - int(2, 4), d + int(2, 6))
      const rate = maybe(0.3, () => ` ${pick('', 'small end, ')}tapered 1:${int(8, 30)}${pick('', ' toward left')}`)
      const line = `${name} ⌀${d}${rate || (end ? ` tapered to ⌀${end}` : '')}, ${int(16, 50)} long`
      d = (end || d) + pick(0, 4, 9) + (end ? 0 : 2)
      return { name, line, isTaper: end > 0 || rate !== '' }
    })
    const last = steps.at(-1)!
    return [
      `turned axis left-right\n  ${steps.map((s) => s.line).join('\n  ')}\n`,
      maybe(0.4, () => `bore left: ⌀6 ${pick('THRU', '↧ 12', 'THRU, ⌴ ⌀10 ↧ 5', '↧ 9, flat bottom')}\n`),
      maybe(
        0.5,
        () => `chamfer ${pick('ends: 2X', `${last.name} right edge:`)} ${pick('1 × 45°', '1.5 × 30°', '1 × 2')}\n`,
      ),
      last.isTaper
        ? ''
        : maybe(
            0.4,
            () =>
              `groove ${last.name}: 2 wide, ${pick('1 deep', 'bottom ⌀12')}\n  left side 4 from ${last.name} left face\n`,
          ),
      last.isTaper
        ? ''
        : maybe(
            0.4,
            () => `keyseat ${last.name}, front: 5 wide × 3 deep × 8 long\n  right end 2 from ${last.name} right face\n`,
          ),
    ].join('')
  },
  disc: (random) => {
    const { int, pick, maybe } = diceOf(random)
    const d = int(80, 140)
    return [
      `disc ⌀${d} × ${int(10, 24)}, outer face front\n`,
      maybe(0.6, () => `bore outer face: ⌀${int(10, 20)} ${pick('THRU', 'THRU, ⌴ ⌀26 ↧ 4', '↧ 6, flat bottom')}\n`),
      maybe(
        0.8,
        () =>
          `holes outer face: ${pick(3, 4, 6)}X ${pick('⌀5 THRU', '⌀5 THRU, ⌴ ⌀9 ↧ 3', 'M5 THRU', '⌀4.5 ↧ 6')}\n  on ⌀${int(44, d - 16)} bolt circle, equal, ${pick("one at 12 o'clock", 'first at 15°', 'astride the vertical centre line', 'first at 45°')}\n`,
      ),
      maybe(0.3, () => `spigot inner face: ⌀${int(28, 34)} × ${int(3, 8)} high\n`),
      maybe(0.3, () => `chamfer rim edges: 2X ${pick('1 × 45°', '2 × 30°')}\n`),
    ].join('')
  },
  angle: (random) => {
    const { int, pick, maybe } = diceOf(random)
    const [u, b, l] = [int(50, 90), int(48, 70), int(70, 120)]
    return [
      `angle ${pick('formed, 6 STK, inside R 6', 'rolled, 8 STK, inside R 6, toe R 4', 'machined, 8 thick')}\n`,
      `  upright ${u} high, at rear; base ${b} toward front; length ${l}\n`,
      maybe(
        0.7,
        () =>
          `holes upright, from front: 2X ⌀7 THRU\n  ${int(20, l - 36)} apart, ${pick('centred', 'leftmost 14 from left')}; ${int(30, u - 12)} from bottom\n`,
      ),
      maybe(
        0.5,
        () =>
          `slots base, from top: 2X 7 × 14 overall THRU, long way front-rear\n  ${int(20, l - 36)} apart, centred; centres ${int(26, b - 16)} from heel\n`,
      ),
      maybe(0.5, () => `round upright, top corners: 2X R${int(6, 10)}\n`),
    ].join('')
  },
}

function holes({ int, pick }: Dice, l: number, w: number): string {
  const call = pick(
    '⌀9 THRU',
    '⌀9 THRU, ⌴ ⌀15 ↧ 6',
    '⌀6.6 THRU, ⌵ ⌀12.6 × 90°',
    'M8 ↧ 12, drill ⌀6.8 ↧ 16',
    '⌀10 ↧ 9, flat bottom',
  )
  return pick(
    `hole top: ${call}\n  ${int(16, l - 16)} from left; ${pick('centred up', `${int(14, w - 14)} from rear`)}\n`,
    `holes top: 2X ${call}\n  ${int(24, l - 34)} apart, ${pick('centred', 'leftmost 12 from left')}; ${int(14, w - 14)} from front\n`,
    `holes top: 4X ${call}\n  2 across ${l - 24} apart, ${pick('centred', 'leftmost 12 from left')}; 2 up ${w - 24} apart, ${pick('centred', 'lowest 12 from front')}\n`,
    `holes top: 2X ${call}\n  ${int(14, Math.floor(l / 2) - 14)} from left; ${int(14, w - 14)} from front; mirrored left-right\n`,
  )
}

function slot({ int, pick }: Dice, l: number, w: number): string {
  return pick(
    `slot top: ${int(6, 10)} × ${int(20, 28)} ${pick('overall', 'centre to centre')} ${pick('THRU', '↧ 5')}, long way left-right\n  ${pick('centred both ways', `${int(26, l - 26)} from left; ${int(16, w - 16)} from front`)}\n`,
    `slot top: ${int(6, 10)} × ${int(20, 28)} overall THRU, open to ${pick('left', 'right')}\n  centred up\n`,
  )
}

function notch({ int, pick }: Dice): string {
  return `notch ${pick('front, top', 'front, left', 'top, front', 'top, right')}: ${pick(`square, ${int(6, 12)} wide, ${int(4, 8)} deep`, `vee, ${int(8, 12)} wide, 90°`, `vee, ${int(8, 12)} wide, ${int(5, 8)} deep`)}\n  centred\n`
}
