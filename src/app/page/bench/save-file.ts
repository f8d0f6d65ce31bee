import { isDeviceName } from '../../file-name.ts'

/** Why a brief cannot be saved under the name, and what to write instead; undefined where it can. */
export function nameRefusal(name: string): string | undefined {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be in a name
  const wrong = /[/\\:*?"<>|\u0000-\u001f]/.exec(name)?.[0]
  if (wrong)
    return `A file name has no ${wrong < ' ' ? 'control characters' : `“${wrong}”`}. Expected: letters, digits, dashes, such as bracket-2.`
  if (name.startsWith('.')) return 'A file name that begins with a dot is hidden. Expected: a letter or a digit first.'
  if (isDeviceName(name))
    return `${name.split('.')[0]} is the name of a device on some machines. Expected: another name.`
  if (name.length > 190) return 'The name is too long. Expected: at most 190 letters.'
  return undefined
}

/** Hands a file to the browser's downloads. */
export function download(name: string, bytes: BlobPart, type: string): void {
  const address = URL.createObjectURL(new Blob([bytes], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  document.body.append(link)
  link.click()
  link.remove()
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}

/** Pixels to a paper millimetre of a picture of the sheet: 300 to the inch. */
const PIXELS_PER_MM = 300 / 25.4

/** The sheet's SVG as PNG. Rejects where the browser cannot make a picture so large. */
export async function pngOf(svg: Uint8Array<ArrayBuffer>, width: number, height: number): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
  try {
    const image = new Image()
    image.src = address
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = Math.round(width * PIXELS_PER_MM)
    canvas.height = Math.round(height * PIXELS_PER_MM)
    const pen = canvas.getContext('2d')
    if (!pen) throw new Error('this browser draws no pictures')
    pen.fillStyle = '#fff'
    pen.fillRect(0, 0, canvas.width, canvas.height)
    pen.drawImage(image, 0, 0, canvas.width, canvas.height)
    return await new Promise((resolve, reject) =>
      canvas.toBlob(
        (blob) => (blob ? resolve(blob) : reject(new Error('the sheet is too large for a picture'))),
        'image/png',
      ),
    )
  } finally {
    URL.revokeObjectURL(address)
  }
}

/** Lays the sheet alone on a page of its own format, at its true size; returns what takes it away again. */
export function layForPrint(svg: SVGSVGElement, width: number, height: number): () => void {
  const copy = svg.cloneNode(true) as SVGSVGElement
  copy.setAttribute('viewBox', `0 0 ${width} ${height}`)
  copy.setAttribute('width', `${width}mm`)
  copy.setAttribute('height', `${height}mm`)
  for (const aside of copy.querySelectorAll('.pencil, .hit')) aside.remove()
  for (const lit of copy.querySelectorAll('.lit, .beside')) lit.classList.remove('lit', 'beside')
  const holder = document.createElement('div')
  holder.className = 'print-only'
  const style = document.createElement('style')
  style.textContent = `@page { size: ${width}mm ${height}mm; margin: 0 }`
  holder.append(style, copy)
  document.body.append(holder)
  return () => holder.remove()
}
