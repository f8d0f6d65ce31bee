/** A brief for a plate with a grid of equal holes. */
export function holePlate(across: number, up: number): string {
  return `part      Grid plate
number    GP-${across * up}
units     mm
practice  ISO
material  steel S235JR
plate     ${across * 20 + 20} long × ${up * 20 + 20} wide × 8 thick, face front
holes     front: ${across * up}X ⌀6.6 THRU
          ${across} across 20 apart, centred; ${up} up 20 apart, centred
`
}
