import { useEffect, useRef, useState } from 'react'
import type { Practice } from '../../../brief/brief.ts'
import type { Unit } from '../../../brief/size.ts'
import { firstLines, sketchSizes } from './first-lines.ts'
import { isometric, type StockName, sketchPath, stockSketches } from './sketches.ts'

interface StarterProps {
  readonly onBegin: (text: string) => void
  readonly onLeave: (() => void) | undefined
}

const NAMES = Object.keys(stockSketches) as StockName[]

/** A blank sheet with what the shop can begin from, in pencil. One is chosen, its sizes are written on it. */
export function Starter({ onBegin, onLeave }: StarterProps) {
  const [stock, setStock] = useState<StockName>()
  const [unit, setUnit] = useState<Unit>('inch')
  const [title, setTitle] = useState('')
  const [sizes, setSizes] = useState<Readonly<Record<string, string>>>({})
  const practice: Practice = unit === 'inch' ? 'ASME' : 'ISO'
  const [chosen, setChosen] = useState<Practice>()
  const first = useRef<HTMLInputElement>(null)
  useEffect(() => {
    if (stock) first.current?.focus()
  }, [stock])
  const given = (name: string, usual: string) => sizes[name] ?? usual
  const begin = () => {
    if (!stock) return
    const all = Object.fromEntries(sketchSizes[stock].map((s) => [s.name, given(s.name, s[unit])]))
    onBegin(firstLines({ stock, title, unit, practice: chosen ?? practice, sizes: all }))
  }
  return (
    <main className="starter" aria-label="A new brief">
      <div className="blank-sheet">
        <header>
          <h1>{stock ? `A part from ${STOCK_WORDS[stock] ?? article(stock)}` : 'What does the shop begin from?'}</h1>
          <fieldset>
            <legend className="visually-hidden">Units</legend>
            {(['inch', 'mm'] as const).map((u) => (
              <label key={u}>
                <input type="radio" name="unit" checked={unit === u} onChange={() => setUnit(u)} />
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
            onSubmit={(event) => {
              event.preventDefault()
              begin()
            }}
          >
            <Chosen
              stock={stock}
              unit={unit}
              given={given}
              first={first}
              onSize={(name, v) => setSizes((old) => ({ ...old, [name]: v }))}
            />
            <div className="row">
              <label>
                Name of the part
                <input value={title} onChange={(event) => setTitle(event.target.value)} placeholder="Bracket" />
              </label>
              <button type="submit" className="strong">
                Write the first lines
              </button>
              <button
                type="button"
                onClick={() => {
                  setStock(undefined)
                  setSizes({})
                }}
              >
                Something else
              </button>
            </div>
          </form>
        ) : (
          <ul className="sketches">
            {NAMES.map((name) => (
              <li key={name}>
                <button type="button" onClick={() => setStock(name)}>
                  <SketchPicture name={name} />
                  <span>{name}</span>
                </button>
              </li>
            ))}
            <li>
              <button
                type="button"
                className="by-hand"
                onClick={() => onBegin('part      \nunits     inch\npractice  ASME\n\n')}
              >
                <span>nothing yet: write it all</span>
              </button>
            </li>
          </ul>
        )}
      </div>
    </main>
  )
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

interface ChosenProps {
  readonly stock: StockName
  readonly unit: Unit
  readonly given: (name: string, usual: string) => string
  readonly first: React.RefObject<HTMLInputElement | null>
  readonly onSize: (name: string, value: string) => void
}

/** The sketch drawn large, with its sizes to be written where they stand. */
function Chosen({ stock, unit, given, first, onSize }: ChosenProps) {
  const { paths, box } = sketchPath(stockSketches[stock])
  const pad = 2.6
  const [x, y, w, h] = [box[0] - pad, box[1] - pad, box[2] + 2 * pad, box[3] + 2 * pad]
  return (
    <div className="large-sketch" style={{ aspectRatio: `${w} / ${h}`, width: `min(100%, ${(56 * w) / h}vh)` }}>
      <svg className="sketch" viewBox={`${x} ${y} ${w} ${h}`} aria-hidden="true">
        {paths.map((d) => (
          <path key={d} d={d} className={paths.length > 1 ? 'opaque' : undefined} />
        ))}
      </svg>
      {sketchSizes[stock].map((s, i) => {
        const [u, v] = isometric(s.at)
        return (
          <label key={s.name} style={{ left: `${((u - x) / w) * 100}%`, top: `${((v - y) / h) * 100}%` }}>
            {s.name}
            <input
              ref={i === 0 ? first : undefined}
              value={given(s.name, s[unit])}
              size={6}
              autoComplete="off"
              onFocus={(event) => event.target.select()}
              onChange={(event) => onSize(s.name, event.target.value)}
            />
          </label>
        )
      })}
    </div>
  )
}
