/** Numbers are set from their figures, without asking the face anew for each: just as the face sets them. */
import { expect, it } from 'vitest'
import { create } from 'fontkit'
import type { Font } from 'fontkit'
import { packageFile } from '../../../src-main/package-file'
import { Letters } from '../../../src-main/paper/pdf/letters'

it.each(['SourceSans3_400Regular.ttf', 'SourceSans3_600SemiBold.ttf'])('%s sets numbers alike', (file) => {
  const bytes = packageFile('paper', file)
  const letters = new Letters(bytes)
  const font = create(bytes as Buffer) as Font
  const numbers = Array.from({ length: 400 }, (_, i) => String(100 + ((i * 7919) % 99_900)))
  for (const number of [...numbers, '111', '1000', '717', '474']) {
    const { glyphs, positions } = font.layout(number)
    const word = letters.word(number)
    expect(word.glyphs.map(({ id }) => id)).toEqual(glyphs.map(({ id }) => id))
    expect(word.glyphs.flatMap(({ codePoints }) => codePoints)).toEqual(
      [...number].map((figure) => figure.codePointAt(0)),
    )
    const perMille = 1000 / font.unitsPerEm
    expect(word.kerns).toEqual(
      glyphs.map((glyph, i) => Math.round((glyph.advanceWidth - positions[i]!.xAdvance) * perMille)),
    )
    expect(word.width).toBeCloseTo(
      positions.reduce((sum, { xAdvance }) => sum + xAdvance * perMille, 0),
      6,
    )
  }
})
