/** What a mark says, as a sentence of its own: with a capital and a full stop. Names and figures in front stay as they are. */
export function sentence(words: string): string {
  const ended = /[.!?…]$/.test(words) || words === '' ? words : `${words}.`
  return /^\p{Ll}[\p{Ll}’'-]*(?:\s|$|[.,:;])/u.test(ended) ? ended.charAt(0).toUpperCase() + ended.slice(1) : ended
}
