import type { Mend } from './mark.ts'
import { featureWords } from './vocabulary.ts'

const KINDS = [...featureWords.keys()].join('|')
const FACE_FIRST = new RegExp(`^(left|right|front|rear|top|bottom)(?: face)?[ \\t]+(${KINDS})\\b[ \\t]*:?[ \\t]*`, 'i')
const COUNT_FIRST = new RegExp(`^(\\d+)[ \\t]*(?:x|×|off)?[ \\t]+(${KINDS})\\b[ \\t]+([^:\\n]*?)[ \\t]*:[ \\t]*`, 'i')

interface Turned {
  readonly text: string
  readonly expected: string
  readonly mend: Mend
}

/** A feature told in another order of words, `top hole: ⌀10`, `4 holes top: ⌀6`: what to write. `at`: where its line begins. */
export function inOtherOrder(text: string, at: number): Turned | undefined {
  const line = /^.*/.exec(text.slice(at))![0]
  const turned = (found: string, kind: string, face: string, rest: string): Turned => {
    const own = `${kind.toLowerCase()} ${face.toLowerCase()}:`
    return {
      text: 'the kind of feature is said first, then its face and a colon, and how many with the size',
      expected: `${own} ${rest || '⌀10 '}…`,
      mend: {
        label: `write ${own}${rest ? ` ${rest.trim()}` : ''}`,
        span: { from: at, to: at + found.length },
        text: `${kind.toLowerCase().padEnd(9)} ${face.toLowerCase()}: ${rest}`,
      },
    }
  }
  const face = FACE_FIRST.exec(line)
  if (face) return turned(face[0], face[2]!, face[1]!, '')
  const count = COUNT_FIRST.exec(line)
  return count ? turned(count[0], count[2]!, count[3]!, `${count[1]}X `) : undefined
}
