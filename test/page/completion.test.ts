import { CompletionContext } from '@codemirror/autocomplete'
import { EditorState } from '@codemirror/state'
import { describe, expect, it } from 'vitest'
import { completeBrief } from '../../src/app/page/slip/complete.ts'
import { nextWords } from '../../src/app/page/slip/what-next.ts'
import { readBrief } from '../../src/brief/read.ts'

const HEAD = 'part      Trial\nunits     mm\npractice  ISO, first angle\n'
const PLATE = `${HEAD}plate     80 × 60 × 10\nholes A   top: 2X ⌀9 THRU\n          40 apart, centred; centred up\ndatum     B  bottom\n`
const SHAFT = `${HEAD}turned    axis left-right\n          left    ⌀20, 28 long\n          collar  ⌀28, 6 long\n`

/** Labels offered at the end of the text, best first. */
function offered(head: string, statement: string): string[] {
  const doc = head + statement
  const found = completeBrief(
    () => readBrief(head),
    () => [
      {
        rule: 'hole-near-edge',
        weight: 'look again',
        text: 'near',
        accept: 'accept    hole-near-edge at hole A with 2 mm because …',
      },
    ],
  )(new CompletionContext(EditorState.create({ doc }), doc.length, true))
  return [...(found?.options ?? [])].sort((a, b) => (b.boost ?? 0) - (a.boost ?? 0)).map((o) => o.label)
}

describe('what may stand at the cursor', () => {
  it.each([
    [PLATE, 'slot      top: 10 × 40 ', 'overall', 'face'],
    [PLATE, 'place     front view 5 ', 'across', 'row'],
    [PLATE, 'place     ', '80', 'thick'],
    [PLATE, 'sizes     baseline of ', 'hole A', 'chain'],
    [PLATE, 'datum     C  ', 'left', 'MMC'],
    [PLATE, 'frame     ', 'hole A', 'position'],
    [PLATE, 'frame     hole A: ', 'position', 'left'],
    [PLATE, 'frame     hole A: position 0.2 ', 'B', 'left'],
    [PLATE, 'texture   ', 'top', 'overall'],
    [PLATE, 'step      top left: 30 from ', 'left', 'THRU'],
    [PLATE, 'chamfer   ', 'top left edge', 'hole'],
    [PLATE, 'views     front, ', 'pictorial', 'thick'],
    [PLATE, 'accept    ', 'hole-near-edge at hole A with 2 mm because ', 'front'],
    [SHAFT, 'groove    ', 'collar', 'THRU'],
    [SHAFT, 'datum     A  ', 'collar right face', 'THRU'],
    [SHAFT, 'chamfer   ', 'collar left edge', 'THRU'],
    [SHAFT, 'keyseat   left, front: 6 wide × 3 deep × 12 ', 'long', 'collar left edge'],
  ])('%#: after %j', (head, statement, wanted, unwanted) => {
    const words = offered(head, statement)
    expect(words).toContain(wanted)
    expect(words).not.toContain(unwanted)
  })

  it('puts first what is missing', () => {
    expect(offered(PLATE, 'slot      top: 10 × 40 ').slice(0, 6)).toContain('overall')
    expect(offered(PLATE, 'place     front view 5 ').slice(0, 2).sort()).toEqual(['across', 'up'])
  })

  it('puts the face that is worked most before the others', () => {
    const angle = `${HEAD}angle     formed, 5 STK, inside R 5\n          upright 80 high, at rear; base 50 toward front; length 80\n`
    expect(offered(PLATE, 'hole      ')[0]).toBe('top')
    expect(offered(angle, 'hole      ')[0]).toBe('upright')
  })

  it('hints on an empty line at what is still to be said', () => {
    expect(nextWords(HEAD)).toMatch(/^plate/)
    expect(nextWords(SHAFT)).toContain('chamfer')
    expect(nextWords(PLATE)).toContain('note')
    expect(nextWords(`${HEAD}note Plates and blocks\n`)).toMatch(/^plate/)
  })

  it('offers nothing that the reader would refuse', () => {
    for (const statement of ['views     ', 'place     front view 5 ', 'groove    collar: 2 ', 'show      ']) {
      for (const word of offered(SHAFT, statement)) {
        const text = `${SHAFT}${statement}${word}\n`
        const at = SHAFT.length + statement.length
        const refused = readBrief(text).marks.filter(
          (m) => m.span && m.span.from >= at && /unknown|out-of-place/.test(m.rule),
        )
        expect(refused, `${statement}${word}`).toEqual([])
      }
    }
  })
})
