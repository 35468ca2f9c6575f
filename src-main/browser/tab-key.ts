/**
 * The key of this tab, which no other has. A tab that is loaded from its port once Petalyard has left it shows the page
 * of whoever listens there, and that page can read all that this tab keeps: with a key that other tabs use as well it
 * could speak to them as Petalyard.
 */
import { KEY_PATH, KEY_PLACE, KNOWN_PATH } from './envelope'
import { readKey } from './sealed'
import { postSealed } from './sealed-post'

type Store = Pick<Storage, 'getItem' | 'setItem'>

export class TabKey {
  readonly #store: () => Store
  readonly #fromOtherTab: () => Promise<string | null>
  #text = ''

  /** `fromOtherTab` answers with a key that another tab of the browser asked the server for. */
  constructor(store: () => Store, fromOtherTab: () => Promise<string | null>) {
    this.#store = store
    this.#fromOtherTab = fromOtherTab
  }

  /** As `readKey` reads it; empty until there is one. */
  get text(): string {
    return this.#text
  }

  /** What this tab had last; empty where it had none. */
  get former(): string {
    try {
      return this.#store().getItem(KEY_PLACE) ?? ''
    } catch {
      return ''
    }
  }

  /**
   * Takes a new key for this page: for the one that its tab had, which a tab that was copied from it has as well, or
   * from another tab. Throws where the program does not answer.
   */
  async begin(): Promise<boolean> {
    const { former } = this
    const reply = former === '' ? null : await postSealed(former, KEY_PATH, null)
    return this.#take(reply?.status === 200 ? String(reply.body) : await this.#fromOtherTab())
  }

  /**
   * The session of the key was ended: takes one of a session that began since in another tab. Whoever listens by now
   * may have given that one; so the program that this page knows is asked, in the words of the former key.
   */
  async renew(): Promise<boolean> {
    const offered = await this.#fromOtherTab()
    const name = offered === null ? undefined : readKey(offered)?.name
    if (name === undefined) return false
    const reply = await postSealed(this.#text, KNOWN_PATH, name)
    return reply?.status === 200 && reply.body === true && this.#take(offered)
  }

  #take(text: string | null): boolean {
    if (text === null || !readKey(text)) return false
    this.#text = text
    try {
      this.#store().setItem(KEY_PLACE, text)
    } catch {
      // It counts as long as this page.
    }
    return true
  }
}
