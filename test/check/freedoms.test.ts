import { expect, it } from 'vitest'
import type { Element } from '../../src/check/measure/elements.ts'
import { basisOf, freeOf, heldBy } from '../../src/check/measure/freedoms.ts'
import type { Vec3 } from '../../src/geometry/vec.ts'

const plane = (direction: Vec3, point: Vec3 = [0, 0, 0]): Element => ({ kind: 'plane', point, direction })
const axis = (direction: Vec3, point: Vec3 = [0, 0, 0]): Element => ({ kind: 'axis', point, direction })
const [x, y, z]: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]
const SIZE = 50
const held = (...elements: readonly Element[]) => elements.flatMap((e) => heldBy(e, SIZE))

// ISO 5459:2011, invariance classes: what a single feature or a group of features leaves free of six.
it.each([
  ['a plane', [plane(z!)], 3],
  ['two planes square to each other', [plane(z!), plane(x!)], 5],
  ['three planes square to each other', [plane(z!), plane(x!), plane(y!)], 6],
  ['two parallel planes', [plane(z!), plane(z!, [0, 0, 20])], 3],
  ['a cylinder', [axis(z!)], 4],
  ['a cylinder and the plane square to it', [axis(z!, [30, 0, 0]), plane(z!)], 5],
  ['a cylinder and a plane along it', [axis(z!, [30, 10, 0]), plane(x!)], 5],
  ['two parallel cylinders', [axis(z!), axis(z!, [40, 0, 0])], 5],
  ['two cylinders on one axis', [axis(z!, [5, 5, 0]), axis(z!, [5, 5, 90])], 4],
  ['a plane and two holes square to it', [plane(z!), axis(z!, [10, 10, 0]), axis(z!, [70, 40, 0])], 6],
] as const)('%s holds as many freedoms as ISO 5459 says', (_, elements, count) => {
  expect(basisOf(held(...elements))).toHaveLength(count)
})

it('names the ways that are open to what has a place', () => {
  const hole = axis(z!, [20, 15, 0])
  const needed = heldBy(hole, SIZE)
  const centre: Vec3 = [50, 30, 5]
  expect(freeOf(needed, held(plane(z!), plane(x!), plane(y!)), centre, SIZE)).toEqual({ all: true, free: [] })
  // Laid to the bottom and the left, it still moves front-rear.
  expect(freeOf(needed, held(plane(z!), plane(x!)), centre, SIZE).free).toEqual([{ kind: 'shift', way: 'front-rear' }])
  // About a bore it turns, unless it lies on the bore's own axis.
  const bore = axis(z!, [50, 30, 0])
  expect(freeOf(needed, held(plane(z!), bore), centre, SIZE).free).toEqual([{ kind: 'turn', way: 'up-down' }])
  expect(freeOf(heldBy(bore, SIZE), held(plane(z!), bore), centre, SIZE).all).toBe(true)
  // Nothing shifts or turns along the part's ways and yet an axis elsewhere is not held: two axes aslant to each other.
  expect(freeOf(heldBy(axis(x!, [0, 9, 9]), SIZE), held(axis(x!)), centre, SIZE).all).toBe(false)
})
