interface Paper {
  readonly id: string
  /** The part's name. */
  readonly name: string
  readonly number: string | undefined
}

interface PapersProps {
  readonly papers: readonly Paper[]
  readonly onTake: (id: string) => void
  readonly onPutBack: (id: string) => void
}

/** Other sheets on the bench, in a pile under the routing slip: their upper edges show, with number and name. */
export const Papers = ({ papers, onTake, onPutBack }: PapersProps) =>
  papers.length === 0 ? null : (
    <nav className="papers" aria-label="Other briefs on the bench">
      <ul>
        {papers.map(({ id, name, number }) => (
          <li key={id}>
            <button type="button" className="edge" title={name} onClick={() => onTake(id)}>
              {number ? <span className="drawing-number">{number}</span> : null}
              <span className="name">{name}</span>
            </button>
            <button
              type="button"
              className="back"
              aria-label={`Put back ${name} on the shelf`}
              onClick={() => onPutBack(id)}
            >
              put back
            </button>
          </li>
        ))}
      </ul>
    </nav>
  )
