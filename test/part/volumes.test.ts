import { describe, expect, it } from 'vitest'
import type { Part } from '../../src/part/part.ts'
import { faults, openBench } from './workbench.ts'

const bench = openBench()

const { PI } = Math

/** The part's volume against a closed formula, to 1e-9 of it; nothing to answer in its brief. */
function expectVolume(part: Part, volume: number) {
  expect(faults(part)).toEqual([])
  expect(Math.abs(part.properties.volume - volume) / volume).toBeLessThan(1e-9)
}

// Elementary solids: volumes and centroids of prism, cylinder, cone, frustum, sphere and torus as in
// Machinery's Handbook, "Volumes of solids" (formulas from memory, each re-derivable by integration).

describe('flat stock', () => {
  it('plate with holes: l·w·t − n·πr²·t', () => {
    const part = bench.part(`plate 120 × 80 × 10
holes top: 6X ⌀9 THRU
      3 across 40 apart, centred; 2 up 50 apart, centred`)
    expectVolume(part, 120 * 80 * 10 - 6 * PI * 4.5 ** 2 * 10)
    expect(part.properties.centroid).toEqual([expect.closeTo(60, 9), expect.closeTo(40, 9), expect.closeTo(5, 9)])
  })

  it('plate standing on edge, face front and face right', () => {
    const front = bench.part('plate 100 × 60 × 8, face front')
    expect(front.body.box.max).toEqual([100, 8, 60])
    const right = bench.part('plate 100 × 60 × 8, face right')
    expect(right.body.box.max).toEqual([8, 100, 60])
    expectVolume(right, 100 * 60 * 8)
  })

  it('corner rounds: each takes r² − πr²/4 off; chamfers half their square', () => {
    const part = bench.part(`plate 100 × 60 × 8
round front corners: 2X R10
chamfer rear corners: 2X 5 × 45°`)
    expectVolume(part, (100 * 60 - 2 * (1 - PI / 4) * 100 - 2 * 12.5) * 8)
  })

  it('blind hole with a 118° point: cylinder and cone of height r/tan 59°', () => {
    const part = bench.part(`block 40 × 40 × 30
hole top: ⌀10 ↧ 15
     centred both ways`)
    const cone = (PI * 25 * (5 / Math.tan((59 * PI) / 180))) / 3
    expectVolume(part, 40 * 40 * 30 - PI * 25 * 15 - cone)
  })

  it('counterbore: two coaxial cylinders', () => {
    const part = bench.part(`plate 60 × 60 × 20
hole top: ⌀9 THRU, ⌴ ⌀15 ↧ 9
     centred both ways`)
    expectVolume(part, 60 * 60 * 20 - PI * 7.5 ** 2 * 9 - PI * 4.5 ** 2 * 11)
  })

  it('countersink: frustum πh/3·(R² + Rr + r²)', () => {
    const part = bench.part(`plate 60 × 60 × 20
hole top: ⌀9 THRU, ⌵ ⌀18 × 90°
     centred both ways`)
    const h = 9 - 4.5
    const frustum = ((PI * h) / 3) * (81 + 9 * 4.5 + 4.5 ** 2)
    expectVolume(part, 60 * 60 * 20 - frustum - PI * 4.5 ** 2 * (20 - h))
  })

  it('slots: closed is a rectangle and a circle, open a rectangle and half a circle', () => {
    const closed = bench.part(`plate 100 × 60 × 8
slot top: 10 × 40 overall THRU, long way left-right
     centred both ways`)
    expectVolume(closed, (100 * 60 - 30 * 10 - PI * 25) * 8)
    const open = bench.part(`plate 100 × 60 × 8
slot top: 10 × 40 overall THRU, open to left
     centred up`)
    expectVolume(open, (100 * 60 - 35 * 10 - (PI * 25) / 2) * 8)
  })

  it('pocket with corner radius: (w·h − (4 − π)r²)·d', () => {
    const part = bench.part(`block 100 × 60 × 20
pocket top: 50 across × 30 up, 12 deep, corners R6
       centred both ways`)
    expectVolume(part, 100 * 60 * 20 - (50 * 30 - (4 - PI) * 36) * 12)
  })

  it('steps and notches: rectangles and a triangle', () => {
    const step = bench.part(`block 60 × 40 × 30
step top left: 15 from left, 10 from top`)
    expectVolume(step, 60 * 40 * 30 - 15 * 10 * 40)
    const square = bench.part(`block 60 × 40 × 30
notch front, top: square, 12 wide, 8 deep
      centred`)
    expectVolume(square, 60 * 40 * 30 - 12 * 8 * 40)
    const vee = bench.part(`block 60 × 40 × 30
notch front, top: vee, 20 wide, 90°
      centred`)
    expectVolume(vee, 60 * 40 * 30 - ((20 * 10) / 2) * 40)
  })

  it('chamfer all round one face: the prismatoid h/6·(A + 4M + B)', () => {
    const part = bench.part(`block 50 × 40 × 30
chamfer top edges: 4X 3 × 45°`)
    const frustum = (3 / 6) * (50 * 40 + 4 * 47 * 37 + 44 * 34)
    expectVolume(part, 50 * 40 * 27 + frustum)
  })

  it('boss and a hole through it', () => {
    const part = bench.part(`plate 80 × 80 × 10
boss top: ⌀30 × 12 high
     centred both ways
hole boss end: ⌀10 THRU
     centred both ways`)
    expectVolume(part, 80 * 80 * 10 + PI * 225 * 12 - PI * 25 * 22)
  })

  it('rounded top edges by the kernel: each takes (1 − π/4)·r² of its length', () => {
    const part = bench.part(`block 50 × 40 × 30
round top left edge: R6
round top right edge: R6`)
    expectVolume(part, 50 * 40 * 30 - 2 * (1 - PI / 4) * 36 * 40)
  })

  it('fillet in the corner of a step adds (1 − π/4)·r² of its length', () => {
    const part = bench.part(`block 60 × 40 × 30
step top left: 15 from left, 10 from top
fillet step corner: R4`)
    expectVolume(part, 60 * 40 * 30 - 15 * 10 * 40 + (1 - PI / 4) * 16 * 40)
  })
})

