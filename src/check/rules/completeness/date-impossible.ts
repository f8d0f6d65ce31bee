import type { BriefRule } from '../../rule.ts'

/** Years that a drawing of this kind can carry: those of type-written sheets and after, and no four-digit slips. */
const [FIRST, LAST] = [1950, 2099]
/** Months between drawing and approval after which a checker asks. */
const LONG = 24

export const rule: BriefRule = {
  name: 'date-impossible',
  weight: 'must change',
  source: 'ISO 8601-1:2019, 4.3: calendar dates; common practice',
  about:
    'A date that no calendar has, or that lies years from the other signatures, was mistyped: nobody can say which revision it goes with.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const dates = (['drawn', 'checked', 'approved'] as const).flatMap((word) => {
      const date = header[word]?.date
      return date ? [{ word, date, day: dayOf(date.text) }] : []
    })
    const wrong = dates.flatMap(({ date, day }) =>
      day !== 'impossible'
        ? []
        : [
            {
              text: `${date.text} is no date.`,
              span: date.span,
              expected: 'year, month and day, as 2024-03-11',
              numbers: [date.text],
            },
          ],
    )
    const far = dates.flatMap(({ word, date, day }, i) => {
      const before = dates[i - 1]
      if (!before || day === 'impossible' || !day || before.day === 'impossible' || !before.day) return []
      const months = 12 * (day.year - before.day.year) + day.month - before.day.month
      if (months < LONG) return []
      return [
        {
          weight: 'look again' as const,
          text: `It was ${word} on ${date.text}, ${Math.round(months / 12)} years after it was ${before.word}.`,
          span: date.span,
          expected: `a date soon after ${before.date.text}`,
          numbers: [before.date.text, date.text],
        },
      ]
    })
    return [...wrong, ...far]
  },
}

interface Day {
  readonly year: number
  readonly month: number
}

/** Year and month of a date in figures; impossible where its figures are none; undefined where it is in words. */
function dayOf(text: string): Day | 'impossible' | undefined {
  const plain = text.trim()
  const together = /^(\d{4})(\d\d)(\d\d)$/.exec(plain)
  const figures = together ?? /^(\d+)\s*[-./]\s*(\d+)(?:\s*[-./]\s*(\d+))?$/.exec(plain)
  if (!figures) return /^[\d\s.,/-]+(mm|in|inch)?$/i.test(plain) ? 'impossible' : undefined
  const [a, b, c] = figures.slice(1).map((f) => (f === undefined ? 1 : Number(f))) as [number, number, number]
  // Day first, month first, or a short year first are read too: one of the orders must be a date.
  const orders =
    figures[1]!.length > 2
      ? [[a, b, c]]
      : [
          [c, b, a],
          [c, a, b],
          [a, b, c],
        ]
  const dates = orders.map(([year, month, day]) => [year! < 100 ? 2000 + year! : year!, month!, day!] as const)
  const right = dates.find(([year, month, day]) => isDate(year, month, day))
  return right ? { year: right[0], month: right[1] } : 'impossible'
}

function isDate(year: number, month: number, day: number): boolean {
  if (year < FIRST || year > LAST || month < 1 || month > 12 || day < 1) return false
  return day <= new Date(Date.UTC(year, month, 0)).getUTCDate()
}
