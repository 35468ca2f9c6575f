/** A letter of a colour within a motif is never taken for that of a colourway. */
import { describe, expect, it } from 'vitest'
import { colourLetters, slotWords } from '../../../src-main/paper/words'
import { flowers } from './projects'
import { pagesOf } from './kits'

const mark = (code: string, ...slots: string[]) => ({ code, slots: slots.map((slot) => ({ slot })) })

describe('letters of colours', () => {
  it('are those of the motif that a colourway has, too', () => {
    const marks = [mark('A', 'color A', 'color B', 'color C'), mark('B', 'color A', 'color B', 'color C')]
    expect(colourLetters(marks, 'US')).toEqual(['color A', 'color B'])
    expect(colourLetters(marks, 'UK')).toEqual(['colour A', 'colour B'])
    expect(colourLetters([mark('A', 'Centre', 'Petals')], 'US')).toEqual([])
    expect(colourLetters([mark('', 'color A')], 'US')).toEqual([])
  })

  it('stand before the yarn, where names of parts stand behind it', () => {
    const slots = [
      { slot: 'color A', yarnName: 'Slate' },
      { slot: 'color B', yarnName: 'Oatmeal' },
    ]
    expect(slotWords(slots, 'US')).toBe('color A: Slate, color B: Oatmeal')
    expect(slotWords([{ slot: 'Petals', yarnName: 'Slate' }, slots[1]!], 'UK')).toBe(
      'Slate petals, colour B: Oatmeal',
    )
  })

  it('are explained beside the map', () => {
    const plain = flowers()
    const slot = Object.keys(plain.colourways![0]!.yarns!)[0]!
    const code = plain.colourways![0]!.code ?? 'A'
    const named = JSON.stringify(plain).replaceAll(`"${slot}"`, `"color ${code}"`)
    const lettered = JSON.parse(named) as typeof plain
    const words = (project: typeof plain) => JSON.stringify(pagesOf(project, { sheets: ['map'] }))
    expect(words(plain)).not.toContain('stands for a whole motif')
    expect(words(lettered)).toContain('within each motif')
  })
})
