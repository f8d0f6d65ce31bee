import { useMemo } from 'react'
import type { Signature } from '../../../brief/brief.ts'
import type { Mark } from '../../../brief/mark.ts'
import type { EngineState } from '../engine/engine.ts'
import type { Drawn, Written } from '../engine/messages.ts'
import { openWords, whatIsOpen } from './what-is-open.ts'

export type ExportKind = Written | 'png'

interface RoutingSlipProps {
  readonly drawn: Drawn | undefined
  readonly marks: readonly Mark[]
  readonly state: EngineState
  readonly saved: boolean
  readonly busy: string | undefined
  readonly onIssue: (kind: ExportKind) => void
  readonly onPrint: () => void
  readonly onSave: () => void
  readonly onCheck: () => void
  /** The checker has been round the brief as it stands. */
  readonly settled: boolean
  /** The check print lies in the place of the sheet. */
  readonly checkPrint: boolean
  readonly onCheckPrint: () => void
  readonly onSign: () => void
  /** The brief was changed since it was signed. */
  readonly lapsed: boolean
}

/** The job's way through the office: each desk signs and dates, as the brief says. */
export function RoutingSlip(props: RoutingSlipProps) {
  const { drawn, marks, state, saved, busy } = props
  const header = drawn?.brief.header
  const numbered = header?.number
    ? `${header.number.text}${header.revision ? ` rev ${header.revision.text}` : ''}`
    : 'No number'
  const sheet = drawn?.sheet
  const views = sheet?.views.length ?? 0
  const open = marks.filter((m) => m.accepted === undefined)
  const must = open.filter((m) => m.weight === 'must change').length
  const still = useMemo(() => (drawn ? openWords(whatIsOpen(drawn)) : ''), [drawn])
  const unsigned = props.lapsed ? 'Changed since' : must > 0 ? 'Not on the sheet' : undefined
  const complete = drawn?.proof?.complete && still === ''
  return (
    <section className="routing" aria-label="Routing slip">
      <Stage name="Brief" sign={header?.drawn} by="Drawn">
        <span className="aside">{saved ? 'Saved' : 'Kept, not saved'}</span>
        <button type="button" onClick={props.onSave} disabled={saved}>
          Save
        </button>
      </Stage>
      <Stage name="Sheet">
        <span>
          {sheet ? `${sheet.format}, ${sheet.scale}, ${views} ${views === 1 ? 'view' : 'views'}` : 'None yet'}
        </span>
        {complete === undefined ? null : (
          <span className="quiet" title={drawn?.proof?.sentence}>
            {complete ? 'Sizes complete' : `Sizes not complete${still ? `: ${still}` : ''}`}
          </span>
        )}
        <span className="quiet" role="status">
          {WORDS[state]}
        </span>
      </Stage>
      <Stage name="Check" sign={header?.checked} by="Checked" unsigned={unsigned}>
        <button type="button" className="plain" onClick={props.onCheck} disabled={marks.length === 0}>
          {props.settled || marks.length > 0 ? tally(open.length, must, marks.length - open.length) : 'Being checked'}
        </button>
        <button type="button" aria-pressed={props.checkPrint} disabled={!sheet} onClick={props.onCheckPrint}>
          Check print
        </button>
        {props.checkPrint ? (
          <button type="button" disabled={busy !== undefined} onClick={() => props.onIssue('check')}>
            {busy === 'check' ? 'Writing' : 'Its PDF'}
          </button>
        ) : null}
        <button type="button" disabled={!sheet} onClick={props.onSign}>
          Sign
        </button>
      </Stage>
      <Stage name="Issue" sign={header?.approved} by="Approved" unsigned={unsigned}>
        <span className="row">
          {(['pdf', 'svg', 'step', 'png'] as const).map((kind) => (
            <button
              type="button"
              key={kind}
              disabled={busy !== undefined || (kind === 'step' ? !drawn?.weight : !sheet)}
              onClick={() => props.onIssue(kind)}
            >
              {busy === kind ? 'Writing' : kind.toUpperCase()}
            </button>
          ))}
          <button type="button" onClick={props.onPrint} disabled={!sheet}>
            Print
          </button>
        </span>
      </Stage>
      <Stage name="Register">
        <span className="quiet bounded" title={numbered}>
          {numbered}
        </span>
        <span className="quiet">No register is kept yet</span>
      </Stage>
    </section>
  )
}

const WORDS: Readonly<Record<EngineState, string>> = {
  opening: 'Getting ready',
  ready: '',
  'at work': 'Drawing',
  restarting: 'Starting again',
}

/** So many marks, so many of them that must change, so many more that are accepted. */
function tally(all: number, must: number, accepted: number): string {
  if (accepted > 0) return `${tally(all, must, 0)}, ${accepted} accepted`
  if (all === 0) return 'No marks'
  if (all === 1) return must === 1 ? '1 mark, must change' : '1 mark'
  const rest = must === 0 ? '' : must === all ? ', all must change' : `, ${must} must change`
  return `${all} marks${rest}`
}

interface StageProps {
  readonly name: string
  readonly sign?: Signature | undefined
  readonly by?: string
  /** Why the signature does not hold for this sheet. */
  readonly unsigned?: string | undefined
  readonly children: React.ReactNode
}

function Stage({ name, sign, by, unsigned, children }: StageProps) {
  return (
    <section className="stage" aria-label={name}>
      <h2>{name}</h2>
      <div className="stage-body">{children}</div>
      {by ? (
        <p className={`signature${unsigned && sign ? ' lapsed' : ''}`}>
          <span className="visually-hidden">{by} by </span>
          <span className="name">{sign?.name.text ?? '\u00a0'}</span>
          <span className="date">{unsigned && sign ? unsigned : (sign?.date?.text ?? '')}</span>
        </p>
      ) : null}
    </section>
  )
}
