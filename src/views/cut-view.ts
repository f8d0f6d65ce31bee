import type { Kin, View } from './view.ts'

/** What is drawn of a cut solid, before other sections' planes are marked in it. */
export interface CutView extends Pick<View, 'frame' | 'lines' | 'hatched' | 'box'> {
  readonly tolerance: number
  /** What of the part the faces and edges of the cut solid are. */
  readonly kin: Kin
}
