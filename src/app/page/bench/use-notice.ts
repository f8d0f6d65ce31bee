import { useCallback, useEffect, useState } from 'react'

/** Milliseconds that a notice stays. */
const STAYS = 8000

export interface Notices {
  readonly notice: string | undefined
  readonly tell: (text: string) => void
  readonly putAway: () => void
}

/** What the page says to what was just done, until it goes by itself or is put away. */
export function useNotice(): Notices {
  const [notice, setNotice] = useState<string>()
  useEffect(() => {
    if (!notice) return undefined
    const timer = setTimeout(() => setNotice(undefined), STAYS)
    return () => clearTimeout(timer)
  }, [notice])
  return {
    notice,
    tell: useCallback((text: string) => setNotice(text), []),
    putAway: useCallback(() => setNotice(undefined), []),
  }
}
