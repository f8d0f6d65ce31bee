import type { Feature } from '../../../brief/brief.ts'
import { locate } from '../../../brief/locate.ts'
import type { Part, PartFeature } from '../../../part/part.ts'

/** What the features of a part and their faces are called on the page. */
export interface FeatureWords {
  /** `hole A`, `the 4 holes ⌀.281 (line 21)`: by the brief's label, else by what its statement says and where it stands. */
  readonly of: (id: string) => string
  /** `the wall of one of the 4 holes ⌀.281 (line 21)`, from a face's name; the names of the stock's faces stay. */
  readonly ofFace: (name: string) => string
}

export function featureWords({ features, brief: { text } }: Pick<Part, 'features' | 'brief'>): FeatureWords {
  const whole = new Map<string, string>()
  const members = new Map<string, string>()
  for (const f of features) {
    if (!f.feature) continue
    const [all, one] = wordsOf(f, f.feature, text)
    whole.set(f.id, all)
    members.set(f.id, one)
    for (const m of f.members) members.set(m.id, one)
  }
  return {
    of: (id) => whole.get(id) ?? (id === 'axis' ? 'the axis' : id),
    ofFace: (name) => {
      // `hole 1.2 counterbore wall`: the member first, then what of it.
      const words = name.split(' ')
      for (let n = words.length; n > 0; n--) {
        const owner = members.get(words.slice(0, n).join(' '))
        if (owner) return n === words.length ? owner : `the ${words.slice(n).join(' ')} of ${owner}`
      }
      return name
    },
  }
}

/** What the whole feature is called, and what one of its members. */
function wordsOf({ id, members }: PartFeature, feature: Feature, text: string): readonly [string, string] {
  const kind = feature.kind === 'flat-cut' ? 'flat' : feature.kind
  const count = members.length
  const { label } = feature
  // `boss`, `bore`: the only one, by its name alone.
  if (!label && !/\d/.test(id)) return [`the ${id}`, `the ${id}`]
  // What was read from a solid model is written nowhere.
  const { from, to } = feature.span
  const line = to > from ? `(line ${locate(text, from).line})` : ''
  const said = label ? label.text : `${sizeOf(feature)}${line}`.trimEnd()
  const many = `the ${count} ${PLURAL[kind] ?? `${kind}s`} ${said}`.trimEnd()
  if (count > 1) return [many, `one of ${many}`]
  const one = `${label ? '' : 'the '}${kind} ${said}`.trimEnd()
  return [one, one]
}

const PLURAL: Readonly<Record<string, string>> = { notch: 'notches', boss: 'bosses' }

function sizeOf(feature: Feature): string {
  if (feature.kind === 'hole') return feature.thread ? `${feature.thread.text} ` : `⌀${feature.diameter.text} `
  return feature.kind === 'round' || feature.kind === 'fillet' ? `R${feature.size.text} ` : ''
}
