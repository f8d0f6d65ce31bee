// Twist drill sizes of inch practice, inches (ASME B94.11M), from memory.

const numbered =
  '.2280 .2210 .2130 .2090 .2055 .2040 .2010 .1990 .1960 .1935 .1910 .1890 .1850 .1820 .1800 .1770 .1730 .1695 .1660 .1610 ' +
  '.1590 .1570 .1540 .1520 .1495 .1470 .1440 .1405 .1360 .1285 .1200 .1160 .1130 .1110 .1100 .1065 .1040 .1015 .0995 .0980 ' +
  '.0960 .0935 .0890 .0860 .0820 .0810 .0785 .0760 .0730 .0700 .0670 .0635 .0595 .0550 .0520 .0465 .0430 .0420 .0410 .0400 ' +
  '.0390 .0380 .0370 .0360 .0350 .0330 .0320 .0310 .0292 .0280 .0260 .0250 .0240 .0225 .0210 .0200 .0180 .0160 .0145 .0135'
const lettered =
  '.234 .238 .242 .246 .250 .257 .261 .266 .272 .277 .281 .290 .295 .302 .316 .323 .332 .339 .348 .358 .368 .377 .386 .397 .404 .413'

/** A drill by its shop name (`#7`, `F`, `27/64`, `1-7/64`) and its diameter in inches. */
export interface Drill {
  readonly name: string
  readonly diameter: number
}

/** Number, letter and fractional drills up to 2 in, by rising diameter. */
export const inchDrills: readonly Drill[] = [
  ...numbered.split(' ').map((text, i) => ({ name: `#${i + 1}`, diameter: Number(text) })),
  ...lettered.split(' ').map((text, i) => ({ name: String.fromCharCode(65 + i), diameter: Number(text) })),
  ...Array.from({ length: 128 }, (_, i) => ({ name: fractionName(i + 1), diameter: (i + 1) / 64 })),
].sort((a, b) => a.diameter - b.diameter)

/** The drill of a name; undefined when there is none. */
export function drillNamed(name: string): Drill | undefined {
  return inchDrills.find((drill) => drill.name === name)
}

/** The drill nearest in diameter; a fraction is taken before a letter or number of the same size. */
export function nearestDrill(diameterIn: number): Drill {
  return inchDrills.reduce((best, drill) => {
    const gain = Math.abs(best.diameter - diameterIn) - Math.abs(drill.diameter - diameterIn)
    return gain > 1e-9 || (gain > -1e-9 && drill.name.includes('/')) ? drill : best
  })
}

/** 64ths in lowest terms: 27 → `27/64`, 71 → `1-7/64`. */
function fractionName(sixtyFourths: number): string {
  const whole = Math.floor(sixtyFourths / 64)
  let top = sixtyFourths % 64
  if (top === 0) return String(whole)
  let bottom = 64
  while (top % 2 === 0) {
    top /= 2
    bottom /= 2
  }
  return `${whole ? `${whole}-` : ''}${top}/${bottom}`
}
