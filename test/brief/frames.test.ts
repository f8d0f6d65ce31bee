import { describe, expect, it } from 'vitest'
import { frameText } from '../../src/brief/frame/frame.ts'
import { printBrief } from '../../src/brief/print.ts'
import { readBrief } from '../../src/brief/read.ts'

const head =
  'units mm\npractice ISO\nplate 100 × 60 × 10\nholes A top: 4X ⌀9 THRU\n  2 across 80 apart, centred; 2 up 40 apart, centred\n'
const read = (lines: string) => readBrief(`${head}${lines}\n`)
/** The marks of the lines: the words that each points at, and what it says. */
function marks(lines: string) {
  const brief = read(lines)
  return brief.marks.map((m) => ({
    at: brief.text.slice(m.span!.from, m.span!.to),
    text: m.text,
    mend: m.mends?.[0]?.text,
  }))
}

describe('frame', () => {
  // ASME Y14.5-2018 section 3 names the compartments; the words are the trade's (from memory).
  it('reads symbols and words to the same compartments', () => {
    for (const text of [
      'position dia 0.2 MMC A B C',
      '⌖ ⌀0.2 Ⓜ A B C',
      '⌖|⌀0.2(M)|A|B|C',
      'position ⌀0.2 M A, B, C'.replace(' M ', ' MMC '),
    ]) {
      const brief = read(`frame holes A: ${text}`)
      expect(brief.marks).toEqual([])
      expect(frameText(brief.frames![0]!.frame)).toBe('⌖ ⌀0.2 Ⓜ A B C')
      expect(brief.frames![0]!.of.text).toBe('holes A')
    }
  })

  it('reads a composite frame over lines, with a comment between them', () => {
    const brief = read('frame holes A: position dia 0.5 MMC A B # to the edges\n      dia 0.2 MMC A')
    expect(brief.marks).toEqual([])
    expect(brief.frames![0]!.frame.stacking).toBe('composite')
    expect(printBrief(brief)).toContain('frame     holes A: ⌖ ⌀0.5 Ⓜ A B  # to the edges\n          ⌀0.2 Ⓜ A\n')
  })

  it('reads all around, and keeps it in print', () => {
    const brief = read('frame top: profile 0.1 A B, all around')
    expect(brief.frames![0]).toMatchObject({ allAround: true })
    expect(printBrief(brief)).toContain('frame     top: ⌓ 0.1 A B, all around')
  })

  it('points at the word that is wrong and says what to write', () => {
    expect(marks('frame top: flatnes 0.05')).toEqual([
      { at: 'flatnes', text: '"flatnes" is no geometric characteristic', mend: 'flatness' },
    ])
    // ISO 1101, ASME Y14.5: the symbol of flatness is a parallelogram
    expect(marks('frame top: flat 0.05')).toMatchObject([{ at: 'flat', mend: 'flatness' }])
    expect(marks('frame left: square 0.05 A')).toMatchObject([{ at: 'square', mend: 'perpendicularity' }])
    expect(marks('frame bottm: flatness 0.05')).toMatchObject([{ at: 'bottm', mend: 'bottom' }])
    expect(marks('frame top: flatness -0.05')).toMatchObject([{ at: '-0.05', mend: '0.05' }])
    expect(marks('frame holes A: position dia 0.2 MMC MMX')).toMatchObject([{ at: 'MMX', mend: 'MMC' }])
    expect(marks('frame flatness 0.05')).toMatchObject([{ at: 'frame', text: 'the frame does not say what it holds' }])
    expect(marks('frame top:')).toMatchObject([{ text: 'the frame ends too soon' }])
    expect(marks('frame top and bottom: flatness 0.05')).toMatchObject([
      { at: 'bottom', text: 'one frame holds one feature' },
    ])
  })
})

describe('datum', () => {
  it('takes a letter and a feature, with or without a colon, X and R as well', () => {
    const brief = read('datum A bottom\ndatum X: left\ndatum R holes A\ndatum AA front')
    expect(brief.marks).toEqual([])
    expect(brief.datums!.map((d) => [d.letter.text, d.of.text])).toEqual([
      ['A', 'bottom'],
      ['X', 'left'],
      ['R', 'holes A'],
      ['AA', 'front'],
    ])
  })

  it('points at what is no letter, and asks for what is missing', () => {
    expect(marks('datum 5 left')).toMatchObject([{ at: '5', text: '“5” is no datum letter' }])
    expect(marks('datum')).toMatchObject([{ at: 'datum' }])
    expect(marks('datum A')).toMatchObject([{ at: 'A' }])
    expect(marks('datum A botom')).toMatchObject([{ at: 'botom', mend: 'bottom' }])
  })
})

describe('texture', () => {
  it('is of one surface where it names one, and the title block’s otherwise', () => {
    const brief = read('texture Ra 3.2\ntexture top: Ra 0.8, machined, lay =, ground\ntexture left: 32 µin, unmachined')
    expect(brief.marks).toEqual([])
    expect(brief.header.texture?.text).toBe('Ra 3.2')
    expect(brief.textures).toMatchObject([
      {
        of: { text: 'top' },
        parameter: 'Ra',
        value: { value: 0.8 },
        unit: 'µm',
        removal: 'required',
        lay: '=',
        process: { text: 'ground' },
      },
      { of: { text: 'left' }, value: { value: 32 }, unit: 'µin', removal: 'prohibited' },
    ])
  })

  it('points at the phrase that is wrong', () => {
    expect(marks('texture top: Ra 0.8, gronud')).toMatchObject([{ at: 'gronud', mend: 'ground' }])
    expect(marks('texture botom: Ra 0.8')).toMatchObject([{ at: 'botom', mend: 'bottom' }])
    expect(marks('texture top: machined')).toMatchObject([{ text: 'the surface has no roughness' }])
  })

  it('keeps a decimal comma', () => {
    const brief = read('decimal comma\ntexture top: Rz 6,3')
    expect(brief.textures![0]).toMatchObject({ parameter: 'Rz', value: { text: '6,3', value: 6.3 } })
  })
})
