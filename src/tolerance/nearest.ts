/** Number of single-character edits between two words (Levenshtein 1965). */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      next.push(Math.min(change, row[j]! + 1, next[j - 1]! + 1))
    }
    row = next
  }
  return row[b.length]!
}

/** The word of a list that takes the fewest edits; the first of equals. */
export function nearestWord(word: string, words: readonly string[]): string | undefined {
  let best: string | undefined
  let least = Number.POSITIVE_INFINITY
  for (const candidate of words) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase())
    if (distance < least) {
      least = distance
      best = candidate
    }
  }
  return best
}

/** The number of a list nearest to a value; the first of equals. */
export function nearestNumber(value: number, numbers: readonly number[]): number | undefined {
  let best: number | undefined
  for (const candidate of numbers) {
    if (best === undefined || Math.abs(candidate - value) < Math.abs(best - value)) best = candidate
  }
  return best
}
