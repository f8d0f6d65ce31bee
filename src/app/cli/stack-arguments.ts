import { readArguments, UsageFault } from './arguments.ts'

/** What `stack` was asked. */
export interface StackArguments {
  readonly file: string
  readonly name: string
  readonly between?: readonly [string, string]
  readonly other?: string
  /** The face or round of this part, and that of the other, where they meet. */
  readonly mating?: readonly [string, string]
  /** `, left-right`, or nothing. */
  readonly along: string
  /** `, min 0.1, max 0.5`, or nothing. */
  readonly limits: string
  /** `, with bonus`, or nothing. */
  readonly bonus: string
  readonly samples: number
  readonly seed: number
  readonly json: boolean
  readonly to?: string
}

const KNOWN = {
  between: 'text',
  with: 'text',
  mating: 'text',
  along: 'text',
  min: 'text',
  max: 'text',
  rss: 'flag',
  bonus: 'flag',
  samples: 'text',
  seed: 'text',
  to: 'text',
  json: 'flag',
} as const

/** Simulated parts when nothing is said. */
const SAMPLES = 1_000_000
/** A simulation of more takes hours. */
const MOST_SAMPLES = 1_000_000_000

/** Reads the command line of `stack`. Throws UsageFault. */
export function readStackArguments(args: readonly string[]): StackArguments {
  const { rest, pairs } = takePairs(args, ['--between', '--mating'])
  const { files, options } = readArguments('stack', rest, KNOWN)
  const [file, more] = files
  if (more !== undefined)
    throw new UsageFault(`stack: one brief at a time; ${more} is another. A part that meets it comes after --with.`)
  const text = (key: keyof typeof KNOWN) => (typeof options[key] === 'string' ? (options[key] as string) : undefined)
  const [between, mating, other] = [pairs.get('--between'), pairs.get('--mating'), text('with')]
  if ((other === undefined) !== (mating === undefined))
    throw new UsageFault('stack: --with OTHER.brief and --mating "this face" "its face" go together.')
  if (mating && !between)
    throw new UsageFault('stack: of two parts say what lies between what: --between "this face" "its face".')
  const number = (key: 'samples' | 'seed', least: number, most: number, otherwise: number) => {
    const said = text(key)
    if (said === undefined) return otherwise
    const value = Number(said.replace(/[_,]/g, ''))
    if (!Number.isInteger(value) || value < least || value > most)
      throw new UsageFault(`stack: --${key} ${said}: expected a whole number from ${least} to ${most}.`)
    return value
  }
  const along = text('along')
  if (along !== undefined && !/^(left-right|front-rear|up-down)$/.test(along))
    throw new UsageFault(`stack: --along ${along}: expected left-right, front-rear or up-down.`)
  if (
    !between &&
    (along !== undefined || text('min') !== undefined || text('max') !== undefined || options.rss || options.bonus)
  )
    throw new UsageFault(
      'stack: --along, --min, --max, --rss and --bonus go with --between; stacks of the brief say their own.',
    )
  return {
    file: file!,
    name: between ? 'between' : '',
    ...(between ? { between } : {}),
    ...(other === undefined ? {} : { other }),
    ...(mating ? { mating } : {}),
    along: along === undefined ? '' : `, ${along}`,
    limits: [
      ...(['min', 'max'] as const).flatMap((key) => (text(key) === undefined ? [] : `, ${key} ${text(key)}`)),
      ...(options.rss ? [', root-sum-square'] : []),
    ].join(''),
    bonus: options.bonus ? ', with bonus' : '',
    samples: number('samples', 1000, MOST_SAMPLES, SAMPLES),
    seed: number('seed', 0, 0xffffffff, 1),
    json: options.json === true,
    ...(text('to') === undefined ? {} : { to: text('to')! }),
  }
}

/** Takes the options that are followed by two words out of the command line. */
function takePairs(args: readonly string[], names: readonly string[]) {
  const pairs = new Map<string, readonly [string, string]>()
  const rest: string[] = []
  for (let i = 0; i < args.length; i++) {
    const name = args[i]!
    if (!names.includes(name)) {
      rest.push(name)
      continue
    }
    const [a, b] = [args[i + 1], args[i + 2]]
    if (a === undefined || b === undefined || a.startsWith('--') || b.startsWith('--'))
      throw new UsageFault(`stack: ${name} takes two faces or axes: ${name} "left" "hole A edge".`)
    for (const word of [a, b])
      if (/[\r\n,;:#]/.test(word)) throw new UsageFault(`stack: ${name}: “${word}” is no name of a face or axis.`)
    pairs.set(name, [a, b])
    i += 2
  }
  return { rest, pairs }
}
