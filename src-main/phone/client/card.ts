/** The motif that is selected: where it stands, how it is joined, in words and as a picture. */
import type { PhoneData } from '../data'
import { wordsOf } from '../packed'
import { capital } from '../../../src-core/figures/words'
import { PHONE_WORDS as WORDS } from '../words'
import { byId, drawn, written } from './dom'
import type { Marks } from './marks'

/** The picture reaches this much farther than the motif. */
const AROUND = 2.1

interface Card {
  show(at: number): void
  refresh(): void
}

export function showCard(data: PhoneData, marks: Marks, onSelect: (at: number) => void): Card {
  const where = byId('where', HTMLElement)
  const about = byId('about', HTMLElement)
  const picture = byId('picture', SVGSVGElement)
  const petals = byId('petals', SVGGElement)
  const words = byId('words', HTMLElement)
  const made = byId('made', HTMLInputElement)
  const [previous, next, nextToMake] = ['previous', 'next', 'next-to-make'].map((id) =>
    byId(id, HTMLButtonElement),
  )
  let shown = -1

  const toMake = (): number => {
    const open = (at: number): boolean => {
      const id = data.pieces[at]?.id ?? ''
      return id !== '' && !marks.isMade(id)
    }
    const order = data.pieces.map((_, i) => (i + shown + 1) % data.pieces.length)
    return order.find(open) ?? -1
  }
  previous!.addEventListener('click', () => onSelect(shown - 1))
  next!.addEventListener('click', () => onSelect(shown + 1))
  nextToMake!.addEventListener('click', () => onSelect(toMake()))
  made.addEventListener('change', () => marks.set(data.pieces[shown]?.id ?? '', made.checked))

  const refresh = (): void => {
    const piece = data.pieces[shown]
    made.checked = piece !== undefined && marks.isMade(piece.id)
    previous!.disabled = shown <= 0
    next!.disabled = shown >= data.pieces.length - 1
    nextToMake!.disabled = toMake() < 0
  }
  return {
    refresh,
    show(at) {
      const piece = data.pieces[at]
      if (!piece) return
      shown = at
      const way = data.ways[piece.way]
      const colours = [way?.code, way?.name, way?.yarns].filter(Boolean).join(' · ')
      where.replaceChildren(
        written('h2', WORDS.piece(piece)),
        written('p', [piece.stands, colours].filter(Boolean).join(' · '), 'where'),
      )
      about.hidden = false
      made.closest('p')!.hidden = piece.id === ''
      const lines = (wordsOf(data, piece) || WORDS.noWords).split('; ')
      words.replaceChildren(...lines.map((line) => written('li', capital(line))))
      const reach = Math.max(piece.reach * AROUND, 4)
      picture.setAttribute('viewBox', `${piece.x - reach} ${piece.y - reach} ${2 * reach} ${2 * reach}`)
      picture.setAttribute('aria-label', WORDS.picture(WORDS.piece(piece)))
      const joined = new Set(piece.joined)
      petals.replaceChildren(
        drawn('circle', {
          cx: piece.x,
          cy: piece.y,
          r: piece.reach + 0.4,
          fill: 'none',
          stroke: '#1d4d3f',
          'stroke-width': reach / 90,
          'stroke-dasharray': `${reach / 30} ${reach / 40}`,
        }),
        ...(data.petals[piece.petals] ?? []).flatMap(([x, y, number]) =>
          petal(piece.x + x * 0.76, piece.y + y * 0.76, number, joined.has(number), reach / 13),
        ),
      )
      refresh()
    },
  }
}

/** A petal's number on its disc; one that is joined has a ring. */
function petal(x: number, y: number, number: number, joined: boolean, size: number): SVGElement[] {
  const label = drawn('text', {
    x,
    y: y + size * 0.36,
    'font-size': size * 1.05,
    'text-anchor': 'middle',
    'font-weight': joined ? 700 : 400,
    fill: '#111111',
  })
  label.textContent = String(number)
  const ring = joined
    ? { stroke: '#a3260f', 'stroke-width': size * 0.24 }
    : { stroke: '#777777', 'stroke-width': size * 0.06 }
  return [drawn('circle', { cx: x, cy: y, r: size * 0.8, fill: '#ffffff', ...ring }), label]
}
