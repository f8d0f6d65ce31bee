import type { Case } from './cases.ts'

const block = 'block     80 × 50 × 30'
const iso = (rule: string, bad: string, good: string): Case => ({ rule, on: 'iso', bad, good })
const asme = (rule: string, bad: string, good: string): Case => ({ rule, on: 'asme', bad, good })

/** What is mistyped in the title block. */
export const titleCases: readonly Case[] = [
  iso('date-impossible', `drawn     I. Vasperg, 2024-02-30\n${block}`, `drawn     I. Vasperg, 2024-02-03\n${block}`),
  iso('edge-break-odd', `edges     edges broken 0.5 to 0.2\n${block}`, `edges     edges broken 0.2 to 0.5\n${block}`),
  iso(
    'grade-unknown',
    `material  S735JR EN 10025-2\ncoating   painted\n${block}`,
    `material  S235JR EN 10025-2\ncoating   painted\n${block}`,
  ),
  iso(
    'standard-number-odd',
    `coating   zinc plated ISO 20810 Fe/Zn 8/C\n${block}`,
    `coating   zinc plated ISO 2081 Fe/Zn 8/C\n${block}`,
  ),
  asme(
    'general-out-of-step',
    'general   .XX ±.005   .XXX ±.01   angles ±1°\nblock     3.00 × 2.00 × 1.00',
    'general   .XX ±.01   .XXX ±.005   angles ±1°\nblock     3.00 × 2.00 × 1.00',
  ),
  iso('point-lost', 'block     80 × 50 × 30 ±01', 'block     80 × 50 × 30 ±0.1'),
  iso('texture-odd', `texture   Ra 125\n${block}`, `texture   Ra 12.5\n${block}`),
]
