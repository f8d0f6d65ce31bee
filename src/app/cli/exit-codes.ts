/**
 * Exit codes of the command line; the worst of all files wins. Stopped from the keyboard it ends by the interrupt itself,
 * which a shell reports as 130; finished files stand, none is half-written.
 */
export const EXIT = {
  /** Everything asked for was done. */
  done: 0,
  /** Done as far as it went, but a brief has marks that must change. */
  marks: 1,
  /** The command line itself was wrong; nothing was done. */
  usage: 2,
  /** A file could not be read or written. */
  file: 3,
  /** A fault of the program's own. */
  fault: 4,
} as const

export type ExitCode = (typeof EXIT)[keyof typeof EXIT]

export const worse = (a: ExitCode, b: ExitCode): ExitCode => (a > b ? a : b)
