/** Parts that the examples of the explanations are drawn on. */
export const GROUNDS = {
  block: [
    'units     mm',
    'practice  ISO, first angle',
    'general   ISO 2768-m',
    'block     80 × 60 × 25',
    'holes A   top: 2X ⌀9 THRU\n          50 apart, centred; centred up',
    'datum     A  bottom',
  ],
  'viewed block': [
    'units     mm',
    'practice  ISO, first angle',
    'general   ISO 2768-m',
    'block     80 × 60 × 25',
    'holes A   top: 2X ⌀9 THRU\n          50 apart, centred; centred up',
    'views     top, front',
  ],
  disc: ['units     mm', 'practice  ISO, first angle', 'general   ISO 2768-m', 'disc      ⌀140 × 16, outer face front'],
  shaft: [
    'units     mm',
    'practice  ISO, first angle',
    'general   ISO 2768-m',
    'turned    axis left-right; lengths from collar left face\n          left    ⌀20 k6, 28 long\n          collar  ⌀28, 6 long\n          body    ⌀22, to 64\n          nose    ⌀16 h6, to 92',
  ],
  angle: [
    'units     inch',
    'practice  ASME',
    'general   .XX ±.01   .XXX ±.005',
    'angle     formed, .188 STK, inside R .19\n          upright 3.50 high, at rear; base 2.25 toward front; length 3.00',
  ],
  /** An angle with a sharp inside corner. */
  'sharp angle': [
    'units     inch',
    'practice  ASME',
    'general   .XX ±.01   .XXX ±.005',
    'angle     machined, .50 thick\n          upright 3.00 high, at rear; base 2.50 toward front; length 4.00',
  ],
} as const

export type Ground = keyof typeof GROUNDS
