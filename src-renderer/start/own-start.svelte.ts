/**
 * What is answered at the start: the motif and what it is made into. A number that was not typed is a first size,
 * round in the units of who starts, and changes with them; what was typed stays as long as it is.
 */
import type { ClosedEnds, KeptPhoto, OutlineKind, Ruler, UnitSystem } from '../../shared-types/project'
import { isBabySize } from '../../src-core/layout/baby-size'
import { isOdd, layingOf, readingsOf } from '../../src-core/motif/ruler'
import type { Laying } from '../../src-core/motif/ruler'
import type { Measured } from '../../src-core/photo/motif'
import type { BlanketForm, Made } from '../kinds/kind'
import { KINDS } from '../kinds/kinds'
import { firstSizes } from '../../src-core/layout/first-sizes'
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
  /** Of what is joined in the round: a bag is closed at the bottom. */
  ends = $state<ClosedEnds>('bottom')
  hung = $state<'straight' | 'swags'>('straight')
  swags = $state<number>(FIRST_SWAGS)
  panel = $state<'rectangle' | 'circle'>('rectangle')
  /** Whether it is for a baby or child, once somebody said so. */
  #forChild = $state<boolean | null>(null)
  #typed = $state.raw<Readonly<Partial<Record<StartNumber, number>>>>({})

  /** What a photo says of the motif. */
  #photo = $state.raw<Measured | undefined>()
  #kept = $state.raw<KeptPhoto | undefined>()
  #colours = $state.raw<readonly string[]>([])

  constructor(unitsNow: () => UnitSystem) {
    this.#unitsNow = unitsNow
  }

  get units(): UnitSystem {
    return this.#unitsNow()
  }

  /** Whether it is for a baby or child: as somebody said, else as its size says. */
  get forChild(): boolean {
    return this.#forChild ?? this.isBabySized
  }
  set forChild(isIt: boolean) {
    this.#forChild = isIt
  }

  /** Whether it is as large as a blanket for a baby; only a blanket asks. */
  get isBabySized(): boolean {
    const size = { width: this.number('width'), height: this.number('height') }
    return this.form === 'flat' && isBabySize(size)
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

  /** Whether a number was typed, or stands there to begin with. */
  isTyped(name: StartNumber): boolean {
    return this.#typed[name] !== undefined
  }

  /** Types a number, or empties it again. */
  type(name: StartNumber, value: number | undefined): void {
    const { [name]: _, ...rest } = this.#typed
    this.#typed = value === undefined ? rest : { ...rest, [name]: value }
  }

  /** Puts what was measured in a photo into the questions about the motif. */
  takePhoto(photo: Measured, kept?: KeptPhoto, colours: readonly string[] = []): void {
    const [lead, second] = ['lead', 'second'] as const
    this.#photo = photo
    this.#kept = kept
    this.#colours = colours
    this.type(second, undefined)
    if (photo.outline === 'traced') {
      const { petals = 0, overTips = 0, overValleys } = photo
      this.outline = 'petals'
      this.petals = petals
      const readings = readingsOf(this.laying, { overTips, overValleys }, 1)
      this.type(lead, readings.lead)
      this.type(second, readings.second)
    } else {
      this.outline = photo.outline
      this.type(lead, photo.across ?? photo.sideToSide)
    }
  }

  /** Whether the motif that is asked about is still the one in the photo: its shape, and as many petals. */
  get isInPhoto(): boolean {
    return this.isTraced || (this.#photo !== undefined && this.outline === this.#photo.outline)
  }

  /** Whether the motif that is asked about is still the one in the photo, with its line. */
  get isTraced(): boolean {
    const photo = this.#photo
    return photo?.outline === 'traced' && this.outline === 'petals' && this.petals === photo.petals
  }

  readonly own: OwnMotif = $derived.by(() => ({
    outline: this.outline,
    petals: this.petals,
    ...(isOdd(this.petals) && { ruler: this.ruler }),
    lead: this.number('lead'),
    second: this.number('second'),
    photo: this.#photo,
    kept: this.isInPhoto ? this.#kept : undefined,
    colours: this.isInPhoto ? this.#colours : [],
  }))

  /** What the second measure is while it is not typed; null where there is none. */
  readonly assumed: number | null = $derived.by(() => secondAssumed(this.own))

  readonly made: Made = $derived.by(() => KINDS[this.kind].start.made(this))
}