describe('sections', () => {
  // Machinery's Handbook, properties of sections: angle A = t(a + b − t); channel and tee by rectangles (from memory)
  it('machined angle with sharp corners: t·(a + b − t)', () => {
    const part = bench.part('angle machined, 6 thick, upright 60 high, at rear; base 40 toward front; length 100')
    expectVolume(part, 6 * (60 + 40 - 6) * 100)
    // centroid from the heel by moments of two rectangles
    const area = 6 * 94
    const up = (60 * 6 * 30 + 34 * 6 * 3) / area
    const deep = (60 * 6 * 3 + 34 * 6 * 23) / area
    expect(part.properties.centroid[2]).toBeCloseTo(up, 9)
    expect(part.properties.centroid[1]).toBeCloseTo(40 - deep, 9)
  })

  it('formed angle: two flats and a quarter ring', () => {
    const part = bench.part(
      'angle formed, 5 STK, inside R 5; upright 60 high, at rear; base 40 toward front; length 100',
    )
    const area = 5 * (60 - 10) + 5 * (40 - 10) + (PI / 4) * (100 - 25)
    expectVolume(part, area * 100)
  })

  it('rolled angle: sharp heel, fillet, two toe rounds', () => {
    const part = bench.part(
      'angle rolled, 6 STK, inside R 8, toe R 4; upright 60 STK high, at rear; base 60 STK toward front; length 100',
    )
    const corner = 1 - PI / 4
    expectVolume(part, (6 * (60 + 60 - 6) + corner * 64 - 2 * corner * 16) * 100)
  })

  it.each(['rear', 'front', 'left', 'right'] as const)('the upright stands at the %s', (at) => {
    const toward = { rear: 'front', front: 'rear', left: 'right', right: 'left' }[at]
    const part = bench.part(`angle machined, 6 thick, upright 60 high, at ${at}; base 40 toward ${toward}; length 100`)
    expectVolume(part, 6 * 94 * 100)
    const axis = at === 'rear' || at === 'front' ? 1 : 0
    const low = part.properties.centroid[axis] < 20
    expect(low).toBe(at === 'front' || at === 'left')
  })

  it('channel and tee', () => {
    const channel = bench.part('channel 80 high, 40 wide, 6 thick, 200 long, axis left-right')
    expectVolume(channel, (80 * 40 - 68 * 34) * 200)
    const tee = bench.part('tee 60 high, 80 wide, 8 thick, 200 long, axis left-right')
    expectVolume(tee, (80 * 8 + 52 * 8) * 200)
  })

  it('outline with slopes and arcs', () => {
    const gusset = bench.part(`outline 8 thick, face front
 right 120; up 20; slope left 100 up 100; left 20; close`)
    expectVolume(gusset, (120 * 120 - (100 * 100) / 2) * 8)
    const tongue = bench.part(`outline 5 thick, face top
 right 60; arc R15 to 60 across, 30 up, turning left; left 60; close`)
    expectVolume(tongue, (60 * 30 + (PI * 225) / 2) * 5)
  })
})

