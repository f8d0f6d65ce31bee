import type { Unit } from '../../brief/size.ts'
import type { StackStatement } from '../../brief/stack.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot, negate } from '../../geometry/vec3.ts'
import { leverage, slopesOf } from '../../sizes/proof/leverage.ts'
import type { Values } from '../../sizes/proof/model.ts'
import { reached } from '../../sizes/proof/reach.ts'
import { keeps, type Requirement, type Stack, stack } from '../../tolerance/stack/stack.ts'
import { type Advice, tighten } from '../../tolerance/stack/tighten.ts'
import { said as inOwnUnit } from '../measure/said.ts'
import { type Ends, endsOf, type Obstacle } from './ends.ts'
import { type Chain, chainOf, type Sized, type SizeLink, saidOf } from './links.ts'

/** What a stack comes to, lengths in mm. */
export interface StackUp {
  readonly name: string
  readonly from: string
  readonly to: string
  /** `left-right`, `front-rear`, `up-down`, or `slanting`. */
  readonly way: string
  readonly links: readonly SizeLink[]
  readonly result: Stack
  readonly wanted: Requirement
  readonly method: StackStatement['method']
  readonly keeps: boolean
  readonly advice: Advice
  /** What is taken as exact, and what else the reader must know. */
  readonly notes: readonly string[]
}

/** The links between two ends, before they are added up. */
export interface Run extends Chain {
  readonly ends: Ends
  /** The length on the solid as drawn, from the first end to the second along the way. */
  readonly nominal: number
  /** The brief's own, for what is said of it. */
  readonly unit: Unit
}

export const isObstacle = (value: object): value is Obstacle => 'expected' in value && 'text' in value

/** Finds the loop of sizes for one stack of a drawing. */
export function runOf(drawing: Sized, index: number): { readonly said: StackStatement; readonly run: Run | Obstacle } {
  const { part } = drawing
  const said = part.brief.stacks![index]!
  const [from, to] = part.named?.stacks[index] ?? []
  const no = (text: string, expected: string) => ({ said, run: { text, expected } })
  if (!from || !to) {
    const name = from ? said.to : said.from
    return no(`Nothing on the part is called ${name.text}.`, 'a face, hole or other feature of this part')
  }
  const ends = endsOf(part, said, [from, to])
  if (isObstacle(ends)) return no(ends.text, ends.expected)
  const heard = saidOf(drawing)
  const [a, b] = [ends.from, ends.to].map((reach) => reached(heard.model, reach, ends.direction))
  if (!a || !b) return no(`Nothing stands where ${said.from.text} or ${said.to.text} points.`, 'another face or axis')
  const length = { uses: [...new Set([...a.uses, ...b.uses])], of: (x: Values) => b.of(x) - a.of(x) }
  const lever = leverage(heard.model, heard.equations, length)
  const held = [
    { faces: from.faces, slopes: slopesOf(heard.model, { ...a, of: (x: Values) => -a.of(x) }) },
    { faces: to.faces, slopes: slopesOf(heard.model, b) },
  ]
  if (lever.loose)
    return no(`No chain of sizes joins ${said.from.text} to ${said.to.text}.`, 'the sizes that the proof misses')
  return {
    said,
    run: {
      ...chainOf(drawing, heard, lever, held, said.bonus),
      ends,
      nominal: length.of(heard.model.values),
      unit: part.brief.header.units,
    },
  }
}

/** Every stack that the brief states, with what it comes to or what stops it. */
export function stacksOf(drawing: Sized): { readonly said: StackStatement; readonly up: StackUp | Obstacle }[] {
  return (drawing.part.brief.stacks ?? []).map((_, i) => {
    const { said, run } = runOf(drawing, i)
    return {
      said,
      up: isObstacle(run) ? run : addUp(said, run, wantedOf(drawing, said)),
    }
  })
}

/** Limits in mm. */
export function wantedOf({ part }: Sized, { min, max }: StackStatement): Requirement {
  const mm = part.brief.header.units === 'inch' ? 25.4 : 1
  return { ...(min ? { min: min.value * mm } : {}), ...(max ? { max: max.value * mm } : {}) }
}

/** Worst case, root-sum-square, shares and advice for a run of links. */
export function addUp(said: StackStatement, run: Run, wanted: Requirement): StackUp {
  const plain = stack(run.links)
  // Along an angle the sum of the sizes is not the length; the drawn one counts.
  const shift = run.nominal - plain.nominal
  const moved = ({ min, max }: Stack['worstCase']) => ({ min: min + shift, max: max + shift })
  const result: Stack = {
    ...plain,
    nominal: run.nominal,
    middle: plain.middle + shift,
    worstCase: moved(plain.worstCase),
    rootSumSquare: moved(plain.rootSumSquare),
  }
  const range = said.method === 'worst case' ? result.worstCase : result.rootSumSquare
  const left = run.links.filter((l) => l.leftOut)
  const open = run.links.filter((l) => l.open).map((l) => l.name)
  return {
    name: said.name.text,
    from: said.from.text,
    to: said.to.text,
    way: wayWords(run.ends.direction),
    links: run.links,
    result,
    wanted,
    method: said.method,
    keeps: keeps(range, wanted),
    advice: tighten(result, wanted, said.method),
    notes: [
      ...(open.length > 0 ? [`No tolerance is known for ${open.join(', ')}: taken as exact.`] : []),
      ...left.map(
        (l) =>
          `The bonus of ${l.name.replace(/^zone of /, '')}, up to ±${inOwnUnit(l.leftOut ?? 0, run.unit)}, is not added; “with bonus” adds it.`,
      ),
      ...(run.assumed.length > 0 ? [`Taken as exact without a number: ${run.assumed.join(', ')}.`] : []),
      ...(run.ends.aside > 1e-6
        ? [
            `${said.from.text} and ${said.to.text} also stand apart across that way; only ${wayWords(run.ends.direction)} is added up.`,
          ]
        : []),
      ...(run.oblique ? ['The loop has an angle, a circle or a slope in it: its part is figured to first order.'] : []),
    ],
  }
}

function wayWords(direction: Vec3): string {
  const words = [
    ['left-right', [1, 0, 0]],
    ['front-rear', [0, 1, 0]],
    ['up-down', [0, 0, 1]],
  ] as const
  const same = (axis: Vec3) => [axis, negate(axis)].some((a) => dot(a, direction) > 1 - 1e-9)
  return words.find(([, axis]) => same(axis))?.[0] ?? 'slanting'
}
