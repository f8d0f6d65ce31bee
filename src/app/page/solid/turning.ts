import {
  AlwaysStencilFunc,
  BackSide,
  BufferAttribute,
  BufferGeometry,
  Color,
  DecrementWrapStencilOp,
  FrontSide,
  IncrementWrapStencilOp,
  type Material,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  NotEqualStencilFunc,
  OrthographicCamera,
  Plane,
  PlaneGeometry,
  Raycaster,
  ReplaceStencilOp,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three'
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js'
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js'
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js'
import { FRAMES } from '../../../views/frames.ts'
import type { HandCut, SolidPicture } from '../engine/messages.ts'
import { FIRST_LINE } from '../engine/section-lines.ts'
import { meshCut, sectionLines } from './mesh-cut.ts'
import { type CurvedMesh, curvedMesh, meshOutline } from './mesh-outline.ts'
import type { Board } from './pose.ts'

const PAPER = 0xffffff
const INK = 0x000000
/** The colours of light on the sheet and in the brief. */
const LIT = new Color(0xb3471c)
const WASH = new Color(0xf6dfc4)
const BARE = new Color(PAPER)
const BLACK = new Color(INK)

export interface TurningLight {
  readonly faces: ReadonlySet<number>
  readonly edges: ReadonlySet<number>
}

/** Widths of the pen in px. */
export interface Pens {
  readonly outline: number
  readonly cut: number
  readonly thin: number
}

/** What is drawn while the part moves: its faces as paper, which hide what lies behind, and its lines in ink. */
export class Turning {
  readonly #renderer: WebGLRenderer
  readonly #scene = new Scene()
  readonly #camera = new OrthographicCamera()
  readonly #solid: SolidPicture
  readonly #faces: Mesh<BufferGeometry, MeshBasicMaterial>
  readonly #within: Mesh<BufferGeometry, MeshBasicMaterial>
  readonly #counting: readonly Mesh<BufferGeometry, MeshBasicMaterial>[]
  readonly #cap: Mesh<PlaneGeometry, MeshBasicMaterial>
  readonly #edges: LineSegments2
  readonly #edgeOwners: readonly number[]
  readonly #outline = segments(INK)
  readonly #border = segments(INK)
  readonly #hatching = segments(INK)
  readonly #curved: CurvedMesh
  readonly #plane = new Plane()
  readonly #size: number
  #cut: HandCut | undefined
  #style = { angle: 45, spacing: 1 }
  #hatchedFor = ''

  /** Throws where the browser has no WebGL. */
  constructor(canvas: HTMLCanvasElement, solid: SolidPicture) {
    this.#solid = solid
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, stencil: true })
    this.#renderer.localClippingEnabled = true
    this.#size = Math.hypot(...solid.box.max.map((c, i) => c - solid.box.min[i]!))
    const geometry = new BufferGeometry()
    geometry.setAttribute('position', new BufferAttribute(solid.corners, 3))
    geometry.setAttribute('color', new BufferAttribute(new Float32Array(solid.corners.length).fill(1), 3))
    this.#faces = new Mesh(geometry, behindLines({ vertexColors: true, side: FrontSide }))
    this.#within = new Mesh(geometry, behindLines({ side: BackSide }))
    this.#counting = [new Mesh(geometry, counting(BackSide)), new Mesh(geometry, counting(FrontSide))]
    const cap = behindLines({ side: FrontSide })
    Object.assign(cap, {
      stencilWrite: true,
      stencilRef: 0,
      stencilFunc: NotEqualStencilFunc,
      stencilFail: ReplaceStencilOp,
      stencilZFail: ReplaceStencilOp,
      stencilZPass: ReplaceStencilOp,
    })
    this.#cap = new Mesh(new PlaneGeometry(3 * this.#size, 3 * this.#size), cap)
    this.#cap.onAfterRender = (renderer) => renderer.clearStencil()
    const sharp = solid.edges.filter((e) => !e.smooth)
    this.#edges = segments(0xffffff)
    this.#edges.material.vertexColors = true
    this.#edges.geometry.setPositions(sharp.flatMap((e) => pieces(e.points)))
    this.#edgeOwners = sharp.flatMap((e) => Array.from({ length: e.points.length / 3 - 1 }, () => e.id))
    this.#curved = curvedMesh(solid.corners, solid.faces)
    this.#counting.forEach((mesh, i) => {
      mesh.renderOrder = 1 + i
    })
    this.#cap.renderOrder = 3
    for (const lines of [this.#edges, this.#outline, this.#border, this.#hatching]) lines.renderOrder = 4
    this.#scene.add(this.#faces, this.#within, ...this.#counting, this.#cap)
    this.#scene.add(this.#edges, this.#outline, this.#border, this.#hatching)
    this.light(undefined)
    this.cutAt(undefined, undefined)
  }

  /** Draws the part on the board, in `width` × `height` px; without `lines` its faces alone. */
  draw(board: Board, width: number, height: number, pens: Pens, lines: boolean): void {
    if (width === 0 || height === 0) return
    const { frame, scale, middle, at } = board
    const size = this.#renderer.getSize(new Vector2())
    if (this.#renderer.getPixelRatio() !== devicePixelRatio) this.#renderer.setPixelRatio(devicePixelRatio)
    if (size.x !== width || size.y !== height) this.#renderer.setSize(width, height)
    const [left, top] = [middle[0] - at[0] / scale, middle[1] + at[1] / scale]
    Object.assign(this.#camera, {
      left,
      right: left + width / scale,
      top,
      bottom: top - height / scale,
      near: -4 * this.#size - this.#reach(),
      far: 4 * this.#size + this.#reach(),
    })
    // The camera stands at the part's origin, so that its right and up are the view's.
    const turn = new Matrix4().makeBasis(
      new Vector3(...frame.right),
      new Vector3(...frame.up),
      new Vector3(...frame.toViewer),
    )
    this.#camera.quaternion.setFromRotationMatrix(turn)
    this.#camera.updateProjectionMatrix()
    for (const one of [this.#edges, this.#outline, this.#border, this.#hatching]) one.visible = lines
    if (lines) {
      setPieces(this.#outline, meshOutline(this.#curved, frame.toViewer))
      this.#edges.material.linewidth = this.#outline.material.linewidth = pens.outline
      this.#border.material.linewidth = pens.cut
      this.#hatching.material.linewidth = pens.thin
      this.#border.visible &&= this.#cut !== undefined
      this.#hatching.visible &&= this.#cut !== undefined
    }
    this.#renderer.render(this.#scene, this.#camera)
  }

  /** Takes off what lies before the plane; undefined: whole. `style`: section lines in degrees and mm of the part. */
  cutAt(cut: HandCut | undefined, style: { readonly angle: number; readonly spacing: number } | undefined): void {
    this.#cut = cut
    if (style) this.#style = style
    const planes = cut ? [this.#plane] : []
    for (const part of [this.#faces, this.#within, ...this.#counting, this.#edges, this.#outline])
      (part.material as Material).clippingPlanes = planes
    this.#cap.visible = cut !== undefined
    for (const mesh of this.#counting) mesh.visible = cut !== undefined
    if (!cut) return
    const frame = FRAMES[cut.side]
    const normal = frame.toViewer
    const level = cut.at * (normal[0] + normal[1] + normal[2])
    this.#plane.normal.set(...normal).negate()
    this.#plane.constant = level
    this.#cap.position.set(...normal).multiplyScalar(level)
    const turn = new Matrix4().makeBasis(new Vector3(...frame.right), new Vector3(...frame.up), new Vector3(...normal))
    this.#cap.quaternion.setFromRotationMatrix(turn)
    const { angle, spacing } = this.#style
    const key = `${cut.side} ${cut.at} ${angle} ${spacing}`
    if (key === this.#hatchedFor) return
    this.#hatchedFor = key
    const border = meshCut(this.#solid.corners, normal, level)
    setPieces(this.#border, border)
    setPieces(this.#hatching, sectionLines(border, frame, { angle, spacing, offset: FIRST_LINE * spacing }))
  }

  light(light: TurningLight | undefined): void {
    const colors = this.#faces.geometry.getAttribute('color') as BufferAttribute
    this.#solid.faces.forEach((face, i) => {
      const { r, g, b } = light?.faces.has(face) ? WASH : BARE
      for (let k = 0; k < 3; k++) colors.setXYZ(3 * i + k, r, g, b)
    })
    colors.needsUpdate = true
    const shades = this.#edgeOwners.flatMap((id) => {
      const { r, g, b } = light?.edges.has(id) ? LIT : BLACK
      return [r, g, b, r, g, b]
    })
    this.#edges.geometry.setColors(shades)
  }

  /** The face of the solid at a point of the canvas in px. */
  faceAt(x: number, y: number, width: number, height: number): number | undefined {
    const ray = new Raycaster()
    ray.setFromCamera(new Vector2((x / width) * 2 - 1, 1 - (y / height) * 2), this.#camera)
    const hit = ray.intersectObject(this.#faces).find((h) => !this.#cut || this.#plane.distanceToPoint(h.point) >= 0)
    return hit?.faceIndex === undefined || hit.faceIndex === null ? undefined : this.#solid.faces[hit.faceIndex]
  }

  close(): void {
    this.#faces.geometry.dispose()
    this.#cap.geometry.dispose()
    for (const mesh of [this.#faces, this.#within, ...this.#counting, this.#cap]) mesh.material.dispose()
    for (const lines of [this.#edges, this.#outline, this.#border, this.#hatching]) {
      lines.geometry.dispose()
      lines.material.dispose()
    }
    // The canvas keeps its context: the next solid is drawn on the same one.
    this.#renderer.dispose()
  }

  /** mm that the part may lie off its origin. */
  #reach(): number {
    return Math.hypot(...this.#solid.box.min) + Math.hypot(...this.#solid.box.max)
  }
}

const behindLines = (more: object): MeshBasicMaterial =>
  new MeshBasicMaterial({ color: PAPER, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 4, ...more })

/** Counts the walls before the plane in each pixel: where more back faces than front faces lie, it is in the material. */
function counting(side: typeof FrontSide | typeof BackSide): MeshBasicMaterial {
  const op = side === BackSide ? IncrementWrapStencilOp : DecrementWrapStencilOp
  return new MeshBasicMaterial({
    side,
    depthTest: false,
    depthWrite: false,
    colorWrite: false,
    stencilWrite: true,
    stencilFunc: AlwaysStencilFunc,
    stencilFail: op,
    stencilZFail: op,
    stencilZPass: op,
  })
}

function segments(color: number): LineSegments2 {
  const made = new LineSegments2(new LineSegmentsGeometry(), new LineMaterial({ color, clipping: true }))
  made.frustumCulled = false
  return made
}

function setPieces(lines: LineSegments2, numbers: number[] | Float32Array): void {
  // A geometry without pieces cannot be drawn, and its buffers are of one length.
  lines.geometry.dispose()
  lines.geometry = new LineSegmentsGeometry()
  lines.geometry.setPositions(numbers.length > 0 ? numbers : [0, 0, 0, 0, 0, 0])
}

function pieces(points: Float32Array): number[] {
  const out: number[] = []
  for (let i = 0; i + 5 < points.length; i += 3) out.push(...points.subarray(i, i + 6))
  return out
}
