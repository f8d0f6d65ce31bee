import type { Mark, Mend } from '../../../brief/mark.ts'

interface MarginProps {
  readonly marks: readonly Mark[]
  readonly open: number | undefined
  /** Said above the marks: that the sheet is older than the brief, or why there is none. */
  readonly standing: string | undefined
  /** Goes on to the choice of what the shop begins from; absent where the brief says it. */
  readonly onStart?: (() => void) | undefined
  readonly onOpen: (mark: number | undefined) => void
  readonly onMend: (mend: Mend) => void
  readonly onShow: (mark: Mark) => void
}

const WEIGHTS: Readonly<Record<Mark['weight'], string>> = {
  'must change': 'Must change',
  'look again': 'Look again',
  remark: 'Remark',
}

/** The checker's marks in pencil beside the sheet. Each opens to its reason, rule, source and mends. */
export function Margin({ marks, open, standing, onStart, onOpen, onMend, onShow }: MarginProps) {
  if (marks.length === 0 && !standing) return null
  return (
    <aside className="margin" aria-label="Marks">
      {standing ? (
        <p className="standing" role="status">
          {standing}
        </p>
      ) : null}
      {standing && onStart ? (
        <button type="button" className="start" onClick={onStart}>
          Choose what the shop begins from
        </button>
      ) : null}
      <ol>
        {marks.map((mark, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a mark has no other name than its number
          <li key={`${i} ${mark.rule}`} className={mark.weight.replaceAll(' ', '-')}>
            <button
              type="button"
              aria-expanded={open === i}
              onClick={() => {
                onOpen(open === i ? undefined : i)
                if (open !== i) onShow(mark)
              }}
            >
              <span className="number" aria-hidden="true">
                {i + 1}
              </span>
              <span className="visually-hidden">{WEIGHTS[mark.weight]}: </span>
              {mark.text}
            </button>
            {open === i ? <Opened mark={mark} onMend={onMend} /> : null}
            {open !== i && mark.mends?.[0] ? <Mends mends={mark.mends.slice(0, 1)} onMend={onMend} /> : null}
          </li>
        ))}
      </ol>
    </aside>
  )
}

function Opened({ mark, onMend }: { mark: Mark; onMend: (mend: Mend) => void }) {
  return (
    <div className="opened">
      <dl>
        <dt>Weight</dt>
        <dd>{WEIGHTS[mark.weight]}</dd>
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
    </div>
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
