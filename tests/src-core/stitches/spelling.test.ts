/** American text is American and British text is British, from one source in British spelling. */
import { describe, expect, it } from 'vitest'
import { inSpelling, isSpelledTwoWays, respelled, saying } from '../../../src-core/stitches/spelling'
import { textsForPeople } from '../../texts-for-people'

/** A place in the file: "layout.items[0].colourway". */
const isPath = (text: string): boolean => /^[\w.[\]-]+$/.test(text) && /[.[-]/.test(text)

describe('spelling', () => {
  // American and British forms as general dictionaries have them; common practice, no source.
  it.each([
    ['Colours, centred on the grey centre', 'Colors, centered on the gray center'],
    ['colourways of neighbouring fibres', 'colorways of neighboring fibers'],
    ['Anticlockwise, 12 metres towards you', 'Counterclockwise, 12 meters toward you'],
    ['labelling under a licence, cancelled', 'labeling under a license, canceled'],
    ['Nothing here, nor in multicoloured or parametres', 'Nothing here, nor in multicoloured or parametres'],
  ])('%s', (british, american) => {
    expect(inSpelling(british, 'UK')).toBe(british)
    expect(inSpelling(british, 'US')).toBe(american)
  })

  it('leaves the names of places and what people wrote', () => {
    expect(inSpelling('{colour}: {count|colour|colours}', 'US')).toBe('{colour}: {count|color|colors}')
    const name = 'Grey Fibre'
    expect(saying('US')`Colour of ${name}: ${3} metres`).toBe('Color of Grey Fibre: 3 meters')
    expect(saying('UK')`Colour of ${name}`).toBe('Colour of Grey Fibre')
  })

  it('stands in front of every text that is spelled in two ways', () => {
    // Spelled where findings, fields, joining rounds and commands are told; the reader knows both; help and pages are British.
    const elsewhere =
      /^(docs\/|README|src-core\/(findings|fields|notation|limits|letters\/texts|checks\/references|colour\/letters|joining-round)|src-main\/(command\/(?!reports)|paper\/(csv|csv-kit|picture)\.ts)|shared-types\/commands)/
    const unspelled = textsForPeople()
      .filter(
        ({ path, text, spelled }) =>
          !spelled && !elsewhere.test(path) && !isPath(text) && isSpelledTwoWays(text),
      )
      .map(({ path, line, text }) => `${path}:${line}: ${text}`)
    expect(unspelled).toEqual([])
  })

  it('has British sources: no American word is written by hand', () => {
    const american =
      /\b(colors?(?!-)|colorways?|centers?|centered|neighbors?|fibers?|gray|counterclockwise|counter-clockwise|meters?|labeled|canceled)\b/i
    const written = textsForPeople()
      .filter(({ path, text }) => !/^(docs\/|README|src-core\/notation\/)/.test(path) && american.test(text))
      .map(({ path, line, text }) => `${path}:${line}: ${text}`)
    expect(written).toEqual([])
  })
})

it('a designer’s text is spelled for its edition where it is printed in other terms, and only there', () => {
  const american =
    'Change to the color of the centers. Color B: join to its Neighbor, yarn “Centerfold Gray”.'
  const british =
    'Change to the colour of the centres. Colour B: join to its Neighbour, yarn “Centerfold Gray”.'
  expect(respelled(american, 'US', 'UK')).toBe(british)
  expect(respelled(british, 'UK', 'US')).toBe(american)
  expect(respelled(american, 'US', 'US')).toBe(american)
  expect(respelled(american, 'UK', 'UK')).toBe(american)
})
