/** Alternating on/off lengths in paper mm, starting and ending with on; `lead` and `trail` are gaps left before and after. */
export interface DashRun {
  readonly lead: number
  readonly trail: number
  /** Absent: unbroken. */
  readonly dashes?: readonly number[]
}

export const UNBROKEN: DashRun = { lead: 0, trail: 0 }

/** Elements one after another, on positive and off negative; neighbours of one sign grow together. */
export function alternating(elements: readonly number[]): number[] {
  const out: number[] = []
  let sign = 0
  for (const e of elements) {
    if (e === 0) continue
    if (Math.sign(e) === sign) out[out.length - 1]! += Math.abs(e)
    else out.push(Math.abs(e))
    sign = Math.sign(e)
  }
  return out
}
