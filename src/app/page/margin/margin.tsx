import {
  type FocusEvent,
  type KeyboardEvent,
  type RefObject,
  useEffect,
  useId,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react'
import type { Mark, Mend } from '../../../brief/mark.ts'
import { sentence } from '../../../brief/sentence.ts'
import type { MarginPlace } from '../bench/room.ts'
import type { PageMark } from '../engine/messages.ts'
import { foldAlike } from './fold-alike.ts'

interface MarginProps {
  readonly marks: readonly PageMark[]
  readonly open: number | undefined
  /** Where the margin is; absent: nowhere, it comes when a mark is opened. */
  readonly place: MarginPlace | undefined
  /** Said above the marks: that the sheet is older than the brief, or why there is none. */
  readonly standing: string | undefined
  /** Goes on to the choice of what the shop begins from; absent where the brief says it. */
  readonly onStart?: (() => void) | undefined
  readonly onOpen: (mark: number | undefined) => void
  readonly onMend: (mend: Mend) => void
  readonly onAccept: (mark: PageMark, reason: string) => void
  readonly onShow: (mark: Mark) => void
}

const WEIGHTS: Readonly<Record<Mark['weight'], string>> = {
  'must change': 'Must change',
  'look again': 'Look again',
  remark: 'Remark',
}

/** The checker's marks in pencil beside the sheet. Each opens to its reason, rule, source, mends and acceptance. */
export function Margin({ marks, open, place, standing, onStart, onOpen, onMend, onAccept, onShow }: MarginProps) {
  const [unfolded, setUnfolded] = useState<readonly string[]>([])
  const { folded, alike } = useMemo(() => foldAlike(marks, unfolded), [marks, unfolded])
  const { cards, overflows } = useOverflow(marks)
  const hold = useHold(marks, cards)
  const [raised, setRaised] = useState(false)
  if ((marks.length === 0 && !standing) || (!place && open === undefined)) return null
  const below = place?.side !== 'right'
  const up = below && (raised || open !== undefined)
  const classes = ['margin', below && 'below', up && 'up', raised && 'all'].filter(Boolean).join(' ')
  return (
    <aside
      className={classes}
      style={
        place?.side === 'below' ? { left: place.left, bottom: place.bottom, height: up ? 'auto' : place.height } : {}
      }
      aria-label="Marks"
    >
      <div className="cards" ref={cards} {...hold}>
        {standing ? (
          <div className="standing">
            <p role="status">{standing}</p>
            {onStart ? (
              <button type="button" onClick={onStart}>
                Choose what the shop begins from
              </button>
            ) : null}
          </div>
        ) : null}
        <ol>
          {marks.map((mark, i) =>
            folded.has(i) && open !== i ? null : (
              // biome-ignore lint/suspicious/noArrayIndexKey: a mark has no other name than its number
              <li key={`${i} ${mark.rule}`} className={classOf(mark)}>
                <button
                  type="button"
                  className="mark"
                  aria-expanded={open === i}
                  aria-keyshortcuts="M"
                  onKeyDown={(event) => goAlong(event, mark, onMend)}
                  onClick={() => {
                    onOpen(open === i ? undefined : i)
                    if (open !== i) onShow(mark)
                  }}
                >
                  <span className="number" aria-hidden="true">
                    {i + 1}
                  </span>
                  <span className="visually-hidden">{mark.accepted ? 'Accepted' : WEIGHTS[mark.weight]}: </span>
                  {sentence(mark.text)}
                </button>
                {open === i ? <Opened mark={mark} onMend={onMend} onAccept={onAccept} /> : null}
                {open !== i && mark.mends?.[0] ? <Mends mends={mark.mends.slice(0, 1)} onMend={onMend} /> : null}
                {alike.get(i) ? (
                  <button type="button" className="alike" onClick={() => setUnfolded([...unfolded, mark.rule])}>
                    {alike.get(i)} more alike
                  </button>
                ) : null}
              </li>
            ),
          )}
        </ol>
      </div>
      {below && (up || overflows) ? (
        <button
          type="button"
          className="raise"
          aria-expanded={up}
          onClick={() => {
            setRaised(!up)
            if (up) onOpen(undefined)
          }}
        >
          {up ? 'Show fewer' : 'Show all'}
        </button>
      ) : null}
    </aside>
  )
}

/** Where the mark at which the keyboard was is gone, the keyboard is at the one in its place. */
function useHold(marks: readonly PageMark[], cards: RefObject<HTMLElement | null>) {
  const at = useRef<number>(undefined)
  const all = () => [...(cards.current?.querySelectorAll<HTMLElement>('.mark') ?? [])]
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at for each new list
  useLayoutEffect(() => {
    if (at.current === undefined || document.activeElement !== document.body) return
    const left = all()
    left[Math.min(at.current, left.length - 1)]?.focus({ preventScroll: true })
  }, [marks])
  return {
    onFocus: (event: FocusEvent) => {
      const place = all().indexOf(event.target.closest('li')?.querySelector('.mark') as HTMLElement)
      at.current = place < 0 ? undefined : place
    },
    // Who goes elsewhere is not fetched back; some browsers tell of the mark's end itself in the same way.
    onBlur: ({ target }: FocusEvent) => {
      setTimeout(() => {
        if (target.isConnected && !cards.current?.contains(document.activeElement)) at.current = undefined
      })
    },
  }
}

/** Whether the marks take more room than their place has. */
function useOverflow(marks: readonly PageMark[]) {
  const cards = useRef<HTMLDivElement>(null)
  const [overflows, setOverflows] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at for each new list, and at each new size
  useEffect(() => {
    const here = cards.current
    if (!here) return undefined
    const look = () => setOverflows(here.scrollHeight > here.clientHeight + 8)
    const observer = new ResizeObserver(look)
    observer.observe(here)
    look()
    return () => observer.disconnect()
  }, [marks])
  return { cards, overflows }
}

const classOf = (mark: PageMark): string => `${mark.weight.replaceAll(' ', '-')}${mark.accepted ? ' accepted' : ''}`

/** Arrows go from mark to mark; M makes the first mend. */
function goAlong(event: KeyboardEvent<HTMLElement>, mark: PageMark, onMend: (mend: Mend) => void): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return
  const by = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key]
  if (by) {
    const all = [...event.currentTarget.closest('ol')!.querySelectorAll<HTMLElement>('.mark')]
    all[all.indexOf(event.currentTarget) + by]?.focus()
  } else if (event.key.toLowerCase() === 'm' && mark.mends?.[0]) onMend(mark.mends[0])
  else return
  event.preventDefault()
  event.stopPropagation()
}

