interface PapersProps {
  readonly papers: readonly { readonly id: string; readonly name: string }[]
  readonly onTake: (id: string) => void
  readonly onPutBack: (id: string) => void
}

/** Other briefs that lie on the bench, under the one being worked on. */
export const Papers = ({ papers, onTake, onPutBack }: PapersProps) =>
  papers.length === 0 ? null : (
    <nav className="papers" aria-label="Other briefs on the bench">
      {papers.map(({ id, name }) => (
        <span key={id}>
          <button type="button" onClick={() => onTake(id)}>
            {name}
          </button>
          <button type="button" aria-label={`Put ${name} back on the shelf`} onClick={() => onPutBack(id)}>
            ×
          </button>
        </span>
      ))}
    </nav>
  )
