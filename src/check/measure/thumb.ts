/** Half a thousandth of an inch, mm: what a bound by rule of thumb is not exact to. */
const HAIR = 0.0127

/** Whether so much material falls short of a bound that is common practice, and not by a hair or by rounding only. */
export const fallsShort = (mm: number, bound: number): boolean => mm < bound - HAIR - 1e-6
