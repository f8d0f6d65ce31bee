import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Ended, Engine, Superseded } from '../../src/app/page/engine/engine.ts'
import type { Answer, Asked, Drawn } from '../../src/app/page/engine/messages.ts'
import { readBrief } from '../../src/brief/read.ts'

/** A worker that answers only when the test says so. */
class Puppet {
  onmessage: ((event: { data: Answer }) => void) | null = null
  onerror: (() => void) | null = null
  readonly asked: Asked[] = []
  ended = false
  postMessage(asked: Asked): void {
    this.asked.push(asked)
  }
  terminate(): void {
    this.ended = true
  }
  say(data: Answer): void {
    this.onmessage?.({ data })
  }
}

const drawn = (text: string): Drawn => ({
  brief: readBrief(text),
  marks: [],
  dimensions: [],
  features: [],
  faceNames: [],
  edges: [],
  reasons: [],
  sections: [],
  took: 1,
})

let made: Puppet[]
let engine: Engine
const last = () => made.at(-1)!

beforeEach(() => {
  vi.useFakeTimers()
  made = []
  engine = new Engine(
    () => {
      const puppet = new Puppet()
      made.push(puppet)
      return puppet as unknown as Worker
    },
    () => {},
  )
  last().say({ answer: 'ready' })
})
afterEach(() => {
  engine.close()
  vi.useRealTimers()
})

describe('the engine', () => {
  it('gives the drawing of the text that was asked for', async () => {
    const asked = engine.draw('a', 'part  A')
    const { id } = last().asked[0]!
    last().say({ answer: 'drawn', id, drawn: drawn('part  A'), memory: 1 })
    expect((await asked).brief.text).toBe('part  A')
  })

  it('says when a text was passed over for a newer one', async () => {
    const first = engine.draw('a', 'one')
    const second = engine.draw('a', 'two')
    const [one, two] = last().asked
    last().say({ answer: 'passed over', id: one!.id })
    last().say({ answer: 'drawn', id: two!.id, drawn: drawn('two'), memory: 1 })
    await expect(first).rejects.toBeInstanceOf(Superseded)
    expect((await second).brief.text).toBe('two')
  })

  it('starts another worker when one is silent, and asks again', async () => {
    const asked = engine.draw('a', 'part  A')
    await vi.advanceTimersByTimeAsync(20_001)
    expect(made).toHaveLength(2)
    expect(made[0]!.ended).toBe(true)
    last().say({ answer: 'ready' })
    const again = last().asked[0]!
    last().say({ answer: 'drawn', id: again.id, drawn: drawn('part  A'), memory: 1 })
    expect((await asked).brief.text).toBe('part  A')
  })

  it('starts another worker at once when one falls', () => {
    void engine.draw('a', 'part  A').catch(() => {})
    last().onerror?.()
    expect(made).toHaveLength(2)
    expect(last().asked).toHaveLength(1)
  })

  it('gives up over a brief that fells two workers, and goes on with the next', async () => {
    const asked = engine.draw('a', 'part  A')
    const refused = expect(asked).rejects.toThrow('restarted twice')
    last().onerror?.()
    last().onerror?.()
    await refused
    last().say({ answer: 'ready' })
    const next = engine.draw('a', 'part  B')
    const { id } = last().asked.at(-1)!
    last().say({ answer: 'drawn', id, drawn: drawn('part  B'), memory: 1 })
    expect((await next).brief.text).toBe('part  B')
  })

  it('changes a worker that has grown too large while nobody waits', async () => {
    const asked = engine.draw('a', 'part  A')
    last().say({ answer: 'drawn', id: last().asked[0]!.id, drawn: drawn('part  A'), memory: 800 * 2 ** 20 })
    await asked
    await vi.advanceTimersByTimeAsync(1)
    expect(made).toHaveLength(2)
    expect(made[0]!.ended).toBe(true)
  })

  it('says why nothing could be written', async () => {
    const asked = engine.write('part  A', 'pdf')
    last().say({ answer: 'failed', id: last().asked[0]!.id, text: 'there is no sheet to write yet' })
    await expect(asked).rejects.toThrow('there is no sheet')
  })

  /** A part of which a sheet has just been seen. */
  const seen = async (part: string) => {
    const asked = engine.draw(part, 'before')
    last().say({ answer: 'drawn', id: last().asked.at(-1)!.id, drawn: drawn('before'), memory: 1 })
    await asked
  }
  const flagOf = (asked: Asked | undefined) => Atomics.load(asked!.flag!, 0)

  it('ends the drawing of an older text at the next keystroke', async () => {
    await seen('a')
    const older = engine.draw('a', 'one')
    const refused = expect(older).rejects.toBeInstanceOf(Superseded)
    const other = engine.draw('b', 'another part')
    const newer = engine.draw('a', 'two')
    await refused
    const [, one, another, two] = last().asked
    expect([one, another, two].map(flagOf)).toEqual([1, 0, 0])
    for (const { id, text } of [another!, two!]) last().say({ answer: 'drawn', id, drawn: drawn(text), memory: 1 })
    expect((await newer).brief.text).toBe('two')
    expect((await other).brief.text).toBe('another part')
  })

  it('shows a sheet now and then to one who writes without a pause', async () => {
    await seen('a')
    await vi.advanceTimersByTimeAsync(600)
    const older = engine.draw('a', 'one')
    void engine.draw('a', 'two')
    const [, one] = last().asked
    expect(flagOf(one)).toBe(0)
    last().say({ answer: 'drawn', id: one!.id, drawn: drawn('one'), memory: 1 })
    expect((await older).brief.text).toBe('one')
  })

  it('ends a drawing that takes long for a newer text', async () => {
    const refused = expect(engine.draw('a', 'one')).rejects.toBeInstanceOf(Superseded)
    void engine.draw('a', 'two')
    await vi.advanceTimersByTimeAsync(600)
    await refused
    expect(last().asked.map(flagOf)).toEqual([1, 0])
  })

  it('tells what a worker says of its work', async () => {
    const heard: string[] = []
    void engine.draw('a', 'ISO-10303-21;', {}, (words) => heard.push(words))
    const { id, model } = last().asked[0]!
    expect(model).toEqual({})
    last().say({ answer: 'at work', id, words: 'reading, 1 of 2' })
    last().say({ answer: 'at work', id, words: 'drawing the front view, 40 %' })
    expect(heard).toEqual(['reading, 1 of 2', 'drawing the front view, 40 %'])
  })

  it('ends at once what it is told to stop, and goes on in the same worker', async () => {
    const refused = expect(engine.draw('a', 'one', {})).rejects.toBeInstanceOf(Ended)
    engine.stop('a')
    await refused
    const [one] = last().asked
    expect(flagOf(one)).toBe(1)
    last().say({ answer: 'passed over', id: one!.id })
    await vi.advanceTimersByTimeAsync(60_000)
    expect(made).toHaveLength(1)
  })

  it('kills a worker that cannot stop, and asks the new one for what is still wanted', async () => {
    const refused = expect(engine.draw('a', 'one', {})).rejects.toBeInstanceOf(Ended)
    const other = engine.draw('b', 'part  B')
    engine.stop('a')
    await refused
    await vi.advanceTimersByTimeAsync(401)
    expect(made).toHaveLength(2)
    expect(made[0]!.ended).toBe(true)
    expect(last().asked.map((a) => a.text)).toEqual(['part  B'])
    last().say({ answer: 'ready' })
    last().say({ answer: 'drawn', id: last().asked[0]!.id, drawn: drawn('part  B'), memory: 1 })
    expect((await other).brief.text).toBe('part  B')
  })
})
