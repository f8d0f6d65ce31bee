/**
 * Names of devices that some machines let no file have, whatever its ending and however its letters are written (from
 * memory); with the superscript digits that those machines take for 1, 2 and 3.
 */
const DEVICE = /^(?:con|prn|aux|nul|conin\$|conout\$|com[\d¹²³]|lpt[\d¹²³])\s*(?:\.|$)/i

/** True for a file name that is a device's on some machines, such as `CON` or `com1.pdf`. */
export const isDeviceName = (name: string): boolean => DEVICE.test(name)

/** The name, or one beside it where it is a device's. */
export const notADevice = (name: string): string => (isDeviceName(name) ? `drawing-${name}` : name)

/**
 * A file name without ending from a drawing number, a title or a product's name: letters, digits, dot, dash and
 * underscore stay. At most 100 characters; `drawing` where nothing stays.
 */
export const fileNameOf = (words: string): string =>
  notADevice(
    words
      .replace(/[^\p{L}\p{N}._-]+/gu, '-')
      .replace(/^[.-]+|[.-]+$/g, '')
      .slice(0, 100) || 'drawing',
  )
