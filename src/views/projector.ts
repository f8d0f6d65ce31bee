import type { Body } from '../kernel/body.ts'
import type { SolidKey } from '../kernel/kernel.ts'
import type { ExactView, Frame } from './view.ts'

/** Makes the exact view of a solid: every visible and hidden curve, before any convention. */
export type Projector = (solid: SolidKey, body: Body, frame: Frame) => ExactView
