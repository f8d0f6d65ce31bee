import type { Frame } from '../view.ts'
import type { BodyModel } from './body-model.ts'
import type { FaceModel } from './face-model.ts'
import type { Track } from './track.ts'

export function torusSilhouettes(_model: BodyModel, _face: FaceModel, _frame: Frame, _out: Track[]): void {}
