import {
  BufferAttribute,
  BufferGeometry,
  Group,
  Mesh,
  MeshBasicMaterial,
  OrthographicCamera,
  Plane,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three'
import { Line2 } from 'three/examples/jsm/lines/Line2.js'
import { LineGeometry } from 'three/examples/jsm/lines/LineGeometry.js'
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js'
import type { SolidPicture } from '../engine/messages.ts'

const PAPER = 0xfdfcf8
const INK = 0x1d1b18
const RED = 0xb3261e
const WASH = 0xf2d9d2

/** Widths of the pen in the width of the card: as heavy on a large screen as on a small one. */
const PEN = 330

/** Direction of sight of the standard isometric pictorial: from the right, the front and above. */
const HOME = new Vector3(1, -1, 1).normalize()

export interface TurningLight {
  readonly faces: ReadonlySet<number>
  readonly edges: ReadonlySet<number>
}

/** Turned by these radians from the standard pictorial, and brought nearer. */
export interface Pose {
  readonly yaw: number
  readonly tilt: number
  readonly zoom: number
}

/** The pictorial in the hand: ink edges and paper faces, turned by dragging, cut by a plane, picked by a touch. */
export class Turning {
  readonly #canvas: HTMLCanvasElement
  readonly #renderer: WebGLRenderer
  readonly #scene = new Scene()
  readonly #camera = new OrthographicCamera()
  readonly #parts = new Group()
  readonly #faces: Mesh
  readonly #within: Mesh
  readonly #lines: { readonly id: number; readonly line: Line2 }[] = []
  readonly #triangleFaces: Int32Array
  readonly #centre: Vector3
  readonly #size: number
  readonly #cut = new Plane(new Vector3(-1, 0, 0), 0)
  readonly #box: SolidPicture['box']
  #yaw = 0
  #tilt = 0
  #zoom = 1

  /** Throws where the browser has no WebGL. */
  constructor(canvas: HTMLCanvasElement, solid: SolidPicture) {
    this.#canvas = canvas
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true })
    this.#renderer.localClippingEnabled = true
    const { min, max } = solid.box
    this.#box = solid.box
    this.#centre = new Vector3((min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2)
    this.#size = Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2])
    this.#triangleFaces = solid.faces
    const geometry = new BufferGeometry()
    geometry.setAttribute('position', new BufferAttribute(solid.corners, 3))
    geometry.setAttribute('color', new BufferAttribute(new Float32Array(solid.corners.length).fill(1), 3))
    const paper = { vertexColors: true, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 }
    this.#faces = new Mesh(geometry, new MeshBasicMaterial({ ...paper, color: PAPER, side: 0 }))
    // Where the plane cuts the solid open, its inside shows as a darker wash.
    this.#within = new Mesh(
      geometry,
      new MeshBasicMaterial({
        color: 0xd9d2c2,
        side: 1,
        polygonOffset: true,
        polygonOffsetFactor: 1,
        polygonOffsetUnits: 1,
      }),
    )
    this.#parts.add(this.#faces, this.#within)
    for (const { id, points, smooth } of solid.edges) {
      if (smooth) continue
      const line = new LineGeometry().setPositions(points)
      const made = new Line2(line, new LineMaterial({ color: INK, clipping: true }))
      this.#lines.push({ id, line: made })
      this.#parts.add(made)
    }
    this.#parts.position.copy(this.#centre).negate()
    this.#scene.add(this.#parts)
    this.cutAt(undefined)
  }

  /** Fits the canvas to its box and draws. */
  draw(): void {
    const { clientWidth: w, clientHeight: h } = this.#canvas
    if (w === 0 || h === 0) return
    this.#renderer.setPixelRatio(devicePixelRatio)
    this.#renderer.setSize(w, h, false)
    for (const { line } of this.#lines) line.material.linewidth = w / PEN
    const half = (this.#size * 0.58) / this.#zoom
    const [across, up] = w > h ? [half * (w / h), half] : [half, half * (h / w)]
    Object.assign(this.#camera, {
      left: -across,
      right: across,
      top: up,
      bottom: -up,
      near: -4 * this.#size,
      far: 4 * this.#size,
    })
    const home = Math.atan2(HOME.y, HOME.x) + this.#yaw
    const rise = Math.max(-Math.PI / 2 + 0.01, Math.min(Math.PI / 2 - 0.01, Math.asin(HOME.z) + this.#tilt))
    this.#camera.up.set(0, 0, 1)
    this.#camera.position
      .set(Math.cos(home) * Math.cos(rise), Math.sin(home) * Math.cos(rise), Math.sin(rise))
      .multiplyScalar(this.#size)
    this.#camera.lookAt(0, 0, 0)
    this.#camera.updateProjectionMatrix()
    this.#renderer.render(this.#scene, this.#camera)
  }

  /** Turns by radians about the upright axis and toward the viewer. */
  turn(yaw: number, tilt: number): void {
    this.#yaw += yaw
    this.#tilt = Math.max(-2, Math.min(1, this.#tilt + tilt))
    this.draw()
  }

  zoom(factor: number): void {
    this.#zoom = Math.max(0.4, Math.min(12, this.#zoom * factor))
    this.draw()
  }

  /** How it is held, to hold another solid the same way. */
  get pose(): Pose {
    return { yaw: this.#yaw, tilt: this.#tilt, zoom: this.#zoom }
  }

  set pose({ yaw, tilt, zoom }: Pose) {
    this.#yaw = yaw
    this.#tilt = tilt
    this.#zoom = zoom
    this.draw()
  }

  /** Back to the standard pictorial. */
  home(): void {
    this.#yaw = this.#tilt = 0
    this.#zoom = 1
    this.draw()
  }

  /** Takes off what lies beyond a share (0 to 1) of the part's extent along an axis; undefined: whole. */
  cutAt(cut: { readonly axis: 0 | 1 | 2; readonly share: number } | undefined): void {
    const planes = cut ? [this.#cut] : []
    if (cut) {
      const { min, max } = this.#box
      const at = min[cut.axis] + cut.share * (max[cut.axis] - min[cut.axis]) - this.#centre.getComponent(cut.axis)
      // The front half is taken away, the others on the far side of the viewer's.
      const way = cut.axis === 1 ? 1 : -1
      this.#cut.normal.set(0, 0, 0).setComponent(cut.axis, way)
      this.#cut.constant = -way * at
    }
    for (const mesh of [this.#faces, this.#within]) (mesh.material as MeshBasicMaterial).clippingPlanes = planes
    for (const { line } of this.#lines) line.material.clippingPlanes = planes
    this.draw()
  }

  light(light: TurningLight | undefined): void {
    const colors = this.#faces.geometry.getAttribute('color') as BufferAttribute
    const wash = [((WASH >> 16) & 255) / 255, ((WASH >> 8) & 255) / 255, (WASH & 255) / 255] as const
    this.#triangleFaces.forEach((face, i) => {
      const lit = light?.faces.has(face)
      for (let k = 0; k < 3; k++) {
        if (lit) colors.setXYZ(3 * i + k, ...wash)
        else colors.setXYZ(3 * i + k, 1, 1, 1)
      }
    })
    colors.needsUpdate = true
    for (const { id, line } of this.#lines) {
      line.material.color.set(light?.edges.has(id) ? RED : INK)
    }
    this.draw()
  }

  /** The face of the solid under a point of the canvas in px. */
  faceAt(x: number, y: number): number | undefined {
    const ray = new Raycaster()
    const { clientWidth: w, clientHeight: h } = this.#canvas
    ray.setFromCamera(new Vector2((x / w) * 2 - 1, 1 - (y / h) * 2), this.#camera)
    const planes = (this.#faces.material as MeshBasicMaterial).clippingPlanes ?? []
    const hit = ray.intersectObject(this.#faces).find((h2) => planes.every((p) => p.distanceToPoint(h2.point) >= 0))
    return hit?.faceIndex === undefined || hit.faceIndex === null ? undefined : this.#triangleFaces[hit.faceIndex]
  }

  close(): void {
    this.#faces.geometry.dispose()
    for (const { line } of this.#lines) {
      line.geometry.dispose()
      line.material.dispose()
    }
    // The canvas keeps its context: the next solid is drawn on the same one.
    this.#renderer.dispose()
  }
}
