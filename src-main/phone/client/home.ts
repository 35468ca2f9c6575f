/** How far the work has come, and the marks as a text to carry home. */
import { madeText } from '../../../src-core/progress/made-text'
import type { PhoneData } from '../data'
import { PHONE_WORDS as WORDS, progressWords } from '../words'
import { byId } from './dom'
import type { Marks } from './marks'

export function showHome(data: PhoneData, marks: Marks): { refresh(): void } {
  const progress = byId('progress', HTMLElement)
  const bar = byId('bar', HTMLProgressElement)
  const home = byId('home', HTMLTextAreaElement)
  const said = byId('said', HTMLElement)
  const copy = byId('copy', HTMLButtonElement)

  copy.addEventListener('click', () => {
    home.select()
    // A page of a file may not use the clipboard everywhere; the older way may.
    const write = navigator.clipboard?.writeText(home.value) ?? Promise.reject(new Error('no clipboard'))
    write.then(
      () => (said.textContent = WORDS.copied),
      () => (said.textContent = document.execCommand('copy') ? WORDS.copied : WORDS.notCopied),
    )
  })
  byId('clear', HTMLButtonElement).addEventListener('click', () => {
    marks.clear()
    said.textContent = WORDS.cleared
  })
  return {
    refresh() {
      const made = marks.made()
      progress.textContent = progressWords(data.pieces, made.length)
      bar.value = made.length
      const removed = marks.removed()
      home.value = madeText(made, removed)
      said.textContent = marks.kept ? '' : WORDS.notKept
      copy.disabled = made.length + removed.length === 0
    },
  }
}
