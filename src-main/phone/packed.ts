/** The data of the page as it stands in the file: what every piece has, without repeating its names. */
import type { PhoneData, PhonePiece } from './data'
import type { Runs } from './drawing'

type Row = readonly [
  id: string,
  label: string,
  name: string,
  stands: string,
  row: number,
  way: number,
  x: number,
  y: number,
  reach: number,
  petals: number,
  words: number,
  joined: readonly number[],
  figures: readonly number[],
]

type Packed = Omit<PhoneData, 'pieces'> & { readonly pieces: readonly Row[]; readonly drawing: Runs }

/** JSON that may stand in a script element. */
export function packed({ pieces, ...data }: PhoneData, drawing: Runs): string {
  const rows = pieces.map((p): Row => [
    p.id,
    p.label,
    p.name,
    p.stands,
    p.row,
    p.way,
    p.x,
    p.y,
    p.reach,
    p.petals,
    p.words,
    p.joined,
    p.figures,
  ])
  const whole: Packed = { ...data, pieces: rows, drawing }
  return JSON.stringify(whole).replace(/</g, '\\u003c')
}

/** The data that `packed` wrote. */
export function unpacked(json: string): PhoneData & { readonly drawing: Runs } {
  const { pieces, ...data } = JSON.parse(json) as Packed
  return {
    ...data,
    pieces: pieces.map(
      ([id, label, name, stands, row, way, x, y, reach, petals, words, joined, figures]): PhonePiece => ({
        ...{ id, label, name, stands, row, way, x, y, reach, petals, words, joined, figures },
      }),
    ),
  }
}

/** What is done with a piece, its figures back in their places; '' where nothing is said. */
export function wordsOf(data: Pick<PhoneData, 'words'>, { words, figures }: PhonePiece): string {
  let next = 0
  return (data.words[words] ?? '').replace(/#/g, () => String(figures[next++] ?? '#'))
}
