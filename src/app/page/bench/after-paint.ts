/** Milliseconds after which is gone on without a frame: a window that nobody sees is given none. */
const NO_FRAME = 100

/** Runs once what was just put on the page has been shown. */
export function afterPaint(run: () => void): void {
  let ran = false
  const once = () => {
    if (ran) return
    ran = true
    clearTimeout(timer)
    run()
  }
  const timer = setTimeout(once, NO_FRAME)
  requestAnimationFrame(() => setTimeout(once))
}
