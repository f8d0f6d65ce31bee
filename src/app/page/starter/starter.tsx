import { type KeyboardEvent, useEffect, useRef, useState } from 'react'
import type { Practice } from '../../../brief/brief.ts'
import type { Unit } from '../../../brief/size.ts'
import { ChosenSketch } from './chosen-sketch.tsx'
import { firstLines } from './first-lines.ts'
import { sketchSizes } from './sketch-sizes.ts'
import { type StockName, sketchPath, stockSketches } from './sketches.ts'
import { inUnit, refusalOf, type TypedSize } from './typed-size.ts'

interface StarterProps {
  readonly onBegin: (text: string) => void
  /** A solid model is there already. */
  readonly onModel: () => void
  readonly onLeave: (() => void) | undefined
}

/** What the shop begins from, as it comes into the shop. */
const KINDS: readonly (readonly [string, readonly StockName[]])[] = [
  ['plate and block', ['plate', 'block', 'outline']],
  ['bars and sections', ['flat bar', 'angle', 'channel', 'tee']],
  ['round', ['round bar', 'tube', 'disc', 'turned']],
]

/** What is often made from it, as an example of a name. */
const USUAL_PARTS: Readonly<Record<StockName, string>> = {
  plate: 'Base plate',
  block: 'Clamp block',
  outline: 'Gusset',
  'flat bar': 'Strap',
  angle: 'Bracket',
  channel: 'Carrier',
  tee: 'Rail',
  'round bar': 'Pin',
  tube: 'Spacer',
  disc: 'Cover',
  turned: 'Shaft',
}

