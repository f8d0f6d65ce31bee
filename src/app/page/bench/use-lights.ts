import { useEffect, useMemo, useState } from 'react'
import type { Span } from '../../../brief/span.ts'
import type { Drawn } from '../engine/messages.ts'
import { type Light, lightOfWords, type Ties } from '../sheet/light.ts'
import { whyIsIt } from '../sheet/why.ts'
import type { LitWords } from '../slip/lit-words.ts'

interface Lighting {
  readonly good: Drawn | undefined
  readonly stale: boolean
}

/** What is lit on the sheet and in the brief: what is pointed at, else what was chosen. */
export function useLights({ good, stale }: Lighting) {
  const [hover, setHover] = useState<{ light: Light | undefined; from: 'sheet' | 'brief' }>()
  const [chosen, setChosen] = useState<{
    item: number | undefined
    light: Light | undefined
    words?: string | undefined
  }>()
  // Items of the old sheet are not those of the new one.
  // biome-ignore lint/correctness/useExhaustiveDependencies: for each new drawing
  useEffect(() => {
    setChosen(undefined)
    setHover((now) => (now?.from === 'sheet' ? undefined : now))
  }, [good])
  // Words of a brief that is not drawn have made nothing of the sheet that lies there.
  const light = (stale && hover?.from === 'brief' ? undefined : hover?.light) ?? chosen?.light
  const litWords = useMemo(
    (): LitWords | undefined =>
      hover?.from === 'brief' || stale || !light
        ? undefined
        : { words: light.words, ...(light.statement ? { statement: light.statement } : {}) },
    [hover, light, stale],
  )
  const whyOf = (item: number | undefined) => (good && item !== undefined ? whyIsIt(good, item) : undefined)
  return {
    light,
    litWords,
    /** Why the chosen line is there. */
    why: whyOf(chosen?.item),
    /** Why the line that is pointed at is there, else the chosen one. */
    whyHere: hover?.light ? whyOf(hover.light.item) : (chosen?.words ?? whyOf(chosen?.item)),
    chosenLight: chosen?.light,
    chosenWords: stale ? undefined : (chosen?.light?.words[0] ?? chosen?.light?.statement),
    choose: (item: number | undefined, l: Light | undefined) =>
      setChosen({ item, light: l && item !== undefined ? { ...l, item } : l }),
    /** Something of the solid in the hand was picked; `words` says what. */
    pick: (l: Light | undefined, words: string | undefined) => setChosen({ item: undefined, light: l, words }),
    letGo: () => setChosen(undefined),
    pointAtSheet: (l: Light | undefined) => setHover(l ? { light: l, from: 'sheet' } : undefined),
    pointAtWords: (span: Span | undefined, now: Ties | undefined) => {
      const found = span && now ? lightOfWords(now, span) : undefined
      setHover(found ? { light: found, from: 'brief' } : undefined)
    },
    clear: () => {
      setChosen(undefined)
      setHover(undefined)
    },
  }
}

export type Lights = ReturnType<typeof useLights>
