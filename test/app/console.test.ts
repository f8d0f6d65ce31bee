import { afterEach, describe, expect, it, vi } from 'vitest'
import { openConsole } from '../../src/app/cli/console.ts'

const { isTTY, columns } = process.stderr
afterEach(() => {
  vi.restoreAllMocks()
  Object.assign(process.stderr, { isTTY, columns })
})

function written(terminal: boolean, speak: (console: ReturnType<typeof openConsole>) => void): string {
  Object.assign(process.stderr, { isTTY: terminal, columns: 20 })
  const write = vi.spyOn(process.stderr, 'write').mockReturnValue(true)
  speak(openConsole())
  return write.mock.calls.map(([text]) => String(text)).join('')
}

describe('progress', () => {
  // ECMA-48 8.3.41: EL, erased to the end of the line
  it('is one line that what is said next takes away', () => {
    const text = written(true, (console) => {
      console.progress('drawing')
      console.say('done')
    })
    expect(text).toBe('drawing\r\u001b[Kdone\n')
  })

  it('is never longer than the line, and not said more often than it can be read', () => {
    const text = written(true, (console) => {
      for (let i = 0; i < 50; i++) console.progress(`drawing the front view, ${i} %`)
    })
    expect(text.startsWith('drawing the front v')).toBe(true)
    expect(text.split('drawing').length - 1).toBeLessThan(50)
    expect(text).not.toMatch(/view/)
    for (const each of ['front', 'top'])
      expect(
        written(true, (c) => {
          c.progress('rear')
          c.progress(each)
        }),
      ).toContain(each)
  })

  it('is nothing without a terminal', () => {
    expect(written(false, (console) => console.progress('drawing'))).toBe('')
  })
})
