import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'datum-unused',
  weight: 'look again',
  source: 'common practice, no source',
  about:
    'A datum letter that no frame refers to makes the shop ask what it is for. A note that names the datum counts as a reference.',
  reads: 'brief',
  check: ({ brief }) => {
    const used = new Set(
      (brief.frames ?? []).flatMap((f) => f.frame.rows.flatMap((r) => r.datums.flatMap((d) => d.letters))),
    )
    const inNotes = (letter: string) =>
      brief.header.notes.some((n) => new RegExp(`\\bdatums?\\b.*\\b${letter}\\b`, 'i').test(n.text))
    return (brief.datums ?? []).flatMap(({ letter, span }) =>
      used.has(letter.text) || inNotes(letter.text)
        ? []
        : [
            {
              text: `No frame refers to datum ${letter.text}.`,
              span,
              expected: `a frame that refers to ${letter.text}, or no such datum`,
            },
          ],
    )
  },
}
