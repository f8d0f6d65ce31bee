/** First letter large. */
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** `the slot`, `the slot and the hole`, each once. */
export function listed(items: readonly string[]): string {
  const once = [...new Set(items)]
  return once.length < 2 ? (once[0] ?? '') : `${once.slice(0, -1).join(', ')} and ${once[once.length - 1]}`
}
