import type { Mark } from '../brief/mark.ts'
import type { OcctKernel } from '../kernel/open.ts'
import type { ReadSolid } from '../read/part-from-solid.ts'
import type { StepFile, StepPart } from '../read/step-file.ts'
import { recognised } from '../views/exact/recognise.ts'

/** One part of a file, or its whole, as plain numbers and measures, splines that are in truth planes or rounds taken for what they are. */
export function solidOf(
  file: StepFile,
  part: Pick<StepPart, 'name' | 'solid'>,
  marks: readonly Mark[],
  kernel: OcctKernel,
): ReadSolid {
  const { name, solid } = part
  const raw = kernel.body(solid)
  const { min, max } = raw.box
  const size = Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2])
  const body = recognised(raw, 1e-7 + 2e-9 * size, 1e-5 * size)
  return { name, unit: file.unit, solid, body, properties: kernel.properties(solid), marks }
}
