/** Headings and yarns as pages print them without signs and letters. The pages are ours. */
import { describe, expect, it } from 'vitest'
import { facts, only } from './facts'

describe('headings without a sign', () => {
  const ITEMS = [
    ['MATERIALS', 'Small amounts of cotton DK in white and yellow'],
    ['HOOK', '3.5mm'],
    ['TENSION', '20 sts and 10 rows to 10 cm over tr'],
    ['MEASUREMENTS', '10 cm across'],
    ['ABBREVIATIONS', 'ch chain; dc double crochet; tr treble; ss slip stitch'],
  ] as const

  it.each(['\n', '  ', ' ', '\t', ':\n', ' - '])('tell as much as with one (%j)', (between) => {
    const page = facts(`DAISY\n\n${ITEMS.map(([label, words]) => label + between + words).join('\n')}`, 'UK')
    expect(only(page, 'hook').map(({ hook }) => hook)).toEqual([3.5])
    expect(only(page, 'yarn').map(({ yarn }) => yarn.name)).toEqual(['Cotton DK, white', 'Cotton DK, yellow'])
    expect(only(page, 'swatch')[0]?.gauge).toEqual({ stitch: 'tr', stitches: 20, rows: 10, over: 100 })
    expect(only(page, 'size')).toHaveLength(1)
  })

  it('in small letters take a wide gap', () => {
    const page = facts(
      'Daisy\nYou will need  DK cotton in Cream, 3.50 mm crochet hook\nSize  10 cm square',
      'UK',
    )
    expect(only(page, 'yarn').map(({ yarn }) => yarn.name)).toEqual(['DK cotton in Cream'])
    expect(only(page, 'size')).toHaveLength(1)
    expect(only(facts('Size matters here\nHook and eye', 'UK'), 'size')).toEqual([])
  })

  it('stand over lists, whose first line is no name', () => {
    const page = facts('MATERIALS:\nDK cotton in white and yellow', 'UK')
    expect(only(page, 'yarn').map(({ yarn }) => yarn.name)).toEqual(['DK cotton, white', 'DK cotton, yellow'])
    expect(only(page, 'name')).toEqual([])
  })
})

describe('yarns in colours without letters', () => {
  it.each([
    ['Materials: DK cotton in pale pink, red and dark green', ['pale pink', 'red', 'dark green']],
    ['Yarn: 1 ball each of white, cream and pink cotton', ['white', 'cream', 'pink']],
    ['YOU WILL NEED\n1 ball each of pink and green 4 ply cotton\n3 mm hook', ['pink', 'green']],
    ['Yarn: worsted weight yarn in red', []],
  ])('are one each: %s', (head, colours) => {
    const names = only(facts(head), 'yarn').map(({ yarn }) => yarn.name ?? '')
    expect(names.filter((name) => name.includes(',')).map((name) => name.split(', ')[1])).toEqual(colours)
  })
})
