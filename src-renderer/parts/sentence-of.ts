/** A finding's words as a sentence of its own. */
export const sentenceOf = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
