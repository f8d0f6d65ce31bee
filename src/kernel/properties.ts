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

export function solidProperties(oc: Occt, shape: TopoDS_Shape): SolidProperties {
  return scoped((own) => {
    const volume = own(new oc.GProp_GProps())
    oc.BRepGProp.VolumeProperties(shape, volume, false, false, false)
    const area = own(new oc.GProp_GProps())
    oc.BRepGProp.SurfaceProperties(shape, area, false, false)
    return { volume: volume.Mass(), area: area.Mass(), centroid: takeVec(volume.CentreOfMass()) }
  })
}
