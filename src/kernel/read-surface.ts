import type { Geom_BSplineSurface, TopoDS_Face } from 'replicad-opencascadejs'
import { cross, dot, negate, sub } from '../geometry/vec3.ts'
import type { Axes3, Surface3 } from './body.ts'
import { KernelError, type Occt, takeAxes, takeVec } from './occt.ts'
import { scoped } from './scope.ts'

/** A face's surface with right-handed axes, and whether the outward normal is opposite to the surface's own. */
export interface ReadSurface {
  readonly surface: Surface3
  readonly reversed: boolean
}

/** Reads the exact surface of a face. Cones come with a half angle > 0. */
export function readSurface(oc: Occt, face: TopoDS_Face): ReadSurface {
  return scoped((own) => {
    const adaptor = own(new oc.BRepAdaptor_Surface(face, false))
    const turned = face.Orientation() === 'TopAbs_REVERSED'
    switch (adaptor.GetType()) {
      case 'GeomAbs_Plane': {
        const [axes, flipped] = rightHanded(takeAxes(own(adaptor.Plane()).Position()))
        return { surface: { kind: 'plane', axes }, reversed: turned !== flipped }
      }
      case 'GeomAbs_Cylinder': {
        const cylinder = own(adaptor.Cylinder())
        const [axes, flipped] = rightHanded(takeAxes(cylinder.Position()))
        return { surface: { kind: 'cylinder', axes, r: cylinder.Radius() }, reversed: turned !== flipped }
      }
      case 'GeomAbs_Sphere': {
        const sphere = own(adaptor.Sphere())
        const [axes, flipped] = rightHanded(takeAxes(sphere.Position()))
        return { surface: { kind: 'sphere', axes, r: sphere.Radius() }, reversed: turned !== flipped }
      }
      case 'GeomAbs_Cone':
        return readCone(oc, face, turned)
      case 'GeomAbs_Torus': {
        const minor = own(adaptor.GeomSurfaceTransformed())
        const small = own(new oc.GeomAdaptor_TransformedCurve(own(minor.UIso(0)), own(new oc.gp_Trsf())))
        const large = own(new oc.GeomAdaptor_TransformedCurve(own(minor.VIso(Math.PI / 2)), own(new oc.gp_Trsf())))
        const smallCircle = own(small.Circle())
        const largeCircle = own(large.Circle())
        const r = smallCircle.Radius()
        const top = takeAxes(largeCircle.Position())
        // the circle at v = 90° lies one minor radius above the centre along the torus' own axis
        const centre = takeVec(smallCircle.Location())
        const up = dot(sub(top.origin, centre), top.z) >= 0 ? 1 : -1
        const origin: Axes3['origin'] = [
          top.origin[0] - up * r * top.z[0],
          top.origin[1] - up * r * top.z[1],
          top.origin[2] - up * r * top.z[2],
        ]
        const flipped = up < 0
        return {
          surface: { kind: 'torus', axes: { ...top, origin }, major: largeCircle.Radius(), minor: r },
          reversed: turned !== flipped,
        }
      }
      default:
        return { surface: readSpline(oc, face), reversed: turned }
    }
  })
}

function rightHanded(a: Axes3): [Axes3, boolean] {
  const direct = dot(cross(a.x, a.y), a.z) > 0
  return direct ? [a, false] : [{ ...a, y: negate(a.y) }, true]
}

function readCone(oc: Occt, face: TopoDS_Face, turned: boolean): ReadSurface {
  return scoped((own) => {
    const adaptor = own(new oc.BRepAdaptor_Surface(face, true))
    const geometry = own(adaptor.GeomSurfaceTransformed())
    if (!('SemiAngle' in geometry)) throw new KernelError('the cone does not give its half angle')
    const cone = geometry as InstanceType<Occt['Geom_ConicalSurface']>
    const [axes, flipped] = rightHanded(takeAxes(cone.Position()))
    const alpha = cone.SemiAngle()
    const v = (adaptor.FirstVParameter() + adaptor.LastVParameter()) / 2
    const height = v * Math.cos(alpha)
    const radius = cone.RefRadius() + v * Math.sin(alpha)
    // beyond the apex the kernel's radius is negative and its own normal points at the axis
    const beyond = radius < 0
    const growing = beyond ? -alpha : alpha
    const origin: Axes3['origin'] = [
      axes.origin[0] + height * axes.z[0],
      axes.origin[1] + height * axes.z[1],
      axes.origin[2] + height * axes.z[2],
    ]
    const reversed = (turned !== flipped) !== beyond
    const placed: Axes3 =
      growing >= 0 ? { ...axes, origin } : { origin, x: axes.x, y: negate(axes.y), z: negate(axes.z) }
    return { surface: { kind: 'cone', axes: placed, r: Math.abs(radius), halfAngle: Math.abs(alpha) }, reversed }
  })
}

function readSpline(oc: Occt, face: TopoDS_Face): Surface3 {
  return scoped((own) => {
    const adaptor = own(new oc.BRepAdaptor_Surface(face, true))
    const whole = own(adaptor.GeomSurfaceTransformed())
    const s: Geom_BSplineSurface = own(oc.GeomConvert.SurfaceToBSplineSurface(whole))
    if (s.IsUPeriodic()) s.SetUNotPeriodic()
    if (s.IsVPeriodic()) s.SetVNotPeriodic()
    const rational = s.IsURational() || s.IsVRational()
    const poles = grid(s.NbUPoles(), s.NbVPoles(), (i, j) => takeVec(s.Pole(i, j)))
    return {
      kind: 'spline',
      degreeU: s.UDegree(),
      degreeV: s.VDegree(),
      knotsU: sequence(
        s.NbUKnots(),
        (i) => s.UKnot(i),
        (i) => s.UMultiplicity(i),
      ),
      knotsV: sequence(
        s.NbVKnots(),
        (i) => s.VKnot(i),
        (i) => s.VMultiplicity(i),
      ),
      poles,
      ...(rational ? { weights: grid(s.NbUPoles(), s.NbVPoles(), (i, j) => s.Weight(i, j)) } : {}),
    }
  })
}

function grid<T>(rows: number, columns: number, at: (i: number, j: number) => T): T[][] {
  return Array.from({ length: rows }, (_, i) => Array.from({ length: columns }, (_, j) => at(i + 1, j + 1)))
}

/** Flat knot sequence from knots and multiplicities, both counted from 1. */
export function sequence(count: number, knot: (i: number) => number, times: (i: number) => number): number[] {
  const all: number[] = []
  for (let i = 1; i <= count; i++) for (let m = times(i); m > 0; m--) all.push(knot(i))
  return all
}
