import type { EdgeFeature, Name } from '../../brief/brief.ts'
import { plainName } from '../find-name.ts'
import type { Workshop } from '../workshop.ts'

/** A boss has its rim, which is rounded or chamfered, and its foot at the face it stands on, which is filled: marks what is neither. */
export function isAtBoss(shop: Workshop, feature: EdgeFeature, name: Name): boolean {
  const said = /^((?:boss|spigot)s?(?: \w+)??)( end| foot| root)?( edges?)?$/.exec(plainName(name.text))
  if (!said) return false
  const [, boss, where = '', edge] = said
  const isFoot = / (foot|root)/.test(where)
  if (!isFoot && !edge) return false
  if (isFoot && feature.kind !== 'fillet' && shop.contour) {
    const text = `The foot of the ${boss} is an inside corner: it is filled.`
    shop.must('fillet-not-round', name.span, text, `fillet ${boss} foot: R${feature.size.text}`)
    return true
  }
  if (!isFoot && feature.kind === 'fillet') {
    const text = `The edge of the ${boss} is its rim, an outside edge; a fillet stands at its foot.`
    const write = shop.contour
      ? `fillet ${boss} foot: R${feature.size.text}, or round for the rim`
      : 'a note for either: neither is worked on flat stock'
    shop.must('round-not-fillet', name.span, text, write)
    return true
  }
  if (shop.contour || !shop.brief.features.some((f) => f.kind === 'boss')) return false
  const text = `The ${isFoot ? 'foot' : 'rim'} of a boss on flat stock is not worked.`
  shop.must(
    'cannot-build',
    name.span,
    text,
    `a note: ${feature.kind} ${feature.size.text} at the ${isFoot ? 'foot' : 'rim'} of the boss`,
  )
  return true
}
