import type { AngleStock, OutlineMove, Stock, TurnedStock } from './brief.ts'
import { dia, printAngle, printSize } from './print-size.ts'

const p = printSize
const opposite = { rear: 'front', front: 'rear', left: 'right', right: 'left' } as const

/** Keyword and lines of a stock statement in canonical form. */
export function printStock(stock: Stock): { keyword: string; lines: string[] } {
  switch (stock.kind) {
    case 'plate': {
      const face = stock.face === 'top' ? '' : `, face ${stock.face}`
      return { keyword: 'plate', lines: [`${p(stock.length)} × ${p(stock.width)} × ${p(stock.thickness)}${face}`] }
    }
    case 'block':
      return { keyword: 'block', lines: [`${p(stock.length)} × ${p(stock.width)} × ${p(stock.height)}`] }
    case 'flat': {
      const face = stock.face === 'top' ? '' : `, face ${stock.face}`
      return {
        keyword: 'flat bar',
        lines: [`${p(stock.width)} × ${p(stock.thickness)}, ${p(stock.length)} long${face}`],
      }
    }
    case 'channel':
    case 'tee': {
      const section = `${p(stock.height)} high × ${p(stock.width)} wide × ${p(stock.thickness)} thick`
      return { keyword: stock.kind, lines: [`${section}, ${p(stock.length)} long, axis ${stock.lie}`] }
    }
    case 'bar':
      return { keyword: 'round bar', lines: [`${dia(stock.diameter)}, ${p(stock.length)} long, axis ${stock.lie}`] }
    case 'tube': {
      const inner = [stock.inside ? `${dia(stock.inside)} inside` : '', stock.wall ? `wall ${p(stock.wall)}` : '']
      const sizes = [`${dia(stock.outside)} outside`, ...inner.filter((t) => t), `${p(stock.length)} long`]
      return { keyword: 'tube', lines: [`${sizes.join(', ')}, axis ${stock.lie}`] }
    }
    case 'disc': {
      return { keyword: 'disc', lines: [`${dia(stock.diameter)} × ${p(stock.thickness)}, outer face ${stock.face}`] }
    }
    case 'angle':
      return { keyword: 'angle', lines: printAngleStock(stock) }
    case 'turned':
      return { keyword: 'turned', lines: printTurned(stock) }
    case 'outline': {
      return {
        keyword: 'outline',
        lines: [`${p(stock.thickness)} thick, face ${stock.face}`, ...wrap(stock.moves.map(printMove), '; ')],
      }
    }
  }
}

function printAngleStock(s: AngleStock): string[] {
  const first = [
    ...(s.make ? [s.make] : []),
    s.thickness.tolerance?.kind === 'stock' ? p(s.thickness) : `${p(s.thickness)} thick`,
    ...(s.insideRadius ? [`inside R ${p(s.insideRadius)}`] : []),
    ...(s.toeRadius ? [`toe R ${p(s.toeRadius)}`] : []),
  ]
  const second = `upright ${p(s.uprightHeight)} high, at ${s.uprightAt}; base ${p(s.baseDepth)} toward ${opposite[s.uprightAt]}; length ${p(s.length)}`
  return [first.join(', '), second]
}

function printTurned(s: TurnedStock): string[] {
  const widest = Math.max(...s.steps.map((step) => step.name.text.length))
  const steps = s.steps.map(({ name, diameter, thread, endDiameter, taper: by, length }) => {
    const rate = by ? ` ${by.rate.text}${by.toward ? ` toward ${by.toward}` : ''}` : ''
    const tapered = endDiameter || by ? ` tapered${rate}${endDiameter ? ` to ${dia(endDiameter)}` : ''}` : ''
    const taper = `${by?.given === 'small' ? ' small end,' : ''}${tapered}`
    const long = length.kind === 'to' ? `to ${p(length.size)}` : `${p(length.size)} long`
    return `${name.text.padEnd(widest)}  ${thread ? thread.text : dia(diameter)}${taper}, ${long}`
  })
  return [`axis ${s.lie}${s.datum ? `; lengths from ${s.datum.text}` : ''}`, ...steps]
}

function printMove(move: OutlineMove): string {
  switch (move.kind) {
    case 'by':
      return `${move.way} ${p(move.size)}`
    case 'to':
      return `to ${p(move.across)} across, ${p(move.up)} up`
    case 'slope':
      return `slope ${move.acrossWay} ${p(move.across)} ${move.upWay} ${p(move.up)}`
    case 'lean':
      return `slope ${move.way} ${p(move.size)} ${move.toward} at ${printAngle(move.angle)}`
    case 'arc':
      return `arc R ${p(move.radius)} to ${p(move.across)} across, ${p(move.up)} up, turning ${move.turn}`
    case 'arc by length':
      return `arc R ${p(move.radius)}, ${p(move.length)} long, turning ${move.turn}`
    case 'close':
      return 'close'
  }
}

const widestLine = 96

/** Joins phrases into lines of a readable width; a line end parts them as a semicolon does. */
export function wrap(phrases: readonly string[], between: string): string[] {
  const lines: string[] = []
  let line = ''
  for (const phrase of phrases) {
    if (line && line.length + between.length + phrase.length > widestLine) {
      lines.push(line)
      line = phrase
    } else line = line ? line + between + phrase : phrase
  }
  if (line) lines.push(line)
  return lines
}
