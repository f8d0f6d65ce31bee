import type { Side } from '../../brief/brief.ts'
import type { Mark, Mend } from '../../brief/mark.ts'
import type { Vec3 } from '../../geometry/vec.ts'
import { dot } from '../../geometry/vec3.ts'
import { plainText } from '../callout/plain-text.ts'
import type { Dimension } from '../dimension.ts'
import { axisIndex } from '../proof/elements.ts'
import type { Context } from './context.ts'
import type { Sight } from './sight.ts'

type Hidden = Pick<Dimension, 'id' | 'callout' | 'direction' | 'feature' | 'span'>

/** A size at a hidden line, with the statement that brings the view from the feature's own side, or else a section. */
export function atHiddenLine(context: Context, draft: Hidden, sight: Sight): Mark {
  const feature = draft.feature === undefined ? undefined : context.features.get(draft.feature)
  const side = feature && sideOf(feature.outward)
  const faced = feature && context.sights.some((s) => dot(s.view.frame.toViewer, feature.outward) > 1 - 1e-9)
  const isRound = /^(?:diameter|radius|angle|slot)$/.test(draft.direction)
  const wanted =
    side && !faced && isRound ? `the ${side} view, from which the feature is worked` : 'a section through the feature'
  const statement =
    side && !faced && isRound ? viewsWith(context, side) : feature?.feature && sectionThrough(context, feature.id)
  const mend = statement && addition(context, statement)
  return {
    rule: 'size-to-hidden-line',
    weight: 'remark',
    text: `${plainText(draft.callout)} stands at a hidden line in the ${sight.view.id} view; no other view shows it.`,
    ...(draft.span ? { span: draft.span } : {}),
    expected: mend ? `${wanted}: the statement \`${mend.text.trim()}\`` : wanted,
    ...(mend ? { mends: [mend] } : {}),
    source: 'common practice, no source',
  }
}

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

function sectionThrough({ sights }: Context, feature: string): string {
  const taken = new Set(sights.map((s) => s.view.id))
  const letter = [...'ABCDEFGHJK'].find((l) => !taken.has(`section ${l}-${l}`)) ?? 'L'
  return `section   ${letter}-${letter} through ${feature}`
}

/** At the end of the brief; undefined where its views are the drafter's own choice. */
function addition({ part: { brief } }: Context, statement: string): Mend | undefined {
  if (brief.views || brief.text === '') return undefined
  const end = brief.text.length
  const text = `${brief.text.endsWith('\n') ? '' : '\n'}${statement}\n`
  return { label: `add ${statement.replace(/ +/g, ' ')}`, span: { from: end, to: end }, text }
}
