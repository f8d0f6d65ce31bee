import type { TopoDS_Shape } from 'replicad-opencascadejs'
import { unwrapped } from './boolean.ts'
import { KernelError, type Occt } from './occt.ts'
import { scoped } from './scope.ts'

/** Solid as ISO 10303-21 text. The header's time stamp is fixed, so the same solid gives the same bytes. */
export function writeStepText(
  oc: Occt,
  shape: TopoDS_Shape,
  about: { readonly name: string; readonly unit: 'inch' | 'mm' },
): string {
  return scoped((own) => {
    // the kernel's parameters exist only once a writer has been made
    own(new oc.STEPControl_Writer())
    oc.Interface_Static.SetCVal('write.step.unit', about.unit === 'inch' ? 'INCH' : 'MM')
    oc.Interface_Static.SetCVal('write.step.product.name', ascii(about.name))
    const writer = own(new oc.STEPControl_Writer())
    const status = writer.Transfer(shape, 'STEPControl_AsIs', true, own(new oc.Message_ProgressRange()))
    if (status !== 'IFSelect_RetDone') throw new KernelError('the solid could not be written as STEP')
    const path = '/out.step'
    if (writer.Write(path) !== 'IFSelect_RetDone') throw new KernelError('the STEP file could not be written')
    const text: string = oc.FS.readFile(path, { encoding: 'utf8' })
    oc.FS.unlink(path)
    return text
  })
}

/** First shape of an ISO 10303-21 text, in millimetres. */
export function readStepText(oc: Occt, text: string): TopoDS_Shape {
  return scoped((own) => {
    const path = '/in.step'
    oc.FS.writeFile(path, text)
    const reader = own(new oc.STEPControl_Reader())
    try {
      if (reader.ReadFile(path) !== 'IFSelect_RetDone') throw new KernelError('the text is not a readable STEP file')
      reader.TransferRoots(own(new oc.Message_ProgressRange()))
      if (reader.NbShapes() === 0) throw new KernelError('the STEP file holds no shape')
      return unwrapped(oc, own(reader.OneShape()))
    } finally {
      oc.FS.unlink(path)
    }
  })
}

const ascii = (name: string) => name.replace(/[^\x20-\x7e]/g, '?').replace(/'/g, '')
