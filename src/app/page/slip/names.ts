import type { Brief } from '../../../brief/brief.ts'
import { keywordSpellings, stockNames } from '../../../brief/vocabulary.ts'
import { sizesOf } from '../sheet/touch.ts'

export interface NameOffer {
  readonly name: string
  /** What it names: `face`, `edge`, `step`, `hole`, `size` … */
  readonly of: string
}

/** Everything of this part that has a name: faces, edges, turned steps, features, sections, datums. */
export function namesOf(keyword: string, brief: Brief | undefined): NameOffer[] {
  if (!brief?.stock) return []
  const { stock, text } = brief
  const features = brief.features.map((f) => {
    const word = /^[a-z]+/i.exec(text.slice(f.span.from))?.[0].toLowerCase() ?? f.kind
    return { kind: keywordSpellings[word] ?? word, label: f.label }
  })
  const as = (of: string) => (name: string) => ({ name, of })
  const table = stockNames[stock.kind]
  const edges = table.edges.map(as('edge'))
  const faces = table.faces.map(as('face'))
  const steps =
    stock.kind === 'turned'
      ? stock.steps.flatMap(({ name: { text } }) => [
          { name: text, of: 'step' },
          ...[`${text} left face`, `${text} right face`].map(as('face')),
          ...[`${text} left edge`, `${text} right edge`].map(as('edge')),
        ])
      : []
  const alone = ALONE.filter((kind) => features.filter((f) => f.kind === kind).length === 1).map(as('feature'))
  const made = features.flatMap((f) => [
    ...(f.label ? [{ name: `${f.kind} ${f.label.text}`, of: f.kind }] : []),
    ...(f.kind === 'boss' ? [{ name: 'boss end', of: 'face' }] : []),
  ])
  const madeEdges = [
    ...(features.some((f) => f.kind === 'bore') ? ['bore edges'] : []),
    ...features.flatMap((f) => (f.kind === 'hole' && f.label ? [`hole ${f.label.text} edges`] : [])),
    ...(features.some((f) => f.kind === 'boss') ? ['boss end edge', 'boss root'] : []),
  ]
  const own = [...steps, ...made, ...alone]
  switch (keyword) {
    case 'chamfer':
    case 'round':
    case 'fillet':
      return [...steps.filter((n) => n.of === 'edge'), ...madeEdges.map(as('edge')), ...edges]
    case 'place':
      return [...sectionsOf(brief), ...sizesOf(brief).map((s) => ({ name: s.text, of: 'size' }))]
    case 'datum':
      return [...own, ...faces, ...['length', 'width', 'height', 'thickness'].map(as('both sides'))]
    case 'frame':
      return [...own, ...faces, ...['length', 'width', 'height', 'thickness'].map(as('both sides')), ...datumsOf(brief)]
    default:
      return [...own, ...faces, ...table.axes.map(as('axis'))]
  }
}

/** Kinds that go by their name alone where there is one of them. */
const ALONE = ['bore', 'boss', 'spigot', 'notch', 'slot', 'pocket', 'groove', 'keyseat', 'flat'] as const

const sectionsOf = ({ views }: Brief): NameOffer[] =>
  (views ?? []).flatMap((v) => (v.kind === 'section' ? [{ name: `section ${v.letter}-${v.letter}`, of: 'view' }] : []))

const datumsOf = ({ datums }: Brief): NameOffer[] => (datums ?? []).map((d) => ({ name: d.letter.text, of: 'datum' }))
