import type { Part, PartFeature } from '../../part/part.ts'

/** The feature whose walls these faces are. */
export function featureOf(part: Part, faces: readonly number[]): PartFeature | undefined {
  return part.features.find((f) => f.members.some((m) => m.faces.some((face) => faces.includes(face))))
}
