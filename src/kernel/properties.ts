import type { TopoDS_Shape } from 'replicad-opencascadejs'
import type { Vec3 } from '../geometry/vec.ts'
import { type Occt, takeVec } from './occt.ts'
import { scoped } from './scope.ts'

/** Volume in mm³, surface in mm², centre of gravity in mm. */
export interface SolidProperties {
  readonly volume: number
  readonly area: number
  readonly centroid: Vec3
}

/**
 * Plain Gauss integration is exact on faces bounded by lines and circles; `curved` borders (ellipses, splines) need
 * the adaptive one, to 1e-10 of the whole.
 */
export function solidProperties(oc: Occt, shape: TopoDS_Shape, curved: boolean): SolidProperties {
  return scoped((own) => {
    const volume = own(new oc.GProp_GProps())
    const area = own(new oc.GProp_GProps())
    if (curved) {
      oc.BRepGProp.VolumeProperties(shape, volume, 1e-10, false, false)
      oc.BRepGProp.SurfaceProperties(shape, area, 1e-10, false)
    } else {
      oc.BRepGProp.VolumeProperties(shape, volume, false, false, false)
      oc.BRepGProp.SurfaceProperties(shape, area, false, false)
    }
    return { volume: volume.Mass(), area: area.Mass(), centroid: takeVec(volume.CentreOfMass()) }
  })
}
