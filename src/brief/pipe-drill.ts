/** A drill before a pipe tap, as a brief would say it, and where the figure is from. */
export interface PipeDrill {
  readonly size: number
  readonly unit: 'inch' | 'mm'
  readonly source: string
}

const list = (text: string): ReadonlyMap<string, number> =>
  new Map(
    text
      .trim()
      .split(/\s+/)
      .map((pair) => {
        const [name, size] = pair.split(':')
        return [name!, Number(size)]
      }),
  )

/** Drilled straight, not reamed, inches: Machinery's Handbook on ASME B1.20.1, from memory. */
const npt = list('1/16:.25 1/8:.339 1/4:.4375 3/8:.578 1/2:.719 3/4:.922 1:1.156 1-1/4:1.5 1-1/2:1.734 2:2.219')
/** Parallel inside threads of ISO 228-1 (G) and ISO 7-1 (Rp) have one profile, mm: common practice on both, from memory. */
const parallel = list('1/8:8.8 1/4:11.8 3/8:15.25 1/2:19 3/4:24.5 1:30.75 1-1/4:39.5 1-1/2:45.25 2:57')
/** Taper inside threads of ISO 7-1 (Rc), drilled straight, mm, from memory. */
const taper = list('1/8:8.4 1/4:11.2 3/8:14.75 1/2:18.25 3/4:23.75 1:30 1-1/4:38.5 1-1/2:44.5 2:56')

/** The drill for an inside pipe thread by its designation; undefined for other threads and sizes outside the tables. */
export function pipeDrill(thread: string): PipeDrill | undefined {
  const tapered = /^(\d+-\d+\/\d+|\d+\/\d+|\d+)(?:-\d+(?:\.\d+)?)?\s?NPT/i.exec(thread)
  const inch = tapered && npt.get(tapered[1]!)
  if (inch) return { size: inch, unit: 'inch', source: 'ASME B1.20.1, Machinery’s Handbook (from memory)' }
  const whitworth = /^(G|Rp|Rc)\s?(\d+-\d+\/\d+|\d+\/\d+|\d+)/.exec(thread)
  const mm = whitworth && (whitworth[1] === 'Rc' ? taper : parallel).get(whitworth[2]!)
  if (!mm) return undefined
  return { size: mm, unit: 'mm', source: whitworth[1] === 'G' ? 'ISO 228-1 (from memory)' : 'ISO 7-1 (from memory)' }
}

/** `⌀.339`, or `⌀8.6 mm` where the brief is in the other unit. */
export function drillText({ size, unit }: PipeDrill, own: 'inch' | 'mm'): string {
  if (unit === 'mm') return `⌀${size}${own === 'mm' ? '' : ' mm'}`
  if (own === 'mm') return `⌀${Number((size * 25.4).toFixed(1))}`
  return `⌀${size.toFixed(3).replace(/^0/, '')}`
}
