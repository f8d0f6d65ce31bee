import { describe, expect, it } from 'vitest'
import { auditSizes } from './audit.ts'
import { type Dice, diceOf, numbers } from './random-briefs.ts'
import { allMarks, iso } from './sized.ts'

const RUNS = 20

/** Features whose sizes lie where no plane face stands for them, each with numbers that fit. */
const parts: Readonly<Record<string, (dice: Dice) => string>> = {
  'countersink in a round surface': ({ int, pick, maybe }) => {
    const d = int(24, 60)
    const from = pick('top', 'front', 'bottom', 'rear')
    return [
      pick(`round bar ⌀${d}, 80 long, axis left-right\n`, `tube ⌀${d} outside, wall 5, 80 long, axis left-right\n`),
      `hole outside, from ${from}: ⌀${int(4, 6)} THRU, ⌵ ⌀${int(8, 11)} × ${pick(82, 90, 120)}°\n`,
      `  ${int(15, 65)} from left face${maybe(0.4, () => `; ${int(1, 4)} up from axis`)}\n`,
    ].join('')
  },
  'hole in a taper': ({ int, pick }) => {
    const [d, e] = pick([40, 30], [30, 44], [50, 46])
    const way = pick(`⌵ ⌀11 × ${pick(82, 90)}°`, `⌴ ⌀11 ↧ ${int(3, 6)}`)
    return [
      `turned axis left-right\n  a ⌀${d} tapered to ⌀${e}, 60 long\n`,
      `hole a, from ${pick('top', 'front')}: ⌀6 ${pick(`THRU, ${way}`, `↧ ${int(8, 20)}`, `↧ ${int(8, 20)}, flat bottom`)}\n`,
      `  ${int(15, 45)} from left\n`,
    ].join('')
  },
  'vees of one statement': ({ int, pick }) => {
    const form = `vee, ${int(6, 12)} wide, ${pick(`${int(45, 110)}°`, `${int(4, 9)} deep`)}`
    return pick(
      `block 80 × 50 × 40\nnotches front, top: 2X ${form}\n  ${int(12, 30)} from left; mirrored left-right\n`,
      `block 80 × 50 × 40\nnotches front, left: 2X ${form}\n  ${int(10, 30)} from bottom; mirrored left-right\n`,
      `block 80 × 50 × 40\nnotches top, front: 2X ${form}\n  ${pick('centred', `${int(12, 60)} from left`)}; mirrored front-rear\n`,
      `block 80 × 50 × 40\nnotches front, top: 3X ${form}\n  ${int(16, 20)} apart, leftmost ${int(12, 20)} from left\n`,
    )
  },
  'pocket with full round ends': ({ int, pick }) => {
    const r = int(3, 8)
    const [w, h] = pick([2 * r + int(3, 20), 2 * r], [2 * r, 2 * r + int(3, 14)])
    const [x, y] = [pick('centred left-right', `${int(25, 60)} from left`), pick('centred up-down', '21 from bottom')]
    const deep = pick('THRU', `↧ ${int(3, 12)}`)
    return pick(
      `block 86 × 50 × 44\npocket front: ${w} × ${h} ${deep}, corners R ${r}\n  ${x}; ${y}\n`,
      `block 86 × 50 × 44\npockets front: 2X ${w} × ${h} ${deep}, corners R ${r}\n  ${w + int(3, 8)} apart, centred; ${y}\n`,
    )
  },
  'chamfered head with flats': ({ int, pick }) => {
    const [n, most] = pick([6, 0.866], [4, 0.72], [2, 0.6])
    const d = int(30, 60)
    const across = Math.ceil(d * most) + int(1, 2)
    const head = `a ⌀${d}, ${int(12, 25)} long`
    const shank = `b ⌀${int(12, 20)}, 40 long`
    const leg = pick('1 × 45°', '1.5 × 30°', '0.5 × 45°')
    const [steps, end] = pick([[head, shank], 'left'], [[shank, head], 'right'])
    return [
      `turned axis left-right\n  ${steps.join('\n  ')}\n`,
      `flats a: ${n}X ${across} A/F\nchamfer a ${end} face outer edge: ${leg}\n`,
    ].join('')
  },
  'groove at the end of a taper': ({ int, pick }) => {
    const d = int(14, 22)
    const taper = pick(`b ⌀${d} tapered to ⌀${d + int(4, 12)}`, `b ⌀${d} tapered 1:${int(8, 20)}`)
    const steps = [`a ⌀${d}, ${int(15, 30)} long`, `${taper}, ${int(20, 40)} long`, `c ⌀44, ${int(10, 20)} long`]
    const groove = `groove a: ${int(2, 4)} wide, bottom ⌀${d - int(2, 6)}\n  right side at ${pick('a right face', 'b left face')}\n`
    return `turned axis left-right\n  ${steps.join('\n  ')}\n${groove}`
  },
  'tube by its wall with grooves in the bore': ({ int, pick, maybe }) => {
    const [d, wall] = [int(50, 90), int(6, 12)]
    const [lie, near, side] = pick(['left-right', 'left', 'left'], ['up-down', 'bottom', 'lower'])
    const groove = (at: number) =>
      `groove bore: ${int(2, 4)} wide, ${pick(`${int(1, 3)} deep`, `bottom ⌀${d - 2 * wall + int(2, 8)}`)}\n  ${side} side ${at} from ${near} face\n`
    return [
      `tube ⌀${d} outside, wall ${wall}, 90 long, axis ${lie}\n`,
      groove(int(12, 30)),
      maybe(0.5, () => groove(int(50, 70))),
      maybe(0.4, () => `chamfer bore edges: 2X 1 × 45°\n`),
    ].join('')
  },
}

describe.each(Object.entries(parts))('%s', (kind, make) => {
  it('is sized once and wholly, whatever its numbers', () => {
    for (let seed = 1; seed <= RUNS; seed++) {
      const text = make(diceOf(numbers(seed * 6151 + kind.length * 12289)))
      const s = iso(text)
      expect({ text, marks: allMarks(s).filter((m) => m.weight === 'must change') }).toEqual({ text, marks: [] })
      auditSizes(s, text)
    }
  })
})

// the bottom of the vee stands level with the step by chance
it.each([32, 33])('an outline with a vee down to 32 beside a step at %s', (step) => {
  const text = `outline 10 thick, face front\n  right 104; up ${step}; left 10; up ${47 - step}; left 44; slope left 15 down 15; slope left 15 up 15; left 20; close\n`
  auditSizes(iso(text), text)
})
