/**
 * What is answered at the start: the motif and what it is made into. A number that was not typed is a first size,
 * round in the units of who starts, and changes with them; what was typed stays as long as it is.
 */
import type { OutlineKind, Ruler, UnitSystem } from '../../shared-types/project'
import { isOdd, layingOf } from '../../src-core/motif/ruler'
import type { Laying } from '../../src-core/motif/ruler'
import type { BlanketForm, Made } from '../kinds/kind'
import { KINDS } from '../kinds/kinds'
import { firstSizes } from '../state/edits/first-sizes'
import type { LayoutKind } from '../state/edits/layout-kind'
import { FIRST_SWAGS, secondAssumed } from './own-motif'
import type { OwnMotif } from './own-motif'

/** The numbers with a unit, in mm. */
export type StartNumber =
  | 'lead'
  | 'second'
  | 'width'
  | 'height'
  | 'wingspan'
  | 'depth'
  | 'around'
  | 'tall'
  | 'length'
  | 'wall'
  | 'across'
  | 'down'

export class OwnStart {
  readonly #unitsNow: () => UnitSystem
  outline = $state<OutlineKind>('petals')
  petals = $state(6)
  ruler = $state<Ruler>('opposite')
  kind = $state<LayoutKind>('blanket')
  form = $state<BlanketForm>('flat')
  hung = $state<'straight' | 'swags'>('straight')
  swags = $state<number>(FIRST_SWAGS)
  panel = $state<'rectangle' | 'circle'>('rectangle')
  #typed = $state.raw<Readonly<Partial<Record<StartNumber, number>>>>({})

  constructor(unitsNow: () => UnitSystem) {
    this.#unitsNow = unitsNow
  }

  get units(): UnitSystem {
    return this.#unitsNow()
  }

  /** How the ruler lies on the motif. */
  get laying(): Laying {
    return this.outline === 'petals' ? layingOf(this.petals, this.ruler) : 'across'
  }

  /** A number in mm; undefined for a second measure that was not typed. */
  number(name: 'second'): number | undefined
  number(name: Exclude<StartNumber, 'second'>): number
  number(name: StartNumber): number | undefined {
    const typed = this.#typed[name]
    if (typed !== undefined || name === 'second') return typed
    const first = firstSizes(this.units)
    switch (name) {
      case 'lead':
        return first.motif[this.outline]
      case 'wingspan':
        return first.shawl.width
      case 'depth':
        return first.shawl.height
      case 'around':
        return first.bag.around
      case 'tall':
        return first.bag.height
      case 'length':
        return first.cord.length
      case 'wall':
        return first.wall
      case 'across':
      case 'down':
        return first.panel.across
      default:
        return first.blanket[name]
    }
  }

  /** Types a number, or empties it again. */
  type(name: StartNumber, value: number | undefined): void {
    const { [name]: _, ...rest } = this.#typed
    this.#typed = value === undefined ? rest : { ...rest, [name]: value }
  }

  readonly own: OwnMotif = $derived.by(() => ({
    outline: this.outline,
    petals: this.petals,
    ...(isOdd(this.petals) && { ruler: this.ruler }),
    lead: this.number('lead'),
    second: this.number('second'),
  }))

  /** What the second measure is while it is not typed; null where there is none. */
  readonly assumed: number | null = $derived.by(() => secondAssumed(this.own))

  readonly made: Made = $derived.by(() => KINDS[this.kind].start.made(this))
}