/** A blank sheet with what the shop can begin from, in pencil. One is chosen, its sizes are written on it. */
export function Starter({ onBegin, onModel, onLeave }: StarterProps) {
  const [stock, setStock] = useState<StockName>()
  const [unit, setUnit] = useState<Unit>('inch')
  const [title, setTitle] = useState('')
  const [sizes, setSizes] = useState<Readonly<Record<string, TypedSize>>>({})
  const [refused, setRefused] = useState<{ readonly name: string; readonly words: string }>()
  const practice: Practice = unit === 'inch' ? 'ASME' : 'ISO'
  const [chosen, setChosen] = useState<Practice>()
  const first = useRef<HTMLInputElement>(null)
  const sheet = useRef<HTMLDivElement>(null)
  /** The sketch that was chosen last: who goes back to the others finds the hand there. */
  const last = useRef<StockName>(undefined)
  useEffect(() => {
    const hand = stock
      ? first.current
      : sheet.current?.querySelector<HTMLElement>(`[data-stock="${last.current ?? 'plate'}"]`)
    // No farther than it must: what is asked stands above.
    hand?.focus({ preventScroll: true })
    hand?.scrollIntoView({ block: 'nearest' })
    last.current = stock ?? last.current
  }, [stock])
  const goBack = () => {
    setStock(undefined)
    setSizes({})
    setRefused(undefined)
  }
  const given = (name: string, usual: string) => (sizes[name] ? inUnit(sizes[name], unit) : usual)
  /** True where what stands in the field of a size is none; the field then says why and has the hand. */
  const refuse = (field: Element | RadioNodeList | null): boolean => {
    if (!stock || !(field instanceof HTMLInputElement)) return false
    const words = sketchSizes[stock].some((s) => s.name === field.name) ? refusalOf(field.value, unit) : undefined
    setRefused(words ? { name: field.name, words } : undefined)
    if (words) field.focus()
    return words !== undefined
  }
  const changeUnit = (to: Unit) => {
    setUnit(to)
    setRefused(undefined)
  }
  const begin = (form: HTMLFormElement) => {
    if (!stock || sketchSizes[stock].some((s) => refuse(form.elements.namedItem(s.name)))) return
    const all = Object.fromEntries(sketchSizes[stock].map((s) => [s.name, given(s.name, s[unit])]))
    onBegin(firstLines({ stock, title, unit, practice: chosen ?? practice, sizes: all }))
  }
  return (
    <main
      className="starter"
      aria-label="A new brief"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        event.stopPropagation()
        if (stock) goBack()
        else onLeave?.()
      }}
    >
      <div className="blank-sheet" ref={sheet}>
        <header>
          <h1>{stock ? `A part from ${STOCK_WORDS[stock] ?? article(stock)}` : 'What does the shop begin from?'}</h1>
          <fieldset>
            <legend className="visually-hidden">Units</legend>
            {(['inch', 'mm'] as const).map((u) => (
              <label key={u}>
                <input type="radio" name="unit" checked={unit === u} onChange={() => changeUnit(u)} />
                {u}
              </label>
            ))}
          </fieldset>
          <fieldset>
            <legend className="visually-hidden">Practice</legend>
            {(['ASME', 'ISO'] as const).map((p) => (
              <label key={p}>
                <input
                  type="radio"
                  name="practice"
                  checked={(chosen ?? practice) === p}
                  onChange={() => setChosen(p)}
                />
                {p}
              </label>
            ))}
          </fieldset>
          {onLeave ? (
            <button type="button" onClick={onLeave}>
              Back to the sheet
            </button>
          ) : null}
        </header>
        {stock ? (
          <form
            className="chosen"
            onKeyDown={(event) => nextField(event, refuse)}
            onSubmit={(event) => {
              event.preventDefault()
              begin(event.currentTarget)
            }}
          >
            <ChosenSketch
              stock={stock}
              unit={unit}
              given={given}
              first={first}
              refused={refused}
              onSize={(name, text) => {
                setSizes((old) => ({ ...old, [name]: { text, unit } }))
                setRefused(undefined)
              }}
            />
            <div className="row">
              <label>
                Name of the part
                <input
                  value={title}
                  onChange={(event) => setTitle(event.target.value)}
                  placeholder={USUAL_PARTS[stock]}
                />
              </label>
              <button type="submit" className="strong">
                Write the first lines
              </button>
              <button type="button" onClick={goBack}>
                Back to the sketches
              </button>
            </div>
          </form>
        ) : (
          <>
            {KINDS.map(([kind, names]) => (
              <section key={kind} className="kind" aria-label={kind}>
                <h2>{kind}</h2>
                <ul className="sketches">
                  {names.map((name) => (
                    <li key={name}>
                      <button type="button" data-stock={name} onClick={() => setStock(name)}>
                        <SketchPicture name={name} />
                        <span>{name}</span>
                      </button>
                    </li>
                  ))}
                </ul>
              </section>
            ))}
            <p className="by-hand">
              <button
                type="button"
                onClick={() => onBegin(`part      \nunits     ${unit}\npractice  ${chosen ?? practice}\n\n`)}
              >
                nothing yet: write it all
              </button>
              <button type="button" onClick={onModel}>
                a solid model: open a STEP file
              </button>
            </p>
          </>
        )}
      </div>
    </main>
  )
}

/** Enter goes to the next size, behind the last to the name; there it writes the lines. It stays at a refused one. */
function nextField(event: KeyboardEvent<HTMLFormElement>, refuse: (field: HTMLInputElement) => boolean): void {
  if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return
  const fields = [...event.currentTarget.querySelectorAll('input')]
  const next = fields[fields.indexOf(event.target) + 1]
  if (!next) return
  event.preventDefault()
  if (!refuse(event.target)) next.focus()
}

const STOCK_WORDS: Readonly<Partial<Record<StockName, string>>> = {
  turned: 'turned steps',
  outline: 'an outline, cut from plate',
}
const article = (name: string): string => `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`

function SketchPicture({ name }: { name: StockName }) {
  const { paths, box } = sketchPath(stockSketches[name])
  return (
    <svg
      className="sketch"
      viewBox={`${box[0] - 0.4} ${box[1] - 0.4} ${box[2] + 0.8} ${box[3] + 0.8}`}
      aria-hidden="true"
    >
      {paths.map((d) => (
        <path key={d} d={d} className={paths.length > 1 ? 'opaque' : undefined} />
      ))}
    </svg>
  )
}
