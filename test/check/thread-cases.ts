import type { Case } from './cases.ts'

const stud = (thread: string, more = '') => `turned    axis left-right
          screw   ${thread}, 30 long
          body    ⌀30, 60 long
${more}`
const undercut = (size: string) => `groove    screw: ${size}
          right side at body left face
`
const start = 'chamfer   left face outer edge: 1.5 × 45°'

const iso = (rule: string, bad: string, good: string): Case => ({ rule, on: 'iso', bad, good })

/** Outside threads. Undercuts of M20 × 1.5 by DIN 76-1: 1.8 wide at least (short), bottom ⌀17.7; from memory. */
export const threadCases: readonly Case[] = [
  iso(
    'thread-undercut',
    stud('M20 × 1.5 - 6g', start),
    stud('M20 × 1.5 - 6g', `${undercut('3.8 wide, bottom ⌀17.7')}${start}`),
  ),
  iso(
    'thread-undercut-small',
    stud('M20 × 1.5 - 6g', `${undercut('3.8 wide, bottom ⌀18.4')}${start}`),
    stud('M20 × 1.5 - 6g', `${undercut('3.8 wide, bottom ⌀17.7')}${start}`),
  ),
  iso(
    'thread-without-chamfer',
    stud('M20 × 1.5 - 6g', undercut('3.8 wide, bottom ⌀17.7')),
    stud('M20 × 1.5 - 6g', `${undercut('3.8 wide, bottom ⌀17.7')}${start}`),
  ),
]

/** A second pair for rules that ask holes and shafts alike. */
export const shaftThreadCases: readonly Case[] = [
  iso('thread-unknown', stud('M20 × 1.4 - 6g', start), stud('M20 × 1.5 - 6g', start)),
  iso('thread-unknown', stud('M20 × 1.5 - 6H', start), stud('M20 × 1.5 - 6g', start)),
  {
    rule: 'thread-class-missing',
    on: 'asme',
    bad: 'turned    axis left-right\n          screw   3/4-16 UNF, 1.25 long\n          body    ⌀1.250, 2.50 long',
    good: 'turned    axis left-right\n          screw   3/4-16 UNF-2A, 1.25 long\n          body    ⌀1.250, 2.50 long',
  },
  iso('thread-uncommon', stud('M18 × 1.5 - 6g', start), stud('M20 × 1.5 - 6g', start)),
  iso(
    'thread-undercut-small',
    stud('M20 × 1.5 - 6g', `${undercut('1.5 wide, bottom ⌀17.7')}${start}`),
    stud('M20 × 1.5 - 6g', `${undercut('1.8 wide, bottom ⌀17.7')}${start}`),
  ),
  iso(
    'thread-without-chamfer',
    stud('M20 × 1.5 - 6g', `${undercut('3.8 wide, bottom ⌀17.7')}chamfer   left face outer edge: 0.5 × 45°`),
    stud('M20 × 1.5 - 6g', `${undercut('3.8 wide, bottom ⌀17.7')}${start}`),
  ),
]
