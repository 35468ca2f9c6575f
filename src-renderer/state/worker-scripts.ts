/**
 * The scripts of workers, kept from when the page was loaded. A browser fetches a script whenever a worker starts; once
 * Petalyard has left its port that would be the script of whoever listens there, and a worker is given the project.
 */

export class WorkerScripts {
  readonly #load: (address: string) => Promise<Blob>
  /** By their addresses; null once one could not be had. */
  readonly #kept = new Map<string, string | null>()

  constructor(load: (address: string) => Promise<Blob>) {
    this.#load = load
  }

  /** To be called as the page begins. */
  async keep(address: string): Promise<void> {
    const script = await this.#load(address).catch(() => null)
    this.#kept.set(address, script && URL.createObjectURL(script))
  }

  /** Where a worker that starts now has its script; until it is kept, where the page itself is from. */
  of(address: string): string {
    const kept = this.#kept.get(address)
    if (kept === null) throw new Error('its script could not be loaded')
    return kept ?? address
  }
}

const scripts = new WorkerScripts(async (address) => {
  const answered = await fetch(address)
  if (!answered.ok) throw new Error(answered.statusText)
  return answered.blob()
})

/** On the desktop nobody else answers for the program's own files. */
const isInBrowser = () => typeof Worker !== 'undefined' && globalThis.location?.protocol.startsWith('http')

/** Remembers the script of a worker: called once, when the page begins. */
export function keepScript(address: string): string {
  if (isInBrowser()) void scripts.keep(address)
  return address
}

export const startFrom = (address: string): Worker => new Worker(scripts.of(address), { type: 'module' })
