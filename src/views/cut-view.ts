import type { View } from './view.ts'

/** What is drawn of a cut solid, before other sections' planes are marked in it. */
export interface CutView extends Pick<View, 'frame' | 'lines' | 'hatched' | 'box'> {
  readonly tolerance: number
  /** Number of faces and edges of the cut solid. */
  readonly count: { readonly faces: number; readonly edges: number }
}
