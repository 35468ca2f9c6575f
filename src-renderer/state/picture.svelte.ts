/** Which picture of the project is saved: what it shows, how large, on which ground. Not part of the project. */
import type { PictureChoice, PictureFormat, PictureSubject } from '../../shared-types/pictures'
import { PICTURE_WIDTH } from '../../shared-types/pictures'
import { workedRounds } from '../../src-core/accounts'
import { PAPER } from '../../src-core/figures/figure'
import { pictureColourways } from '../../src-core/figures/motif-picture'
import { layoutKindOf } from '../../src-core/plans/layouts'
import type { DocumentState } from './document.svelte'

export type Ground = 'white' | 'none' | 'colour'

interface PictureOffer {
  /** Tells it from the others: "motif m1". */
  readonly value: string
  readonly label: string
  readonly of: PictureSubject
  readonly motif?: string
}

/** What a picture of the whole is called. */
const WHOLE = { blanket: 'The blanket', garland: 'The garland', applique: 'The panel' } as const
/** The same with its numbers. */
const NUMBERED = {
  blanket: 'The map, with numbers',
  garland: 'The garland, with numbers',
  applique: 'The panel, with numbers',
} as const

/** A linen: something that is not white to begin with. */
const FIRST_COLOUR = '#f4efe6'

export class PictureState {
  readonly #document: DocumentState
  chosen = $state('whole')
  /** Null until one is chosen. */
  colourway = $state<string | null>(null)
  format = $state<PictureFormat>('png')
  width = $state<number>(PICTURE_WIDTH.usual)
  ground = $state<Ground>('white')
  colour = $state(FIRST_COLOUR)
  /** A command asked for a picture: the fields unfold and take the keyboard, and forget it. */
  isAsked = $state(false)

  constructor(document: DocumentState) {
    this.#document = document
  }

  /** What there is to show, the whole first. */
  get offers(): readonly PictureOffer[] {
    const { plan, settled, project } = this.#document
    const kind = layoutKindOf(project)
    const ids = [...new Set(pictureColourways(plan).map(({ motif }) => motif.id))]
    const named = settled.motifs.map(({ id, name, kind: basis }) => ({ id, basis, name: name?.trim() || id }))
    const placed = named.filter(({ id }) => ids.includes(id))
    const motifs = placed.map(({ id, name }) => ({
      ...({ value: `motif ${id}`, of: 'motif', motif: id } as const),
      label: `Motif: ${name}`,
    }))
    const charts = settled.motifs.flatMap((motif) =>
      motif.kind === 'rounds' && workedRounds(settled, motif).beginning !== null
        ? [
            {
              ...({ value: `chart ${motif.id}`, of: 'chart', motif: motif.id } as const),
              label: `Chart: ${motif.name?.trim() || motif.id}`,
            },
          ]
        : [],
    )
    return [
      { value: 'whole', label: WHOLE[kind], of: 'whole' },
      { value: 'map', label: NUMBERED[kind], of: 'map' },
      ...motifs,
      ...charts,
      ...(ids.length > 0 ? [{ value: 'key', label: 'Key of letters and yarns', of: 'key' } as const] : []),
    ]
  }

  get offer(): PictureOffer {
    return this.offers.find(({ value }) => value === this.chosen) ?? this.offers[0]!
  }

  /** Colourways that the chosen motif can be shown in. */
  get colourways(): readonly { readonly value: string; readonly label: string }[] {
    const { of, motif } = this.offer
    if (of !== 'motif') return []
    return pictureColourways(this.#document.plan)
      .filter((each) => each.motif.id === motif)
      .map(({ mark }) => ({
        value: mark.id,
        label: [mark.code, mark.name].filter((part) => part !== '').join(' '),
      }))
  }

  /** What is asked of the host. */
  get choice(): PictureChoice {
    const { of, motif } = this.offer
    const colourway = this.colourways.find(({ value }) => value === this.colourway)?.value
    const grounds = { white: PAPER, none: null, colour: this.colour } as const
    return {
      ...{ of, format: this.format, width: this.width, ground: grounds[this.ground] },
      ...(motif === undefined ? {} : { motif }),
      ...(colourway === undefined ? {} : { colourway }),
    }
  }

  /** Opens the fields. */
  ask(): void {
    this.isAsked = true
  }
}
