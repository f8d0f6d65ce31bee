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
import { type Watch, Watcher } from './watch.ts'

/**
 * Every visible and hidden curve of a body seen along a direction, as exact lines, arcs, ellipses and splines in part
 * millimetres: sharp edges, outlines of curved faces, smooth edges, borders of cut faces. Each place is drawn once:
 * coincident curves are one, visible over hidden; contiguous ones are joined. Needs no kernel. Throws `Stopped` where
 * `watch` says so.
 */
export function exactView(body: Body, frame: Frame, watch: Watch = {}): ExactView {
  const watcher = new Watcher(watch, body.edges.length + body.faces.length)
  const model = bodyModel(body, watcher)
  const tracks: Track[] = []
  edgeTracks(model, frame, tracks, watcher)
  silhouetteTracks(model, frame, tracks, watcher)
  const pieces = splitAndDecide(tracks, occluders(model, frame, tracks, watcher))
  const curves = mergePieces(pieces, model.tolerances.line, model.tolerances.spline, watcher)
  watcher.finish()
  return { frame, curves, cuts: cutRegions(body, frame) }
}
