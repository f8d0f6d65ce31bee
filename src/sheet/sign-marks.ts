import type { Header } from '../brief/brief.ts'
import type { Mark } from '../brief/mark.ts'
import { missingSigns } from './lettering/metrics.ts'

/** Characters for which the lettering has no sign. */
export function signMarks(header: Header): Mark[] {
  const said = [
    header.part,
    header.number,
    header.revision,
    header.material,
    header.coating,
    header.texture,
    header.firm,
    header.documentType,
    header.drawn?.name,
    header.checked?.name,
    header.approved?.name,
    ...header.notes,
  ]
  return said.flatMap((words): Mark[] => {
    const missing = words ? missingSigns(words.text) : []
    if (!words || missing.length === 0) return []
    return [
      {
        rule: 'sign-not-in-lettering',
        weight: 'must change',
        text: `The lettering has no sign for ${missing.map((c) => `“${c}”`).join(', ')}: a box is printed instead.`,
        span: words.span,
        expected: 'Latin letters, figures and the signs of the drawing standards',
        source: 'common practice, no source',
      },
    ]
  })
}
