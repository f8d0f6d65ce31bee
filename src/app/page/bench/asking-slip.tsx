import { useCallback, useEffect, useId, useRef, useState } from 'react'

/** What is asked of the drafter before something is done. */
export interface Question {
  readonly title: string
  /** What follows from the answer, one sentence. */
  readonly words?: string
  /** A line to write on: its name, and what stands on it at first. Without it the question is yes or no. */
  readonly line?: { readonly name: string; readonly text: string }
  /** A second line below it; the answer then has both, parted by a line end. */
  readonly below?: { readonly name: string; readonly text: string }
  /** Why what was written on the line cannot be taken; the slip then stays. */
  readonly refuse?: (text: string) => string | undefined
  /** Words of the button that does it. */
  readonly yes: string
}

/** Resolves to what was written, to '' for a plain yes, or to undefined where it was left. */
export type Ask = (question: Question) => Promise<string | undefined>

interface Asked extends Question {
  readonly answer: (text: string | undefined) => void
}

/** A slip laid over the bench with one question; Escape leaves it and the place one came from has the keyboard again. */
export function useAsk(): { readonly ask: Ask; readonly asked: Asked | undefined } {
  const [asked, setAsked] = useState<Asked>()
  const ask = useCallback<Ask>(
    (question) =>
      new Promise((resolve) => {
        const answer = (text: string | undefined) => {
          setAsked(undefined)
          resolve(text)
        }
        setAsked({ ...question, answer })
      }),
    [],
  )
  return { ask, asked }
}

export function AskingSlip({ asked }: { readonly asked: Asked | undefined }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const input = useRef<HTMLInputElement>(null)
  const leave = useRef<HTMLButtonElement>(null)
  const [text, setText] = useState('')
  const [second, setSecond] = useState('')
  const [refusal, setRefusal] = useState<string>()
  const [title, words, why] = [useId(), useId(), useId()]
  useEffect(() => {
    setRefusal(undefined)
    if (!asked) {
      if (dialog.current!.open) dialog.current!.close()
      return
    }
    const first = asked.line?.text ?? ''
    setText(first)
    setSecond(asked.below?.text ?? '')
    if (!dialog.current!.open) dialog.current!.showModal()
    if (asked.line) {
      input.current!.focus()
      // The ending of a file name is seldom what one wants to write over.
      input.current!.value = first
      input.current!.setSelectionRange(0, first.replace(/\.\w+$/, '').length)
    } else leave.current!.focus()
  }, [asked])
  const empty =
    (asked?.line !== undefined && text.trim() === '') || (asked?.below !== undefined && second.trim() === '')
  return (
    <dialog
      ref={dialog}
      className="asking"
      aria-labelledby={title}
      {...(asked?.words ? { 'aria-describedby': words } : {})}
      // A close that is told of late is not the answer to the next question.
      onClose={() => dialog.current?.open || asked?.answer(undefined)}
      onKeyDown={(event) => event.stopPropagation()}
    >
      {asked ? (
        <form
          onSubmit={(event) => {
            event.preventDefault()
            if (empty) return
            const refused = asked.refuse?.(text.trim())
            setRefusal(refused)
            if (refused) input.current?.focus()
            else asked.answer(asked.below ? `${text.trim()}\n${second.trim()}` : text.trim())
          }}
        >
          <h2 id={title}>{asked.title}</h2>
          {asked.words ? <p id={words}>{asked.words}</p> : null}
          {asked.line ? (
            <label>
              <span>{asked.line.name}</span>
              <input
                ref={input}
                value={text}
                autoComplete="off"
                spellCheck={false}
                aria-invalid={refusal !== undefined}
                aria-describedby={refusal ? why : undefined}
                onChange={(event) => {
                  setText(event.target.value)
                  setRefusal(undefined)
                }}
              />
            </label>
          ) : null}
          {refusal ? (
            <p id={why} className="refusal" role="alert">
              {refusal}
            </p>
          ) : null}
          {asked.below ? (
            <label>
              <span>{asked.below.name}</span>
              <input
                value={second}
                autoComplete="off"
                spellCheck={false}
                onChange={(event) => setSecond(event.target.value)}
              />
            </label>
          ) : null}
          <p className="row">
            <button type="submit" disabled={empty}>
              {asked.yes}
            </button>
            <button ref={leave} type="button" onClick={() => asked.answer(undefined)}>
              Back
            </button>
          </p>
        </form>
      ) : null}
    </dialog>
  )
}
