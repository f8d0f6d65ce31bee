/** Clear space in mm kept round text: to view lines and to other lines; `ease` where there is room. */
export const CLEAR = {
  ink: 1.2,
  line: 0.9,
  ease: 2.4,
  text: 1.3,
  arrow: 0.7,
  obstacle: 1,
  lineToObstacle: 0.5,
} as const
