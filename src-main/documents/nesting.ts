const QUOTE = 0x22
const BACKSLASH = 0x5c

/**
 * Whether brackets outside of strings nest more than `limit` deep. It looks at the raw text, so that neither
 * a parser nor anything behind it ever meets a value that exhausts the stack.
 */
export function nestsDeeperThan(text: string, limit: number): boolean {
  let depth = 0
  let inString = false
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index)
    if (inString) {
      if (code === BACKSLASH) index++
      else if (code === QUOTE) inString = false
    } else if (code === QUOTE) inString = true
    else if (code === 0x5b || code === 0x7b) {
      depth++
      if (depth > limit) return true
    } else if (code === 0x5d || code === 0x7d) depth--
  }
  return false
}