interface OpenedProps {
  readonly mark: PageMark
  readonly onMend: (mend: Mend) => void
  readonly onAccept: (mark: PageMark, reason: string) => void
}

function Opened({ mark, onMend, onAccept }: OpenedProps) {
  const place = useRef<HTMLDivElement>(null)
  // Its reasons are to be seen, wherever it was opened from.
  useLayoutEffect(() => {
    // Newer browsers give a promise here, which is no way to end an effect.
    void place.current?.closest('li')?.scrollIntoView({ block: 'nearest' })
  }, [])
  return (
    <div className="opened" ref={place}>
      <dl>
        <dt>Weight</dt>
        <dd>{WEIGHTS[mark.weight]}</dd>
        {mark.accepted ? (
          <>
            <dt>Accepted because</dt>
            <dd>{mark.accepted}</dd>
          </>
        ) : null}
        {mark.expected ? (
          <>
            <dt>Expected</dt>
            <dd>{mark.expected}</dd>
          </>
        ) : null}
        <dt>Rule</dt>
        <dd>{mark.rule.replaceAll('-', ' ')}</dd>
        <dt>Source</dt>
        <dd>{mark.source ?? 'not stated'}</dd>
      </dl>
      <Mends mends={mark.mends ?? []} onMend={onMend} />
      {mark.accept ? <Accepting onGive={(reason) => onAccept(mark, reason)} /> : null}
    </div>
  )
}

/** A line for the reason why a mark stands as it is. */
function Accepting({ onGive }: { readonly onGive: (reason: string) => void }) {
  const [reason, setReason] = useState('')
  const id = useId()
  return (
    <form
      className="accepting"
      onSubmit={(event) => {
        event.preventDefault()
        if (reason.trim() !== '') onGive(reason)
      }}
    >
      <label htmlFor={id}>It stands, because</label>
      <input
        id={id}
        value={reason}
        maxLength={400}
        autoComplete="off"
        onChange={(event) => setReason(event.target.value)}
      />
      <button type="submit" disabled={reason.trim() === ''}>
        Accept it
      </button>
    </form>
  )
}

const Mends = ({ mends, onMend }: { mends: readonly Mend[]; onMend: (mend: Mend) => void }) => (
  <>
    {mends.map((mend) => (
      <button type="button" className="mend" key={`${mend.label} ${mend.span.from}`} onClick={() => onMend(mend)}>
        Mend: {mend.label}
      </button>
    ))}
  </>
)
