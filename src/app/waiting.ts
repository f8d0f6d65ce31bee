import { locate } from '../brief/locate.ts'
import type { Mark } from '../brief/mark.ts'
import { featureWords } from '../brief/vocabulary.ts'

/**
 * A name that is found nowhere because the statement which gives it could not be drawn itself is no misspelling: its mark
 * says so, and names the line to be put right first.
 */
export function withCauses(text: string, marks: readonly Mark[]): Mark[] {
  const must = marks.filter((m) => m.weight === 'must change' && m.span)
  return marks.map((mark) => {
    if (mark.rule !== 'unknown-name' || !mark.span) return mark
    const name = text.slice(mark.span.from, mark.span.to)
    const giver = giverOf(text, name)
    const inside = (m: Mark) => giver && m !== mark && m.span!.from >= giver.from && m.span!.from < giver.to
    if (!giver || !must.some(inside)) return mark
    const { line } = locate(text, giver.from)
    return {
      rule: 'waits-for-another',
      weight: mark.weight,
      text: `“${name}” waits for ${giver.name}, which cannot be drawn as line ${line} says it.`,
      span: mark.span,
      expected: `line ${line} put right; nothing here, if that is what is meant`,
    }
  })
}

/** Where the one statement stands that gives the name: `hole A edges` is of `hole A`, `spigot edge` of the spigot. */
function giverOf(
  text: string,
  name: string,
): { readonly name: string; readonly from: number; readonly to: number } | undefined {
  const said = /^(?:the )?([a-z]+)(?: ([A-Z])\b)?/i.exec(name)
  const kind = featureWords.get(said?.[1]?.toLowerCase() ?? '')
  if (!said || !kind) return undefined
  const found = [...text.matchAll(/^([a-z]+)[ \t]+(?:([A-Z])\b)?.*(?:\r?\n[ \t]+.*)*/gim)].filter(
    ([, word, label]) =>
      featureWords.get(word!.toLowerCase()) === kind && (!said[2] || label?.toUpperCase() === said[2].toUpperCase()),
  )
  const [only] = found
  if (!only || found.length > 1) return undefined
  const own = [only[1]!.toLowerCase(), ...(said[2] ? [said[2].toUpperCase()] : [])].join(' ')
  return { name: said[2] ? own : `the ${own}`, from: only.index, to: only.index + only[0].length }
}
