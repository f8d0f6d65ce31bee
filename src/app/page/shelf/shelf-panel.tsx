import { useLayoutEffect, useRef } from 'react'
import { readBrief } from '../../../brief/read.ts'
import type { DeskAnswer } from '../../server/page-server.ts'
import type { KeptModel } from './models.ts'
import type { Kept } from './shelf.ts'

interface ShelfProps {
  readonly open: boolean
  readonly kept: readonly Kept[]
  readonly desk: DeskAnswer | undefined
  readonly active: string | undefined
  readonly onClose: () => void
  readonly onTake: (id: string) => void
  readonly onBeside: (id: string) => void
  readonly onLetGo: (id: string, title: string) => void
  readonly onDesk: (from: 'briefs' | 'examples', name: string) => void
  readonly onFile: () => void
  readonly onNew: () => void
  readonly models: readonly KeptModel[]
  readonly onModel: (id: string) => void
  readonly onThrowModel: (id: string, name: string) => void
}

/** Briefs and models kept in this browser, those of the folder, and the examples: lists to read, not pictures to pick. */
export function ShelfPanel(props: ShelfProps) {
  const { open, kept, desk, active } = props
  const dialog = useRef<HTMLDialogElement>(null)
  // Before what it makes way for takes the keyboard: a dialog that closes gives it back to where it came from.
  useLayoutEffect(() => {
    if (open && !dialog.current!.open) dialog.current!.showModal()
    if (!open && dialog.current!.open) dialog.current!.close()
  }, [open])
  return (
    <dialog ref={dialog} className="shelf" aria-label="Shelf" onClose={props.onClose}>
      {open ? (
        <>
          <header>
            <h2>Shelf</h2>
            <button type="button" onClick={props.onNew}>
              New brief
            </button>
            <button type="button" onClick={props.onFile}>
              Open a file
            </button>
            <button type="button" onClick={props.onClose}>
              Back
            </button>
          </header>
          <h3>Kept in this browser</h3>
          <ul>
            {kept.map((brief) => {
              const { header } = readBrief(brief.text)
              return (
                <li key={brief.id}>
                  <button type="button" className="take" onClick={() => props.onTake(brief.id)}>
                    <span className="drawing-number">{header.number?.text ?? 'no number'}</span>
                    <span>{header.part?.text ?? 'Untitled'}</span>
                    <span className="quiet">
                      {brief.home.kind === 'shelf' ? 'only here' : brief.home.name}
                      {brief.saved === brief.text || brief.home.kind === 'shelf' ? '' : ', not saved'}
                    </span>
                  </button>
                  {brief.id !== active ? (
                    <>
                      <button type="button" onClick={() => props.onBeside(brief.id)}>
                        Lay beside
                      </button>
                      <button
                        type="button"
                        aria-label={`Throw away ${header.part?.text ?? 'this brief'}`}
                        onClick={() => props.onLetGo(brief.id, header.part?.text ?? 'this brief')}
                      >
                        Throw away
                      </button>
                    </>
                  ) : (
                    <span className="quiet">on the bench</span>
                  )}
                </li>
              )
            })}
          </ul>
          {props.models.length > 0 ? (
            <>
              <h3>Solid models kept in this browser</h3>
              <ul>
                {props.models.map(({ id, name, size }) => (
                  <li key={id}>
                    <button type="button" className="take" onClick={() => props.onModel(id)}>
                      <span>{name}</span>
                      <span className="quiet">{(size / 1_000_000).toFixed(size < 1_000_000 ? 2 : 0)} MB</span>
                    </button>
                    <button
                      type="button"
                      aria-label={`Throw away ${name}`}
                      onClick={() => props.onThrowModel(id, name)}
                    >
                      Throw away
                    </button>
                  </li>
                ))}
              </ul>
            </>
          ) : null}
          {desk && desk.briefs.length > 0 ? (
            <>
              <h3>In the folder {desk.folder}</h3>
              <Names names={desk.briefs.map((b) => b.name)} onTake={(name) => props.onDesk('briefs', name)} />
            </>
          ) : null}
          {desk && desk.examples.length > 0 ? (
            <>
              <h3>Examples</h3>
              <Names names={desk.examples} onTake={(name) => props.onDesk('examples', name)} />
            </>
          ) : null}
        </>
      ) : null}
    </dialog>
  )
}

const Names = ({ names, onTake }: { names: readonly string[]; onTake: (name: string) => void }) => (
  <ul className="names">
    {names.map((name) => (
      <li key={name}>
        <button type="button" className="take" onClick={() => onTake(name)}>
          {name.replace(/\.brief$/i, '').replaceAll('-', ' ')}
        </button>
      </li>
    ))}
  </ul>
)
