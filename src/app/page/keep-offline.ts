/** Milliseconds after opening before the page's files are kept: not while the first sheet is being drawn. */
const AFTER = 4000

/** Keeps the page's files in the browser (offline.ts), where it may: on this machine, or over an encrypted way. */
export function keepOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  setTimeout(() => {
    // Where the browser keeps nothing, the page needs its server; that is no fault.
    navigator.serviceWorker.register('./offline.js', { type: 'module' }).catch(() => {})
  }, AFTER)
}
