import { Component, type ReactNode, useEffect, useState } from 'react'
import { fileNameOf } from '../../file-name.ts'
import { type Kept, takeStock } from '../shelf/shelf.ts'
import { download } from './save-file.ts'

interface Fallen {
  readonly fault?: Error
}

/** Stands in for the bench when a fault of the program has taken it down: nothing that was written is lost. */
export class WhenFallen extends Component<{ readonly children: ReactNode }, Fallen> {
  override state: Fallen = {}

  static getDerivedStateFromError(fault: unknown): Fallen {
    return { fault: fault instanceof Error ? fault : new Error(String(fault)) }
  }

  override render(): ReactNode {
    const { fault } = this.state
    return fault ? <Salvage fault={fault} /> : this.props.children
  }
}

/** `part  Vent bracket`: what a brief is called, read by nothing that may have failed itself. */
const nameOf = ({ text }: Kept): string => /^part\s+(.+)$/m.exec(text)?.[1]?.trim() ?? 'Untitled'

function Salvage({ fault }: { readonly fault: Error }) {
  const [kept, setKept] = useState<readonly Kept[]>([])
  useEffect(() => {
    takeStock().then(setKept, () => {})
  }, [])
  return (
    <main className="fallen" role="alert">
      <h1>The bench has fallen over</h1>
      <p>This is a fault of the program. What you wrote is kept in this browser.</p>
      <button type="button" onClick={() => location.reload()}>
        Set it up again
      </button>
      {kept.length > 0 ? <h2>The briefs, to be taken out as files</h2> : null}
      <ul>
        {kept.map((brief) => (
          <li key={brief.id}>
            <button
              type="button"
              onClick={() => download(`${fileNameOf(nameOf(brief))}.brief`, brief.text, 'text/plain')}
            >
              {nameOf(brief)}
            </button>
          </li>
        ))}
      </ul>
      <p className="fault">For a report of the fault: {fault.message}</p>
    </main>
  )
}
