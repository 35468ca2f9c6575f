/** Files that are dropped on something, or pasted while it is there. */

const firstFile = (files: FileList | undefined): File | null => files?.[0] ?? null
const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false

/** Lets an element, or the window, take a file that is dropped; `data-over` stands on `marked` while one hovers. */
export function takesDrops(
  target: HTMLElement | Window,
  onfile: (file: File) => void,
  marked: () => HTMLElement | undefined = () => (target instanceof HTMLElement ? target : undefined),
): () => void {
  const mark = (isOver: boolean): void => {
    marked()?.toggleAttribute('data-over', isOver)
  }
  const over = (event: Event): void => {
    if (!(event instanceof DragEvent) || !hasFiles(event)) return
    // Else the page would give way to the picture.
    event.preventDefault()
    mark(true)
  }
  // Out of the window there is nothing that it comes to; from part to part it stays over the whole.
  const left = (event: Event): void => {
    const to = event instanceof DragEvent ? event.relatedTarget : null
    const isWithin = to instanceof Node && (!(target instanceof Node) || target.contains(to))
    if (!isWithin) mark(false)
  }
  const dropped = (event: Event): void => {
    mark(false)
    if (!(event instanceof DragEvent) || event.defaultPrevented) return
    const file = firstFile(event.dataTransfer?.files)
    if (!file) return
    event.preventDefault()
    onfile(file)
  }
  target.addEventListener('dragover', over)
  target.addEventListener('dragleave', left)
  target.addEventListener('drop', dropped)
  return () => {
    target.removeEventListener('dragover', over)
    target.removeEventListener('dragleave', left)
    target.removeEventListener('drop', dropped)
  }
}

/** Takes a picture that is pasted anywhere in the window; whoever listens last is asked first. */
export function takesPastes(onfile: (file: File) => void): () => void {
  const pasted = (event: ClipboardEvent): void => {
    const file = firstFile(event.clipboardData?.files)
    if (!file || event.defaultPrevented || listeners.at(-1) !== pasted) return
    event.preventDefault()
    onfile(file)
  }
  listeners.push(pasted)
  window.addEventListener('paste', pasted)
  return () => {
    listeners.splice(listeners.indexOf(pasted), 1)
    window.removeEventListener('paste', pasted)
  }
}

const listeners: ((event: ClipboardEvent) => void)[] = []
