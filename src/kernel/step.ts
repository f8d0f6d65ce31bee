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
    const writer = writerOf(oc)
    oc.Interface_Static.SetCVal('write.step.unit', about.unit === 'inch' ? 'INCH' : 'MM')
    oc.Interface_Static.SetCVal('write.step.product.name', PRODUCT)
    const session = own(writer.WS())
    try {
      const status = writer.Transfer(shape, 'STEPControl_AsIs', true, own(new oc.Message_ProgressRange()))
      if (status !== 'IFSelect_RetDone') throw new KernelError('the solid could not be written as STEP')
      const path = '/out.step'
      if (writer.Write(path) !== 'IFSelect_RetDone') throw new KernelError('the STEP file could not be written')
      const text: string = oc.FS.readFile(path, { encoding: 'utf8' })
      oc.FS.unlink(path)
      return withOwnHeader(text, about.name)
    } finally {
      // the writer's session would keep the whole model
      own(writer.Model(true))
      session.ClearContext()
      session.ClearData(EVERYTHING)
    }
  })
}

type Writer = InstanceType<Occt['STEPControl_Writer']>
const writers = new WeakMap<Occt, Writer>()

/** One writer serves a kernel for life: each new one would keep its work session. */
function writerOf(oc: Occt): Writer {
  let writer = writers.get(oc)
  if (!writer) writers.set(oc, (writer = new oc.STEPControl_Writer()))
  return writer
}

/** The header's record of name, time stamp, author, firm, preprocessor, system and authorisation. */
export const FILE_NAME_RECORD = /FILE_NAME\((?:'(?:[^']|'')*'|[^'])*?\);/

/** The header's record of what the file holds. */
export const FILE_DESCRIPTION_RECORD = /FILE_DESCRIPTION\((?:'(?:[^']|'')*'|[^'])*?\);/

/** The work session's mode for dropping model, transfers and results alike. */
const EVERYTHING = 7

const PRODUCT = 'PRODUCT-NAME'

/** The kernel numbers products by a counter of its own and stamps the clock; both would change from run to run. */
function withOwnHeader(text: string, name: string): string {
  const quoted = stepString(name)
  return text
    .replace(FILE_DESCRIPTION_RECORD, `FILE_DESCRIPTION((${quoted}),'2;1');`)
    .replace(FILE_NAME_RECORD, `FILE_NAME(${quoted},'1970-01-01T00:00:00',(''),(''),'','','');`)
    .replace(new RegExp(`'${PRODUCT} \\d+'`, 'g'), () => quoted)
}

/** ISO 10303-21 string: apostrophes doubled, characters outside ASCII as \\X2\\ hexadecimal. */
export function stepString(text: string): string {
  const body = text
    .replace(/[\\']/g, (c) => c + c)
    .replace(/\p{Cc}/gu, ' ')
    .replace(/[^\x20-\x7e]+/g, (run) => {
      const units = Array.from({ length: run.length }, (_, i) => run.charCodeAt(i).toString(16).padStart(4, '0'))
      return `\\X2\\${units.join('').toUpperCase()}\\X0\\`
    })
  return `'${body}'`
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
