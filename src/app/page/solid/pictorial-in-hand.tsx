import type { InHand, Lifting } from '../bench/use-lifted.ts'
import type { Drawn } from '../engine/messages.ts'
import { centreOf } from '../sheet/centre-of.ts'
import { type Light, lightOfEdge, lightOfFace, type Ties } from '../sheet/light.ts'
import { edgeWords } from '../sheet/why.ts'
import { Lifted } from './lifted.tsx'

interface PictorialInHandProps {
  readonly lifted: InHand
  readonly lifting: Pick<Lifting, 'putBack' | 'drop'>
  readonly drawn: Drawn
  readonly ties: Ties
  readonly light: Light | undefined
  readonly words: string | undefined
  /** Something of the part was picked, or nothing; `words` says what it is. */
  readonly onPick: (light: Light | undefined, words: string | undefined) => void
}

/** The lifted pictorial of a drawing, and what is lit when something of it is picked. */
export function PictorialInHand({ lifted, lifting, drawn, ties, light, words, onPick }: PictorialInHandProps) {
  const { solid } = lifted
  return (
    <Lifted
      solid={solid}
      fault={lifted.fault}
      drawn={drawn}
      light={light}
      centre={centreOf(drawn, light?.item)}
      words={words}
      going={lifted.going}
      look={lifted.look}
      onPick={({ edge, face }) => {
        if (edge !== undefined && solid) onPick(lightOfEdge(ties, edge), edgeWords(drawn.edges, solid.faceWords, edge))
        else if (face !== undefined) onPick(lightOfFace(ties, face), faceWords(solid?.faceWords[face]))
        else onPick(undefined, undefined)
      }}
      onPutBack={lifting.putBack}
      onGone={lifting.drop}
    />
  )
}

const faceWords = (name: string | undefined): string | undefined =>
  name === undefined ? undefined : `${name[0]!.toUpperCase()}${name.slice(1)}.`
