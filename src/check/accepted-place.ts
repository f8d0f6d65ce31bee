import type { Brief, Feature } from '../brief/brief.ts'

// A feature without a label is called by its number, which changes when another is put in above it. Its own words stand
// beside the number: `hole 2 (top: ⌀12 THRU)`.

/** Longest piece of a statement that is quoted. */
const LONGEST = 40

/** A place as an acceptance names it: a numbered feature with its words. */
export function nameOf(place: string, brief: Brief): string {
  const feature = numbered(place, brief)
  return feature ? `${place} (${wordsOf(feature, brief)})` : place
}

/**
 * Whether what an acceptance names is this place. Words that one feature of the kind has alone go before the number; where
 * several have them or none, the number decides.
 */
export function isNamed(said: string, place: string, brief: Brief): boolean {
  const quoted = /^(.*?)\s*\((.*)\)$/s.exec(said)
  if (!quoted) return plain(said) === plain(place)
  const [, name, words] = quoted
  const kind = (text: string) => plain(text).replace(/ \d+$/, '')
  const own = numbered(place, brief)
  if (!own || kind(name!) !== kind(place)) return false
  const alike = brief.features.filter((f) => f.kind === own.kind && plain(wordsOf(f, brief)) === plain(words!))
  return alike.length === 1 ? alike[0] === own : plain(name!) === plain(place)
}

/** The feature that `hole 2` is: counted over all of its kind, those with labels too. */
function numbered(place: string, brief: Brief): Feature | undefined {
  const said = /^([a-z]+) (\d+)$/.exec(plain(place))
  if (!said) return undefined
  const kind = said[1] === 'flat' ? 'flat-cut' : said[1]
  const all = brief.features.filter((f) => f.kind === kind && !/^bores?\b/i.test(brief.text.slice(f.span.from)))
  const found = all[Number(said[2]) - 1]
  return found?.label ? undefined : found
}

/** The first line of a feature's statement without its keyword, as one line of words. */
function wordsOf(feature: Feature, brief: Brief): string {
  const first = brief.text.slice(feature.span.from, feature.span.to).split('\n')[0]!
  const words = first
    .replace(/^\s*[a-z]+\s+/i, '')
    .replace(/[()]/g, ' ')
    .replace(/\s#\s.*$/, '')
    .replace(/\s+/g, ' ')
    .trim()
  return words.length <= LONGEST ? words : words.slice(0, words.lastIndexOf(' ', LONGEST)).trim()
}

const plain = (text: string) => text.toLowerCase().replace(/\s+/g, ' ').trim()
