import { useEffect, useState } from 'react'

/** Milliseconds that marks must stand before the paper gives way to them: those of half a word come and go. */
const STANDING = 900

/**
 * Whether the sheet leaves room for the margin. Once marks have stood it does so for as long as the brief lies on the
 * bench, so that the paper does not go to and fro.
 */
export function useMarginRoom(brief: string | undefined, hasMarks: boolean): boolean {
  const [given, setGiven] = useState<string>()
  useEffect(() => {
    if (!hasMarks || !brief) return undefined
    const timer = setTimeout(() => setGiven(brief), STANDING)
    return () => clearTimeout(timer)
  }, [brief, hasMarks])
  return brief !== undefined && given === brief
}
