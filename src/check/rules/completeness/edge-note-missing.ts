import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'edge-note-missing',
  weight: 'look again',
  source: 'ISO 13715:2017, edges of undefined shape (from memory)',
  about: 'Somebody will handle the part: the drawing says what becomes of burrs and sharp edges.',
  reads: 'brief',
  check: ({ brief: { header } }) =>
    header.edgeBreak ||
    header.notes.some((n) => /\b(burrs?|deburr\w*|sharp (edges|corners)|edges (broken|rounded))\b/i.test(n.text))
      ? []
      : [
          {
            text: 'Nothing is said about burrs and sharp edges.',
            expected:
              header.units === 'inch' ? 'edges     break sharp edges .005-.015' : 'edges     edges broken 0.2 to 0.5',
          },
        ],
}
