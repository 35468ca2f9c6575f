/** Copies a text as a person would, by selecting it: the window has no leave to write to the clipboard by itself. */
export function copyText(text: string): boolean {
  const field = window.document.createElement('textarea')
  const focused = window.document.activeElement
  field.value = text
  field.setAttribute('aria-hidden', 'true')
  field.style.position = 'fixed'
  field.style.opacity = '0'
  window.document.body.append(field)
  field.focus({ preventScroll: true })
  field.select()
  const isCopied = window.document.execCommand('copy')
  field.remove()
  if (focused instanceof HTMLElement) focused.focus()
  return isCopied
}
