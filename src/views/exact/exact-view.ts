import type { Body } from '../../kernel/body.ts'
import { cutRegions } from '../cut-regions.ts'
import type { ExactView, Frame } from '../view.ts'
import { bodyModel } from './body-model.ts'
import { edgeTracks } from './edge-tracks.ts'
import { mergePieces } from './merge.ts'
import { occluders } from './occluders.ts'
import { silhouetteTracks } from './silhouettes.ts'
import { splitAndDecide } from './split.ts'
import type { Track } from './track.ts'

/**
 * Every visible and hidden curve of a body seen along a direction, as exact lines, arcs, ellipses and splines in part
 * millimetres: sharp edges, outlines of curved faces, smooth edges, borders of cut faces. Each place is drawn once:
 * coincident curves are one, visible over hidden; contiguous ones are joined. Needs no kernel.
 */
export function exactView(body: Body, frame: Frame): ExactView {
  const model = bodyModel(body)
  const tracks: Track[] = []
  edgeTracks(model, frame, tracks)
  silhouetteTracks(model, frame, tracks)
  const pieces = splitAndDecide(tracks, occluders(model, frame, tracks))
  return {
    frame,
    curves: mergePieces(pieces, model.tolerances.line, model.tolerances.spline),
    cuts: cutRegions(body, frame),
  }
}
