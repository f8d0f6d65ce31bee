import type { Header } from '../brief/brief.ts'
import type { SizeSet } from '../sizes/dimension.ts'

/**
 * Whether no tolerance stands on the sheet at all, neither at a size nor for all of them: then nobody could make the part
 * from it or refuse it, however complete its sizes are (ASME Y14.5-2018 4.1(a), ISO 8015:2011 5.11, both from memory).
 */
export const untoleranced = ({ general }: Header, sizes: SizeSet): boolean =>
  general.length === 0 &&
  sizes.dimensions.every(
    ({ tolerance, signs }) => (!tolerance || tolerance.from === 'none') && (signs ?? []).length === 0,
  )
