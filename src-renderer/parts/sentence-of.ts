/** The name of a file, which stays as somebody wrote it. */
const FILE = /^(?:(?!\. )[^:"'‘])*\.(?:petalyard|pdf|html|json|csv|svg|png|jpe?g|zip|txt)\b/i

/** A finding's words as a sentence of its own. */
export const sentenceOf = (words: string): string =>
  FILE.test(words) ? words : words.charAt(0).toUpperCase() + words.slice(1)
