import type { Locator, Page } from 'playwright-core'

/**
 * Seconds of the keystroke-level model: Card, Moran and Newell, "The keystroke-level model for user performance time with
 * interactive systems", Communications of the ACM 23 (1980) (from memory). A key by who is no typist, pointing at
 * something, a press of the button, a hand going between mouse and keys, and making up one's mind.
 */
const SECONDS = { key: 0.28, point: 1.1, press: 0.2, hand: 0.4, mind: 1.35 }

/** A person's way through the page, counted. One action is a click, a key of its own, or a run of letters. */
export class Walk {
  actions = 0
  #keys = 0
  #clicks = 0
  #hands = 0
  #hand: 'mouse' | 'keys' = 'mouse'
  readonly page: Page

  constructor(page: Page) {
    this.page = page
  }

  #with(hand: 'mouse' | 'keys'): void {
    this.actions++
    if (this.#hand !== hand) this.#hands++
    this.#hand = hand
  }

  async click(what: Locator): Promise<void> {
    this.#with('mouse')
    this.#clicks++
    await what.click({ timeout: 30_000 })
  }

  async button(name: string): Promise<void> {
    await this.click(this.page.getByRole('button', { name, exact: true }))
  }

  /** A click into a field, all of which is then written over. */
  async fill(name: string, text: string): Promise<void> {
    await this.click(this.page.getByLabel(name, { exact: true }))
    await this.page.keyboard.press('Control+a')
    await this.type(text)
  }

  async type(text: string): Promise<void> {
    this.#with('keys')
    this.#keys += text.length
    await this.page.keyboard.type(text)
  }

  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      this.#with('keys')
      this.#keys += key.split('+').length
      await this.page.keyboard.press(key)
    }
  }

  /** Seconds that a person would take, a mind made up for each action: an estimate, no measurement. */
  get estimate(): number {
    return (
      this.#keys * SECONDS.key +
      this.#clicks * (SECONDS.point + SECONDS.press) +
      this.#hands * SECONDS.hand +
      this.actions * SECONDS.mind
    )
  }
}
