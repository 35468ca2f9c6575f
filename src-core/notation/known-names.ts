/** Names that everybody knows, so that a list of abbreviations explains no stitch of its own by them. */
import { canonicalStitch } from '../stitches/terms'
import { isForm } from './vocabulary'
import { wordOf } from './words'

/** "dc = double crochet", "rep = repeat": a list of abbreviations explains no stitch of its own. */
export function isKnown(name: string): boolean {
  const [first = '', ...others] = name.replace(/\(e?s\)$/, '').split('-')
  // "ch-sp = chain space"; "fl-tr: treble into the free front loop" is a stitch of the text's own.
  const ownStitch =
    canonicalStitch(others.at(-1) ?? '', 'US') !== null && canonicalStitch(first, 'US') === null
  if (others.length > 0 && !ownStitch && [first, ...others].every(isKnown)) return true
  const word = wordOf(name.replace(/\(e?s\)$/, ''))
  return word.known ? !isForm(word) : (canonicalStitch(name, 'US') ?? canonicalStitch(name, 'UK')) !== null
}
