/** One motif in its yarns, and the key of all colourways, as pictures. */
import type { MotifAccount, Plan } from '../../shared-types/plan'
import type { Figure, FigureItem, MeasureText } from './figure'
import { drawText, placeFigure, QUIET_INK, useAt } from './figure'
import { keySwatch } from './key-swatch'
import { capitalDrop } from './lettering'
import type { ColourwayMark } from './marks'
import { colourwayMarks, fillerMarks } from './marks'
import { motifSymbol } from './motif-symbol'

/** mm that a motif is drawn across: its outline is as strong as in print. */
const ACROSS = 90
/** mm: a swatch of the key, the air between two, and before the words. */
const KEY = { swatch: 16, air: 4, before: 5, line: 6 } as const
/** Points. */
const TYPE = { name: 12, yarns: 10 } as const

const accountsOf = ({ accounts, motif, fillerMotifs }: Plan): MotifAccount[] => [
  ...(accounts.length > 0 ? accounts : motif ? [motif] : []),
  ...fillerMotifs,
]

/** A motif that is placed, by its id; the one that is arranged where none is said; undefined where there is none. */
export const pictureMotif = (plan: Plan, id?: string): MotifAccount | undefined =>
  accountsOf(plan).find((account) => id === undefined || account.id === id)

/** Every colourway that is placed, with what it is a colourway of. */
export function pictureColourways(
  plan: Plan,
): readonly { readonly mark: ColourwayMark; readonly motif: MotifAccount }[] {
  const byId = new Map(plan.settled.colourways.map((colourway) => [colourway.id, colourway.motif]))
  return [...colourwayMarks(plan), ...fillerMarks(plan)].flatMap((mark) => {
    const motif = pictureMotif(plan, byId.get(mark.id)) ?? pictureMotif(plan)
    return motif ? [{ mark, motif }] : []
  })
}

/** A motif as it looks in a colourway, its own top up. */
export function motifPicture(motif: MotifAccount, mark: ColourwayMark | null): Figure {
  const scale = ACROSS / (motif.overTips || 1)
  const symbol = motifSymbol(motif, { scale, turn: 0, look: 'colour', mark, disc: 0 })
  const { x, y, width, height } = symbol.bounds
  return { width, height, items: [useAt(symbol, -x, -y)] }
}

/** All colourways below each other: how each looks, its letter and name, its yarns. */
export function keyPicture(plan: Plan, measure: MeasureText): Figure {
  const left = KEY.swatch + KEY.before
  let width = 0
  const rows = pictureColourways(plan).flatMap(({ mark, motif }, i): FigureItem[] => {
    const y = i * (KEY.swatch + KEY.air)
    const name = [mark.code, mark.name].filter((part) => part !== '').join('  ')
    const yarns = mark.slots.map(({ slot, yarnName }) => `${slot}: ${yarnName}`).join(', ')
    const line = (
      text: string,
      size: number,
      weight: 'bold' | 'regular',
      middle: number,
      colour?: string,
    ) => {
      width = Math.max(width, left + measure(text, size, weight))
      return drawText(text, left, middle + capitalDrop(size), size, { weight, ...(colour && { colour }) })
    }
    const middle = y + KEY.swatch / 2
    return [
      placeFigure(keySwatch(motif, mark, 'colour', 0, KEY.swatch), 0, y),
      line(name, TYPE.name, 'bold', middle - KEY.line / 2),
      line(yarns, TYPE.yarns, 'regular', middle + KEY.line / 2, QUIET_INK),
    ]
  })
  const height = Math.max(0, pictureColourways(plan).length * (KEY.swatch + KEY.air) - KEY.air)
  return { width: Math.max(width, left), height, items: rows }
}
