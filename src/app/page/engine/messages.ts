import type { Brief } from '../../../brief/brief.ts'
import type { Mark } from '../../../brief/mark.ts'
import type { Span } from '../../../brief/span.ts'
import type { Vec3 } from '../../../geometry/vec.ts'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Dimension, Proof } from '../../../sizes/dimension.ts'

/** What the page asks of the engine. Of the drawings or checks of one part that wait to be made, only the last is. */
export type Asked =
  | { readonly ask: 'draw'; readonly id: number; readonly part: string; readonly text: string }
  /** With `print` the check print too. */
  | {
      readonly ask: 'check'
      readonly id: number
      readonly part: string
      readonly text: string
      readonly print: boolean
    }
  | { readonly ask: 'write'; readonly id: number; readonly text: string; readonly kind: Written }
  | { readonly ask: 'solid'; readonly id: number; readonly text: string }

/** A file that the engine writes; `check` is the check print. */
export type Written = 'pdf' | 'svg' | 'step' | 'check'

export type Answer =
  | { readonly answer: 'ready' }
  | { readonly answer: 'drawn'; readonly id: number; readonly drawn: Drawn; readonly memory: number }
  | { readonly answer: 'checked'; readonly id: number; readonly checked: Checked }
  | { readonly answer: 'written'; readonly id: number; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly answer: 'solid'; readonly id: number; readonly solid: SolidPicture }
  /** A newer text of the same part came before this one was begun. */
  | { readonly answer: 'passed over'; readonly id: number }
  /** The request could not be answered; `text` is for the reader. */
  | { readonly answer: 'failed'; readonly id: number; readonly text: string }

/** A feature of the brief and the faces of the solid that it made. */
export interface PartLink {
  readonly id: string
  readonly kind: string
  readonly faces: readonly number[]
  readonly span?: Span
}

/** A mark as the page shows it. */
export interface PageMark extends Mark {
  /** The statement that would accept it, but for its reason; absent where it cannot be accepted. */
  readonly accept?: string
  /** Found by the checker's rules, not while drawing. */
  readonly checker?: true
}

/** What the checker says to a drawing. */
export interface Checked {
  readonly text: string
  readonly marks: readonly PageMark[]
  readonly print?: Sheet
}

/** What one brief came to, as plain data that can pass between threads. */
export interface Drawn {
  readonly brief: Brief
  readonly marks: readonly Mark[]
  readonly sheet?: Sheet
  readonly dimensions: readonly Dimension[]
  readonly proof?: Proof
  readonly features: readonly PartLink[]
  /** Names of the faces by id. */
  readonly faceNames: readonly string[]
  /** The two faces of each edge by id, and whether it is smooth. */
  readonly edges: readonly { readonly faces: readonly [number, number?]; readonly smooth: boolean }[]
  readonly reasons: readonly string[]
  /** Mass in kg, volume in mm³. */
  readonly weight?: { readonly mass?: number; readonly volume: number }
  /** Milliseconds that the engine took. */
  readonly took: number
}

/** The solid for the hand: triangles of its faces and the lines of its edges, in mm. */
export interface SolidPicture {
  readonly corners: Float32Array
  readonly faces: Int32Array
  readonly edges: readonly { readonly id: number; readonly points: Float32Array; readonly smooth: boolean }[]
  readonly box: { readonly min: Vec3; readonly max: Vec3 }
}
