import { useCallback, useEffect, useState } from 'react'

/** Milliseconds that a notice stays. */
const STAYS = 8000

/** What the page says to what was just done, until it goes by itself. */
export function useNotice(): { readonly notice: string | undefined; readonly tell: (text: string) => void } {
  const [notice, setNotice] = useState<string>()
  useEffect(() => {
    if (!notice) return undefined
    const timer = setTimeout(() => setNotice(undefined), STAYS)
    return () => clearTimeout(timer)
  }, [notice])
  return { notice, tell: useCallback((text: string) => setNotice(text), []) }
}
