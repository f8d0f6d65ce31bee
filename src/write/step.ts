import type { OcctKernel } from '../kernel/open.ts'
import { FILE_DESCRIPTION_RECORD, FILE_NAME_RECORD, stepString } from '../kernel/step.ts'
import type { Part } from '../part/part.ts'

/**
 * The part's solid as ISO 10303-21 text (AP214), in the brief's unit. Author, firm and date in the header come from
 * the brief, never from the clock: the same brief gives the same bytes.
 * A solid that is not finished says so in the header's description: `open` is what must change yet.
 */
export function writeStep(part: Part, kernel: OcctKernel, open: readonly string[] = []): string {
  const { header } = part.brief
  const name = [header.number?.text, header.part?.text].filter(Boolean).join(' ') || 'part'
  const text = kernel.step(part.solid, { name, unit: header.units })
  const date = isoDate(header.drawn?.date?.text)
  const author = stepString(header.drawn?.name.text ?? '')
  const firm = stepString(header.firm?.text ?? '')
  const about = [name, ...(open.length > 0 ? [`PRELIMINARY, NOT FOR MANUFACTURE: ${open.join('; ')}`] : [])]
  const described = text.replace(
    FILE_DESCRIPTION_RECORD,
    () => `FILE_DESCRIPTION((${about.map(stepString).join(',')}),'2;1');`,
  )
  return described.replace(
    FILE_NAME_RECORD,
    () => `FILE_NAME(${stepString(name)},'${date}T00:00:00',(${author}),(${firm}),'sheetwright','sheetwright','');`,
  )
}

/** The date where it is written year first, else a constant: the field must be a time stamp. */
function isoDate(text: string | undefined): string {
  return /^\d{4}-\d{2}-\d{2}$/.test(text ?? '') ? text! : '1970-01-01'
}
