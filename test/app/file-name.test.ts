import { describe, expect, it } from 'vitest'
import { fileNameOf, isDeviceName } from '../../src/app/file-name.ts'
import { isBriefName } from '../../src/app/server/desk.ts'

describe('a file name', () => {
  // Microsoft, "Naming Files, Paths, and Namespaces": the reserved names, with any ending (from memory).
  it.each(['CON', 'prn', 'Aux', 'NUL', 'COM1', 'com9.txt', 'LPT3', 'lpt¹', 'con.tar.gz', 'CONIN$'])(
    'is never that of a device: %s',
    (name) => {
      expect(isDeviceName(name)).toBe(true)
      expect(isDeviceName(fileNameOf(name))).toBe(false)
      expect(isDeviceName(`${fileNameOf(name)}.pdf`)).toBe(false)
      expect(isBriefName(`${name}.brief`)).toBe(false)
    },
  )

  it.each(['Console', 'COM10', 'auxiliary', 'nuls.brief', 'A-CON'])('may begin like one: %s', (name) => {
    expect(isDeviceName(name)).toBe(false)
  })

  it.each([
    ['../..\\CON:*?', 'drawing-CON'],
    ['VB-1042', 'VB-1042'],
    ['Plate 3/8 × 2', 'Plate-3-8-2'],
    ['.hidden.', 'hidden'],
    ['***', 'drawing'],
    ['ガスケット', 'ガスケット'],
  ])('keeps letters, digits, dot, dash and underscore: %s', (words, name) => {
    expect(fileNameOf(words)).toBe(name)
  })
})
