import { type RefObject, useCallback, useEffect, useRef, useState } from 'react'
import type { DeskAnswer } from '../../server/page-server.ts'
import { askDesk, fetchBrief } from '../shelf/desk-client.ts'
import { withPlainLineEnds } from '../shelf/line-ends.ts'
import { type OtherTabs, otherTabs } from '../shelf/other-tabs.ts'
import { saysNothing } from '../shelf/says-nothing.ts'
import { type Home, type Kept, keep, letGo, takeStock } from '../shelf/shelf.ts'
import { type SigningMemory, signedAfter } from '../shelf/signed-text.ts'

export interface Briefs {
  readonly ready: boolean
  readonly desk: DeskAnswer | undefined
  readonly all: readonly Kept[]
  readonly active: Kept | undefined
  /** `undone`: undo or redo made it so. */
  readonly write: (id: string, text: string, undone: boolean) => void
  readonly settle: (id: string, home: Home, saved: string) => void
  readonly take: (id: string) => void
  readonly begin: (text: string, home?: Home, saved?: string) => string
  readonly close: (id: string) => void
  readonly throwAway: (id: string) => void
  readonly openFrom: (from: 'briefs' | 'examples', name: string) => Promise<void>
  readonly refreshDesk: () => void
  /** Called with what another tab wrote into a brief. */
  readonly onFollow: RefObject<((brief: Kept) => void) | undefined>
}

const FIRST_EXAMPLE = 'vent-bracket.brief'

/**
 * The briefs that are kept, and the one on the bench. Every change is kept as it is made, and goes along with what
 * another tab writes into the same brief.
 */
export function useBriefs(tell: (text: string) => void): Briefs {
  const [all, setAll] = useState<readonly Kept[]>([])
  const [active, setActive] = useState<string>()
  const [desk, setDesk] = useState<DeskAnswer>()
  const [ready, setReady] = useState(false)
  const latest = useRef(all)
  const tabs = useRef<OtherTabs>(undefined)
  const signings = useRef(new Map<string, SigningMemory>())

  const onFollow = useRef<(brief: Kept) => void>(undefined)
  const find = useCallback((id: string) => latest.current.find((k) => k.id === id), [])
  const lay = useCallback((brief: Kept) => {
    const old = latest.current
    const next = old.some((k) => k.id === brief.id) ? old.map((k) => (k.id === brief.id ? brief : k)) : [...old, brief]
    latest.current = next
    setAll(next)
  }, [])
  useEffect(() => {
    tabs.current = otherTabs((brief) => {
      // Of two that were written at once the later stands, in all tabs alike.
      if ((find(brief.id)?.touched ?? 0) > brief.touched) return
      lay(brief)
      onFollow.current?.(brief)
    })
    return () => tabs.current?.close()
  }, [lay, find])
  const put = useCallback(
    (brief: Kept) => {
      lay(brief)
      tabs.current?.tell(brief)
      keep(brief).catch(() => tell('This browser keeps nothing: save to a file before you close the page.'))
    },
    [tell, lay],
  )

  const begin = useCallback(
    (read: string, home: Home = { kind: 'shelf' }, last?: string) => {
      const text = withPlainLineEnds(read)
      const saved = last === undefined ? undefined : withPlainLineEnds(last)
      const id = crypto.randomUUID()
      // One that was begun and says nothing yet gives way.
      for (const { id: bare } of latest.current.filter(saysNothing)) void letGo(bare)
      latest.current = latest.current.filter((k) => !saysNothing(k))
      put({ id, text, home, touched: Date.now(), open: true, ...(saved === undefined ? {} : { saved }) })
      setActive(id)
      return id
    },
    [put],
  )
  const take = useCallback(
    (id: string) => {
      const brief = find(id)
      if (!brief) return
      put({ ...brief, open: true, touched: Date.now() })
      setActive(id)
    },
    [put, find],
  )
  const openFrom = useCallback(
    async (from: 'briefs' | 'examples', name: string) => {
      try {
        const { text: read, tag } = await fetchBrief(from, name)
        const text = withPlainLineEnds(read)
        if (from === 'examples') {
          const same = latest.current.find((k) => k.text === text)
          if (same) take(same.id)
          else begin(text)
          return
        }
        const mine = latest.current.find((k) => k.home.kind === 'desk' && k.home.name === name)
        if (!mine) {
          begin(text, { kind: 'desk', name, tag }, text)
        } else if (mine.text === text) {
          put({ ...mine, saved: text, home: { kind: 'desk', name, tag }, open: true, touched: Date.now() })
          setActive(mine.id)
        } else if (mine.text === mine.saved) {
          // Changed outside since, and not here: what was kept gives way to the file.
          latest.current = latest.current.filter((k) => k.id !== mine.id)
          void letGo(mine.id)
          begin(text, { kind: 'desk', name, tag }, text)
        } else {
          tell(`${name} was being changed when the page was last closed; the changes are here, not yet saved.`)
          take(mine.id)
        }
      } catch (fault) {
        tell(`${name} cannot be opened: ${fault instanceof Error ? fault.message : 'no answer'}`)
      }
    },
    [begin, put, take, tell],
  )
  const refreshDesk = useCallback(() => {
    void askDesk().then(setDesk)
  }, [])

  useEffect(() => {
    let gone = false
    void Promise.all([takeStock(), askDesk()]).then(async ([stock, answer]) => {
      if (gone) return
      latest.current = stock
      setAll(stock)
      setDesk(answer)
      const lying = stock.filter((k) => k.open)
      if (answer?.open) await openFrom('briefs', answer.open)
      else if (lying[0]) setActive(lying[0].id)
      else if (answer?.examples.includes(FIRST_EXAMPLE)) await openFrom('examples', FIRST_EXAMPLE)
      setReady(true)
    })
    return () => {
      gone = true
    }
  }, [openFrom])

  return {
    ready,
    desk,
    all,
    active: all.find((k) => k.id === active),
    write: useCallback(
      (id, text, undone) => {
        const brief = find(id)
        if (!brief || brief.text === text) return
        const memory = signings.current.get(id) ?? new Map()
        signings.current.set(id, memory)
        const signed = signedAfter(memory, brief.signed ?? brief.text, brief.text, text, undone)
        put({ ...brief, text, signed, touched: Date.now() })
      },
      [put, find],
    ),
    settle: useCallback(
      (id, home, saved) => {
        const brief = find(id)
        if (brief) put({ ...brief, home, saved })
      },
      [put, find],
    ),
    take,
    begin,
    close: useCallback(
      (id) => {
        const brief = find(id)
        if (brief) put({ ...brief, open: false })
        setActive((now) => (now === id ? latest.current.find((k) => k.open && k.id !== id)?.id : now))
      },
      [put, find],
    ),
    throwAway: useCallback((id) => {
      latest.current = latest.current.filter((k) => k.id !== id)
      setAll(latest.current)
      void letGo(id)
    }, []),
    openFrom,
    refreshDesk,
    onFollow,
  }
}
