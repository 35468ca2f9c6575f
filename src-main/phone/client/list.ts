/** All motifs row by row, each with its box to tick; a row is written once it is opened. */
import type { PhoneData } from '../data'
import { PHONE_WORDS as WORDS, rowWords } from '../words'
import { byId, written } from './dom'
import type { Marks } from './marks'

export function showList(data: PhoneData, marks: Marks, onShow: (at: number) => void): { refresh(): void } {
  const rows = new Map<number, number[]>()
  data.pieces.forEach(({ row }, i) => rows.set(row, [...(rows.get(row) ?? []), i]))
  const parts = [...rows]
    .sort(([a], [b]) => a - b)
    .map(([row, places]) => {
      const part = document.createElement('details')
      const summary = written('summary', '')
      part.append(summary)
      const boxes = new Map<string, HTMLInputElement>()
      part.addEventListener('toggle', () => {
        if (!part.open || boxes.size > 0) return
        const list = document.createElement('ul')
        for (const at of places) list.append(entry(data, marks, at, boxes, onShow))
        part.append(list)
      })
      const own = places.map((at) => data.pieces[at]!.id).filter((id) => id !== '')
      return {
        part,
        refresh(): void {
          summary.textContent = rowWords(
            data.kind,
            row,
            own.filter((id) => marks.isMade(id)).length,
            own.length,
          )
          for (const [id, box] of boxes) box.checked = marks.isMade(id)
        },
      }
    })
  byId('list', HTMLElement).replaceChildren(...parts.map(({ part }) => part))
  return { refresh: () => parts.forEach(({ refresh }) => refresh()) }
}

function entry(
  data: PhoneData,
  marks: Marks,
  at: number,
  boxes: Map<string, HTMLInputElement>,
  onShow: (at: number) => void,
): HTMLElement {
  const { id, label, name, stands, way } = data.pieces[at]!
  const line = document.createElement('li')
  const words = [label, name === 'motif' ? '' : name, stands, data.ways[way]?.code]
    .filter(Boolean)
    .join(' · ')
  if (id === '') line.append(written('span', words))
  else {
    const box = document.createElement('input')
    box.type = 'checkbox'
    box.checked = marks.isMade(id)
    box.addEventListener('change', () => marks.set(id, box.checked))
    boxes.set(id, box)
    const name = document.createElement('label')
    name.append(box, written('span', words))
    line.append(name)
  }
  const show = written('button', WORDS.show(label))
  show.type = 'button'
  show.addEventListener('click', () => onShow(at))
  line.append(show)
  return line
}
