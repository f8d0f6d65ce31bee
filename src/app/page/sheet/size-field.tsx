import { useEffect, useRef, useState } from 'react'
import type { Touched } from './touch.ts'

interface SizeFieldProps {
  readonly touched: Touched
  /** Window px of the figures' upper left corner. */
  readonly at: readonly [number, number]
  /** Height of the figures in px. */
  readonly height: number
  /** Returns why the size was refused, or undefined. */
  readonly onGive: (typed: string) => string | undefined
  /** Left as it was; `back` where the keyboard goes back to the size. */
  readonly onLeave: (back: boolean) => void
}

/** A size being written over, where it stands on the sheet. */
export function SizeField({ touched, at, height, onGive, onLeave }: SizeFieldProps) {
  const [typed, setTyped] = useState(touched.size.text)
  const [refusal, setRefusal] = useState<string>()
  const input = useRef<HTMLInputElement>(null)
  useEffect(() => {
    setTyped(touched.size.text)
    setRefusal(undefined)
    input.current?.focus()
    input.current?.select()
  }, [touched])
  return (
    <form
      className="size-field"
      style={{ left: at[0] - 6, top: at[1] - 6, fontSize: Math.min(40, height * 1.25) }}
      onPointerDown={(event) => event.stopPropagation()}
      onSubmit={(event) => {
        event.preventDefault()
        setRefusal(onGive(typed))
      }}
    >
      <input
        ref={input}
        aria-label={`New size for ${touched.size.text}`}
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal ? 'size-refusal' : undefined}
        value={typed}
        size={Math.max(4, typed.length + 1)}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => {
          setTyped(event.target.value)
          setRefusal(undefined)
        }}
        onKeyDown={(event) => {
          event.stopPropagation()
          if (event.key === 'Escape') onLeave(true)
        }}
        onBlur={(event) => {
          if (!event.currentTarget.form?.contains(event.relatedTarget)) onLeave(false)
        }}
      />
      {refusal ? (
        <p id="size-refusal" role="alert">
          {refusal}
        </p>
      ) : null}
    </form>
  )
}
