import type { Brief, Side } from '../../../brief/brief.ts'
import type { Mark } from '../../../brief/mark.ts'
import type { Span } from '../../../brief/span.ts'
import type { Curve2 } from '../../../geometry/curve2.ts'
import type { Vec3 } from '../../../geometry/vec.ts'
import type { Sheet } from '../../../sheet/sheet.ts'
import type { Dimension, Proof } from '../../../sizes/dimension.ts'
import type { Frame } from '../../../views/view.ts'

/** What the page asks of the engine. Of the drawings or checks of one part that wait to be made, only the last is. */
export type Asked =
  | (Work & { readonly ask: 'draw'; readonly part: string })
  /** With `print` the check print too. */
  | (Work & { readonly ask: 'check'; readonly part: string; readonly print: boolean })
  | (Work & { readonly ask: 'write'; readonly kind: Written })
  | (Work & { readonly ask: 'solid' })
  /** The solid as it is held, in exact lines. */
  | (Work & { readonly ask: 'look'; readonly held: Held })
  /** A brief that builds the model's solid; `name` is the file's. */
  | (Work & { readonly ask: 'begin'; readonly name: string })

interface Work {
  readonly id: number
  /** A brief, or with `model` a STEP file. */
  readonly text: string
  readonly model?: ModelAsked
  /** In memory shared with the page, where there is such: anything but 0 ends the work. */
  readonly flag?: Int32Array<SharedArrayBuffer>
}

/** What is wanted of a STEP file: one of its parts, by its product's name, or all of it. */
export interface ModelAsked {
  readonly solid?: string
}

/** A file that the engine writes; `check` is the check print. */
export type Written = 'pdf' | 'svg' | 'step' | 'check'

export type Answer =
  | { readonly answer: 'ready' }
  /** What the engine does just now for a request. */
  | { readonly answer: 'at work'; readonly id: number; readonly words: string }
  | { readonly answer: 'drawn'; readonly id: number; readonly drawn: Drawn; readonly memory: number }
  | { readonly answer: 'checked'; readonly id: number; readonly checked: Checked }
  | { readonly answer: 'written'; readonly id: number; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly answer: 'solid'; readonly id: number; readonly solid: SolidPicture }
  | { readonly answer: 'seen'; readonly id: number; readonly seen: Seen }
  /** `text` is absent where no brief can be begun; `sentence` says why, or how near it comes. */
  | { readonly answer: 'begun'; readonly id: number; readonly text?: string; readonly sentence: string }
  /** A newer text of the same part came before this one was done, or it was stopped. */
  | { readonly answer: 'passed over'; readonly id: number }
  /** The request could not be answered; `text` is for the reader. */
  | { readonly answer: 'failed'; readonly id: number; readonly text: string }

/** A feature of the brief and the faces of the solid that it made. */
export interface PartLink {
  readonly id: string
  readonly kind: string
  /** What it is called: `hole A`, `the 4 holes ⌀.281 (line 21)`. */
  readonly words: string
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
  /** The drawing anew, where the checker's verdict puts a stamp on its sheet or takes it off. */
  readonly drawn?: Drawn
}

/** What one brief came to, as plain data that can pass between threads. */
export interface Drawn {
  readonly brief: Brief
  readonly marks: readonly Mark[]
  readonly sheet?: Sheet
  readonly dimensions: readonly Dimension[]
  readonly proof?: Proof
  readonly features: readonly PartLink[]
  /** What each face is called, by id; empty where nothing names it. */
  readonly faceNames: readonly string[]
  /** The two faces of each edge by id, and whether it is smooth. */
  readonly edges: readonly { readonly faces: readonly [number, number?]; readonly smooth: boolean }[]
  readonly reasons: readonly string[]
  /** Views in section, each with the side from which it is looked at. */
  readonly sections: readonly { readonly view: string; readonly side: Side }[]
  /** Of an assembly: its parts, each with how often it is there. */
  readonly items?: readonly { readonly name: string; readonly quantity: number }[]
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
  readonly axes: readonly HandAxis[]
  /** What each face is called: its name in the brief, or what kind of face it is. */
  readonly faceWords: readonly string[]
}

/** An axis of the part and which features turn about it; `from` and `to` bound their faces along it, mm from `point`. */
export interface HandAxis {
  readonly of: readonly string[]
  /** Whose axis it is: `hole A`, `one of the 4 holes ⌀.281 (line 21)`. */
  readonly words: string
  readonly point: Vec3
  readonly direction: Vec3
  readonly from: number
  readonly to: number
}

/** How the solid is held, and where it is cut. */
export interface Held {
  readonly frame: Frame
  readonly cut?: HandCut
  /** Paper mm for one of the part, for the spacing of section lines. */
  readonly scale: number
}

/** A plane square to one of the part's directions: what lies on that side of it is taken off. */
export interface HandCut {
  readonly side: Side
  /** Where the plane stands in that direction: x, y or z in mm. */
  readonly at: number
}

/** What is seen of the solid in the hand, in mm of the view's right and up. */
export interface Seen {
  readonly lines: readonly SeenLine[]
  /** Degrees in the plane of the cut, and mm of the part from line to line; absent where nothing is cut. */
  readonly hatching?: { readonly angle: number; readonly spacing: number }
}

export interface SeenLine {
  /** `cut` borders a cut face. */
  readonly kind: 'visible' | 'intersection' | 'cut' | 'hatching'
  readonly curve: Curve2
  /** Edges and faces of the whole solid. */
  readonly edges: readonly number[]
  readonly faces: readonly number[]
}
