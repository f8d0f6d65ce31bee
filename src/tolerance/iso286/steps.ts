// ISO 286-1: steps of nominal size; each is "above the one before, up to and including".

/** Main steps, mm. */
export const mainSteps: readonly number[] = [
  3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150,
]

/** Intermediate steps, in which the larger fundamental deviations are given, mm. */
export const fineSteps: readonly number[] = [
  3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500, 560,
  630, 710, 800, 900, 1000, 1120, 1250, 1400, 1600, 1800, 2000, 2240, 2500, 2800, 3150,
]

/** Index of the step that holds a size, or −1. */
export function stepIndex(sizeMm: number, steps: readonly number[]): number {
  return sizeMm > 0 ? steps.findIndex((bound) => sizeMm <= bound) : -1
}
