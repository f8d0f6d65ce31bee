import { basename, join } from 'node:path'
import type { Unit } from '../../brief/size.ts'
import type { StackStatement } from '../../brief/stack.ts'
import { joined } from '../../check/stack/joined.ts'
import type { Sized } from '../../check/stack/links.ts'
import { addUp, isObstacle, type Run, runOf, type StackUp, wantedOf } from '../../check/stack/stack-up.ts'
import type { OcctKernel } from '../../kernel/open.ts'
import { stackChart } from '../../write/stack-chart.ts'
import { compile, type Drawing } from '../compile.ts'
import { UsageFault } from './arguments.ts'
import type { Console } from './console.ts'
import { EXIT, type ExitCode, worse } from './exit-codes.ts'
import { FileFault, nameOf, readSource, writeTogether } from './files.ts'
import { chartOf, plainStack, printStackUp } from './print-stack.ts'
import { simulateApart } from './simulate-apart.ts'
import { readStackArguments, type StackArguments } from './stack-arguments.ts'

/** `stack`: what lies between two faces or axes, of one part or of two that meet, and what it may come to. */
export function stack(args: readonly string[], console: Console) {
  const asked = readStackArguments(args)
  return async (kernel: OcctKernel): Promise<ExitCode> => {
    try {
      return await add(asked, kernel, console)
    } catch (fault) {
      if (!(fault instanceof FileFault)) throw fault
      console.say(fault.message)
      return EXIT.file
    }
  }
}

/** A stack that was found, and what stops one that was not. */
interface Found {
  readonly said: StackStatement
  readonly run: Run | { readonly text: string; readonly expected: string }
  readonly unit: Unit
  readonly sized: Sized
}

async function add(asked: StackArguments, kernel: OcctKernel, console: Console): Promise<ExitCode> {
  const { found, code: faults } = await search(asked, kernel, console)
  let code = faults
  const out: unknown[] = []
  for (const [i, { said, run, unit, sized }] of found.entries()) {
    if (isObstacle(run)) {
      console.say(`${nameOf(asked.file)}: ${said.name.text}: ${run.text} Expected ${run.expected}.`)
      code = worse(code, EXIT.marks)
      continue
    }
    const up = addUp(said, run, wantedOf(sized, said))
    const outcome = await simulateApart(
      { links: up.links, shift: shiftOf(up), samples: asked.samples, seed: asked.seed, wanted: up.wanted },
      (done) => console.progress(`simulating ${said.name.text}, ${Math.floor((100 * done) / asked.samples)} %`),
    )
    if (!up.keeps) code = worse(code, EXIT.marks)
    if (asked.json) out.push(plainStack(nameOf(asked.file), up, outcome, asked.seed))
    else console.out(`${i > 0 ? '\n' : ''}${printStackUp(up, outcome, unit, asked.seed)}`)
    if (asked.to !== undefined) {
      const path = join(asked.to, `${stemOf(asked.file)}-${fileName(said.name.text)}.svg`)
      await writeTogether([{ path, content: stackChart(chartOf(up, outcome, unit)) }])
      console.say(path)
    }
  }
  if (asked.json) console.out(`${JSON.stringify(out, null, 2)}\n`)
  return code
}

const shiftOf = ({ result, links }: StackUp) =>
  result.nominal - links.reduce((sum, l) => sum + l.sensitivity * l.nominal, 0)

async function search(asked: StackArguments, kernel: OcctKernel, console: Console) {
  const { between, mating, other } = asked
  const words = between && `${between[0]} to ${between[1]}`
  const first = await sizedFrom(
    asked.file,
    mating && between ? `${between[0]} to ${mating[0]}${asked.along}` : words && `${words}${asked.along}`,
    asked.limits,
  )
  const unit = first.sized.part.brief.header.units
  if (other === undefined || !mating) {
    const stacks = first.sized.part.brief.stacks ?? []
    if (stacks.length === 0 && first.code === EXIT.done)
      throw new UsageFault(
        `stack: ${nameOf(asked.file)} states no stack. Name two faces or axes: --between "left" "hole A".`,
      )
    const wanted = between ? [stacks.length - 1] : stacks.keys()
    const found = [...wanted]
      .filter((i) => i >= 0)
      .map((i): Found => ({ ...runOf(first.sized, i), unit, sized: first.sized }))
    return { found, code: first.code }
  }
  const second = await sizedFrom(other, `${mating[1]} to ${between![1]}${asked.along}`, '')
  const side = (sized: Sized, file: string) => ({ drawing: sized, file: stemOf(file) })
  const run = joined(side(first.sized, asked.file), side(second.sized, other))
  const [said, far] = [first.sized, second.sized].map((s) => s.part.brief.stacks?.at(-1))
  const code = worse(first.code, second.code)
  if (!said || !far) return { found: [], code }
  return { found: [{ said: { ...said, to: far.to }, run, unit, sized: first.sized }], code }

  /** The part and its sizes, with one more stack at the end of its brief. */
  async function sizedFrom(file: string, stack: string | undefined, limits: string) {
    const source = await readSource(file)
    if (source.kind === 'step') throw new UsageFault('stack: a solid model has no tolerances to add up; name a brief.')
    const line = stack === undefined ? '' : `\nstack     ${asked.name}: ${stack}${limits}${asked.bonus}\n`
    const drawing: Drawing = compile(source.text + line, kernel)
    const { part, sizes, brief, marks } = drawing
    const faults = marks.filter((m) => m.weight === 'must change')
    for (const mark of faults) console.mark(nameOf(file), brief.text, mark)
    if (part) kernel.free(part.solid)
    if (!part || !sizes) throw new FileFault(`${nameOf(file)}: nothing could be built, and so nothing added up.`)
    return { sized: { part, sizes }, code: faults.length > 0 ? EXIT.marks : EXIT.done }
  }
}

const stemOf = (file: string) => (file === '-' ? 'drawing' : basename(file).replace(/\.[^.]*$/, ''))
const fileName = (name: string) => name.replace(/[^\p{L}\p{N}._-]+/gu, '-').replace(/^[.-]+|-+$/g, '') || 'stack'
