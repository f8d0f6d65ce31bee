/** Fewest single-letter changes (insert, drop, replace, swap neighbours) from one word to another; gives up above `most`. */
export function spellingDistance(a: string, b: string, most = 3): number {
  if (Math.abs(a.length - b.length) > most) return most + 1
  let before: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1
      let d = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + same)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) d = Math.min(d, before[j - 2]! + 1)
      row.push(d)
    }
    before = last
    last = row
  }
  return last[b.length]!
}

/** The word of `words` that `wrong` was most likely meant to be; none where nothing is near. */
export function nearestWord(wrong: string, words: readonly string[]): string | undefined {
  const low = wrong.toLowerCase()
  if (low.length > 40) return undefined
  const most = low.length <= 2 ? 1 : low.length <= 5 ? 2 : 3
  let best: string | undefined
  let bestDistance = most + 1
  for (const word of words) {
    const d = spellingDistance(low, word.toLowerCase(), most)
    // Of equals the one with the same first letter, for people seldom mistype that.
    if (d < bestDistance || (d === bestDistance && best && word[0] === low[0] && best[0] !== low[0])) {
      best = word
      bestDistance = d
    }
  }
  return bestDistance <= most && bestDistance < low.length ? best : undefined
}
