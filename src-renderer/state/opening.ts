/**
 * Marks that a project is being opened. What kills the page before it shows the project (the memory of one page
 * is finite, and a page that hangs is ended) leaves its mark, so that the next start does not do the same again.
 */

/** Starts that may end before a project is shown; then another one is not tried unasked. */
const MOST_TRIES = 2
const PREFIX = 'petalyard.opening.'

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

/** The page's store; null where it has none, or may not use it. */
export function pageStore(): Store | null {
  try {
    return globalThis.localStorage ?? null
  } catch {
    return null
  }
}

/** A short name of a text: another edit is another text, which may be tried again. */
function nameOf(text: string): string {
  let hash = 0
  for (let at = 0; at < text.length; at++) hash = (Math.imul(hash, 31) + text.charCodeAt(at)) | 0
  return `${PREFIX}${text.length}.${hash >>> 0}`
}

export interface Opening {
  /** Earlier starts ended over this very text. */
  readonly wasCutOff: boolean
  begin(): void
  /** The project is shown. */
  end(): void
}

/** The opening of one text; without a store nothing is known of earlier ones. */
export function openingOf(text: string, store: Store | null): Opening {
  const name = nameOf(text)
  const tries = Number(store?.getItem(name) ?? 0)
  return {
    wasCutOff: tries >= MOST_TRIES,
    begin: () => quietly(() => store?.setItem(name, String(tries + 1))),
    end: () => quietly(() => store?.removeItem(name)),
  }
}

/** A full or refusing store only means that nothing is marked. */
function quietly(act: () => void): void {
  try {
    act()
  } catch {
    return
  }
}