describe('turned stock', () => {
  it('stepped shaft, lengths from a shoulder', () => {
    const part = bench.part(`turned axis left-right; lengths from collar left face
 left ⌀20, 28 long
 collar ⌀28, 6 long
 right ⌀22, to 64
 nose ⌀16, to 92`)
    expectVolume(part, PI * (100 * 28 + 196 * 6 + 121 * 58 + 64 * 28))
    expect(part.body.box.max[0]).toBeCloseTo(120, 9)
  })

  it('taper: frustum', () => {
    const part = bench.part(`turned axis left-right
 shank ⌀30, 40 long
 taper ⌀30 tapered to ⌀20, 50 long`)
    expectVolume(part, PI * 225 * 40 + ((PI * 50) / 3) * (225 + 150 + 100))
  })

  it('tube by bore and by wall', () => {
    expectVolume(
      bench.part('tube ⌀62 outside, ⌀45 inside, 12 long, axis left-right'),
      (PI / 4) * (62 ** 2 - 45 ** 2) * 12,
    )
    expectVolume(bench.part('tube ⌀60 outside, wall 5, 40 long, axis left-right'), (PI / 4) * (60 ** 2 - 50 ** 2) * 40)
  })

  it('disc with spigot, bore and bolt circle', () => {
    const part = bench.part(`disc ⌀130 × 16, outer face front
spigot rear: ⌀80 × 5
bore front: ⌀30 THRU
holes front: 6X ⌀9 THRU, ⌴ ⌀15 ↧ 9
      on ⌀100 bolt circle, equal, one at 12 o'clock`)
    const holes = 6 * PI * (7.5 ** 2 * 9 + 4.5 ** 2 * 7)
    expectVolume(part, PI * (65 ** 2 * 16 + 40 ** 2 * 5 - 15 ** 2 * 21) - holes)
    // the first hole stands at twelve o'clock seen from the front
    const holesOf = part.features.find((f) => f.pattern?.kind === 'bolt circle')
    expect(holesOf?.members[0]?.point[0]).toBeCloseTo(0, 12)
    expect(holesOf?.members[0]?.point[2]).toBeCloseTo(50, 12)
  })

  it('chamfered end: cylinder less a ring of triangular section (Pappus)', () => {
    const part = bench.part(`bar ⌀40, 60 long, axis left-right
chamfer ends: 2X 3 × 45°`)
    // triangle of legs 3, its centroid one leg-third in from the corner
    expectVolume(part, PI * 400 * 60 - 2 * ((3 * 3) / 2) * 2 * PI * (20 - 1))
  })

  it('has two ends, whatever grooves are cut near them', () => {
    const part = bench.part(`turned axis left-right
 a ⌀25, 30 long
 b ⌀32, 45 long
groove a: 1.3 wide, bottom ⌀23.9
 right side 4 from a right face
chamfer ends: 2X 1.5 × 45°`)
    expect(part.features.find((f) => f.kind === 'chamfer')!.members.map((m) => m.faces.length)).toEqual([1, 1])
    const triangle = (r: number) => ((1.5 * 1.5) / 2) * 2 * PI * (r - 0.5)
    const groove = PI * (12.5 ** 2 - 11.95 ** 2) * 1.3
    expectVolume(part, PI * (12.5 ** 2 * 30 + 16 ** 2 * 45) - groove - triangle(12.5) - triangle(16))
  })

  it('round on an end: the ring (1 − π/4)r² at its own centroid (Pappus)', () => {
    const part = bench.part(`bar ⌀40, 60 long, axis left-right
round right face outer edge: R5`)
    const area = (1 - PI / 4) * 25
    // spandrel of a quarter circle: centroid (10 − 3π)/(12 − 3π)·r from the corner (Machinery's Handbook, from memory)
    const in5 = 5 * (1 - (10 - 3 * PI) / (12 - 3 * PI))
    expectVolume(part, PI * 400 * 60 - area * 2 * PI * (20 - (5 - in5)))
  })

  it('groove and bore with a blind bottom', () => {
    const part = bench.part(`bar ⌀40, 60 long, axis left-right
groove outside: 4 wide, bottom ⌀34; left end 10 from left face
bore left face: ⌀20 ↧ 30, flat bottom`)
    expectVolume(part, PI * 400 * 60 - PI * (400 - 17 ** 2) * 4 - PI * 100 * 30)
  })

  it('flat: circular segment r²·acos(d/r) − d·√(r² − d²)', () => {
    const part = bench.part(`bar ⌀40, 60 long, axis left-right
flat outside, top: 35 across`)
    const d = 15
    const segment = 400 * Math.acos(d / 20) - d * Math.sqrt(400 - d * d)
    expectVolume(part, (PI * 400 - segment) * 60)
  })

  it('cross hole through a bar: Steinmetz-like, against numerical integration', () => {
    const part = bench.part(`bar ⌀40, 60 long, axis left-right
hole outside, from top: ⌀10 THRU
     30 from left; centred up`)
    // ∫ over the hole's disc of the chord 2√(R² − y²)
    let sum = 0
    const n = 20000
    for (let i = 0; i < n; i++) {
      const y = -5 + (10 * (i + 0.5)) / n
      sum += 2 * Math.sqrt(25 - y * y) * 2 * Math.sqrt(400 - y * y) * (10 / n)
    }
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(PI * 400 * 60 - sum, 2)
  })

  it('keyseat with round ends: against numerical integration of the depth under the crown', () => {
    const part = bench.part(`bar ⌀40, 80 long, axis left-right
keyseat outside, top: 8 wide × 4 deep × 30 long
        left end 20 from left face`)
    let sum = 0
    const n = 4000
    for (let i = 0; i < n; i++) {
      const y = -4 + (8 * (i + 0.5)) / n
      const long = 22 + 2 * Math.sqrt(16 - y * y)
      sum += long * (Math.sqrt(400 - y * y) - 16) * (8 / n)
    }
    expect(faults(part)).toEqual([])
    expect(part.properties.volume).toBeCloseTo(PI * 400 * 80 - sum, 2)
  })
})

describe('mass', () => {
  it('volume times the handbook density of the material named', () => {
    const part = bench.part('block 100 × 100 × 100', 'units mm\npractice ISO\nmaterial S235JR EN 10025-2')
    // steel 7.85 g/cm³: EN 1991-1-1 table A.4 gives 77.0–78.5 kN/m³
    expect(part.properties.mass).toBeCloseTo(7.85, 9)
    expect(part.properties.density?.source).toMatch(/EN 1991/)
    expect(bench.part('block 10 × 10 × 10', 'units mm\nmaterial unobtainium').properties.mass).toBeUndefined()
  })

  it('inch briefs give millimetres', () => {
    const part = bench.part('block 1.000 × 2.000 × 3.000', 'units inch\npractice ASME')
    expectVolume(part, 6 * 25.4 ** 3)
  })
})
