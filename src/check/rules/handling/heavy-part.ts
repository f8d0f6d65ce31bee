import type { DrawingRule } from '../../rule.ts'

/** The load constant that lifting guidance starts from, kg. */
const LIMIT = 23

export const rule: DrawingRule = {
  name: 'heavy-part',
  weight: 'look again',
  source: 'NIOSH lifting equation 1991: load constant 23 kg; ISO 11228-1:2021: 25 kg at most (from memory)',
  about:
    'A part heavier than one person should lift says so on the drawing. What may be lifted is for local rules to say.',
  reads: 'drawing',
  check: ({ part, brief }) => {
    const { mass } = part.properties
    if (mass === undefined || mass <= LIMIT) return []
    if (brief.header.notes.some((n) => /\b(lift|hoist|crane|mass|weight|heavy)\w*/i.test(n.text))) return []
    const pounds = (mass / 0.45359237).toFixed(0)
    return [
      {
        text: `Caution: the part weighs ${mass.toFixed(0)} kg (${pounds} lb), more than lifting guidance allows one person. Local rules decide.`,
        expected: `note      Caution: mass ${mass.toFixed(0)} kg. Lift by two or by hoist, as local rules require.`,
        numbers: [`${mass.toFixed(0)} kg`],
      },
    ]
  },
}
