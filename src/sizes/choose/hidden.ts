import type { Side } from '../../brief/brief.ts'
import type { Mark, Mend } from '../../brief/mark.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import type { PartFeature } from '../../part/part.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Dimension } from '../dimension.ts'
import { axisIndex } from '../proof/elements.ts'
import type { Context } from './context.ts'
import type { Sight } from './sight.ts'

type Hidden = Pick<Dimension, 'id' | 'callout' | 'direction' | 'feature' | 'span'>

/** A size at a hidden line, with the statement that brings the view from the feature's own side, or else a section. */
export function atHiddenLine(context: Context, draft: Hidden, sight: Sight): Mark {
  // The id begins with the feature that the size belongs to.
  const feature = context.features.get(draft.feature ?? draft.id.split('/')[0]!)
  const side = feature && sideOf(feature.outward)
  const faced = feature && context.sights.some((s) => dot(s.view.frame.toViewer, feature.outward) > 1 - 1e-9)
  const isRound = /^(?:diameter|radius|angle|slot)$/.test(draft.direction)
  const fromSide = side && !faced && (isRound || isCutOpen(context, feature.members)) ? side : undefined
  const wanted = fromSide ? `the ${fromSide} view, from which the feature is worked` : WANTED
  const statement = fromSide ? viewsWith(context, fromSide) : feature?.feature && sectionThrough(context, feature)
  const mend = statement && addition(context, statement)
  const own = context.part.brief.views && wanted === WANTED && feature?.feature ? ownSection(context, feature) : ''
  return {
    rule: 'size-to-hidden-line',
    weight: 'remark',
    text: `${plainText(draft.callout)} stands at a hidden line in the ${sight.view.id} view; no other view shows it.`,
    ...(draft.span ? { span: draft.span } : {}),
    expected: mend ? `${wanted}: the statement \`${mend.text.trim()}\`` : own || wanted,
    ...(mend ? { mends: [mend] } : {}),
    source: 'common practice, no source',
  }
}

const WANTED = 'a section through the feature'

/** A section shows it already: what it does not tell stands in the view from the worked side. */
const isCutOpen = ({ sights }: Context, members: PartFeature['members']) =>
  sights.some((s) => s.view.kind === 'section' && s.linesOf(members.flatMap((m) => m.faces)).length > 0)

/** Among the drafter's own views: the words that lead a section of theirs through the feature, or else one more. */
function ownSection(context: Context, feature: PartFeature): string {
  const free = (context.part.brief.views ?? []).find((v) => v.kind === 'section' && !v.through)
  if (free?.kind === 'section') return `\`section ${free.letter}-${free.letter} through ${wordsFor(context, feature)}\``
  return `\`${sectionThrough(context, feature).replace(/ +/g, ' ')}\``
}

/** As the brief would name it: the one of its kind by its kind. */
const wordsFor = ({ part }: Context, { id, kind }: PartFeature) =>
  id === `${kind} 1` && part.features.filter((f) => f.kind === kind).length === 1 ? kind : id

function sideOf(outward: Vec3): Side | undefined {
  const k = axisIndex(outward)
  if (k === undefined) return undefined
  const [low, high] = (
    [
      ['left', 'right'],
      ['front', 'rear'],
      ['bottom', 'top'],
    ] as const
  )[k]
  return outward[k] > 0 ? high : low
}

/** The views as they are, and one more. */
function viewsWith({ sights }: Context, side: Side): string {
  const views = sights.map((s) => s.view)
  const sides = views.flatMap((v) => (v.kind === 'principal' && v.side ? [v.side] : []))
  const sections = views.flatMap((v) => (v.kind === 'section' && v.side ? [`; ${v.id} as ${v.side}`] : []))
  return `views     ${[...sides, side].join(', ')}${sections.join('')}; pictorial`
}

function sectionThrough(context: Context, feature: PartFeature): string {
  const asked = (context.part.brief.views ?? []).flatMap((v) =>
    v.kind === 'section' ? [`section ${v.letter}-${v.letter}`] : [],
  )
  const taken = new Set([...context.sights.map((s) => s.view.id), ...asked])
  const letter = [...'ABCDEFGHJK'].find((l) => !taken.has(`section ${l}-${l}`)) ?? 'L'
  return `section   ${letter}-${letter} through ${wordsFor(context, feature)}`
}

/** At the end of the brief; undefined where its views are the drafter's own choice. */
function addition({ part: { brief } }: Context, statement: string): Mend | undefined {
  if (brief.views || brief.text === '') return undefined
  const end = brief.text.length
  const text = `${brief.text.endsWith('\n') ? '' : '\n'}${statement}\n`
  return { label: `add ${statement.replace(/ +/g, ' ')}`, span: { from: end, to: end }, text }
}
