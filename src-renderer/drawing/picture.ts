/**
 * The picture of a plan: everything that the map layer draws, ready to be painted piece by piece. It is made
 * anew when the plan or its colours change; what has not changed is taken over by identity.
 */
import type { MotifAccount, Plan, PlacedMotif, Point } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { edgingLine } from '../../src-core/figures/edging-line'
import { mapRows } from '../../src-core/figures/rows'
import { createHitMap } from '../../src-core/geometry/hit'
import type { HitMap } from '../../src-core/geometry/hit'
import type { Box } from '../../src-core/geometry/points'
import { blockingFactors } from '../../src-core/layout/blanket'
import { edgingBand } from './edging-band'
import { layerInk, inksOf } from './yarn-inks'
import type { Inks, LayerInk } from './yarn-inks'
import { MotifArtist } from './motif-art'
import type { Palette } from './palette'
import type { Scene } from './scene'

export interface Picture {
  readonly plan: Plan
  readonly account: MotifAccount | null
  readonly motifs: readonly PlacedMotif[]
  readonly joins: readonly Point[]
  readonly stretch: { readonly width: number; readonly height: number }
  readonly hit: HitMap
  readonly artist: MotifArtist | null
  readonly inks: Inks
  /** Fillers between the motifs. */
  readonly fillerArtist: MotifArtist | null
  readonly fillerInks: Inks
  /** The line an edging starts from, its height and colour. */
  readonly edging: { readonly line: readonly Point[]; readonly height: number; readonly ink: LayerInk } | null
  readonly palette: Palette
  readonly showLabels: boolean
  readonly showJoins: boolean
}

/** What has to be painted anew between two pictures: nothing, some motifs (by index), or everything. */
export type Difference = 'nothing' | 'everything' | readonly number[]

const UNSTRETCHED = { width: 1, height: 1 }

/** Makes pictures of scenes and keeps what did not change. */
export class PictureMaker {
  #artist: MotifArtist | null = null
  #fillerArtist: MotifArtist | null = null
  #last: { scene: Scene; palette: Palette; picture: Picture } | null = null

  /** The picture of a scene: the same object when nothing on it changed. */
  make(scene: Scene, palette: Palette): Picture {
    const last = this.#last
    const { plan, project } = scene
    if (
      last &&
      last.scene.plan === plan &&
      last.scene.project.yarns === project.yarns &&
      last.scene.project.colourways === project.colourways &&
      last.scene.project.layout === project.layout &&
      last.scene.showLabels === scene.showLabels &&
      last.scene.showJoins === scene.showJoins &&
      last.palette === palette
    )
      return last.picture
    const picture = this.#build(scene, palette)
    this.#last = { scene, palette, picture }
    return picture
  }

  #build(scene: Scene, palette: Palette): Picture {
    const { plan, project } = scene
    const before = this.#last
    const account = plan.motif
    if (this.#artist?.account !== account) this.#artist = account ? new MotifArtist(account) : null
    const filler = plan.fillerMotif
    if ((this.#fillerArtist?.account ?? null) !== filler)
      this.#fillerArtist = filler ? new MotifArtist(filler) : null
    const stretch = stretchOf(project)
    const known = before?.picture
    const samePlaces =
      known !== undefined &&
      known.account === account &&
      known.stretch.width === stretch.width &&
      known.stretch.height === stretch.height &&
      placesMatch(known.motifs, plan.motifs)
    const sameInks =
      known !== undefined &&
      known.account === account &&
      known.palette === palette &&
      before!.scene.project.yarns === project.yarns &&
      before!.scene.project.colourways === project.colourways
    const outline = account?.outline ?? []
    return {
      plan,
      account,
      motifs: plan.motifs,
      joins: samePlaces && joinsMatch(known.joins, plan.joins) ? known.joins : plan.joins,
      stretch,
      hit: samePlaces ? known.hit : createHitMap({ motifs: plan.motifs, outline, stretch }),
      artist: this.#artist,
      inks: sameInks ? known.inks : inksOf(project.colourways, project.yarns, account, palette.bare),
      fillerArtist: this.#fillerArtist,
      fillerInks:
        sameInks && known.fillerArtist === this.#fillerArtist
          ? known.fillerInks
          : inksOf(project.colourways, project.yarns, filler, palette.bare),
      edging: edgingOf(project, plan, stretch, palette, samePlaces ? known : undefined),
      palette,
      showLabels: scene.showLabels,
      showJoins: scene.showJoins,
    }
  }
}

function stretchOf(project: Project): Picture['stretch'] {
  if (project.layout?.kind !== 'blanket') return UNSTRETCHED
  const { width, height } = blockingFactors(project.layout)
  return { width, height }
}

function edgingOf(
  project: Project,
  plan: Plan,
  stretch: Picture['stretch'],
  palette: Palette,
  known: Picture | undefined,
): Picture['edging'] {
  const { edging, motif } = plan
  if (!edging || !motif || edging.height <= 0) return null
  const colour = project.yarns?.find((yarn) => yarn.id === edging.yarn)?.colour
  const ink = layerInk(colour, palette.bare)
  const old = known?.edging
  const sameHalves = known?.plan.halves.length === plan.halves.length
  if (old && sameHalves && known.plan.edging?.style === edging.style && old.height === edging.height)
    return { ...old, ink }
  // Half motifs straighten the sides: the printed map's line follows them.
  const line =
    plan.halves.length > 0
      ? edgingLine({ ...plan, edging: { ...edging, height: 0 } }, mapRows(plan), {
          x: stretch.width,
          y: stretch.height,
        })
      : edgingBand(plan.motifs, motif, edging.style, stretch)
  return { line, height: edging.height, ink }
}

const placesMatch = (a: readonly PlacedMotif[], b: readonly PlacedMotif[]): boolean =>
  a === b ||
  (a.length === b.length &&
    a.every((motif, i) => {
      const other = b[i]!
      return motif.x === other.x && motif.y === other.y && motif.turn === other.turn && motif.id === other.id
    }))

const joinsMatch = (a: readonly Point[], b: readonly Point[]): boolean =>
  a === b || (a.length === b.length && a.every((point, i) => point.x === b[i]!.x && point.y === b[i]!.y))

/** Whether the fillers and half motifs of two plans stand alike, in the same colours. */
function additionsMatch(a: Plan, b: Plan): boolean {
  const alike = (
    one: readonly { x: number; y: number; turn: number; colourway: string }[],
    other: typeof one,
  ): boolean =>
    one === other ||
    (one.length === other.length &&
      one.every((place, i) => {
        const { x, y, turn, colourway } = other[i]!
        return place.x === x && place.y === y && place.turn === turn && place.colourway === colourway
      }))
  return alike(a.fillers, b.fillers) && alike(a.halves, b.halves)
}

/** What of the map differs between two pictures. */
export function differenceOf(before: Picture | null, after: Picture): Difference {
  if (before === after) return 'nothing'
  if (
    !before ||
    before.account !== after.account ||
    before.hit !== after.hit ||
    before.inks !== after.inks ||
    before.fillerArtist !== after.fillerArtist ||
    before.fillerInks !== after.fillerInks ||
    !additionsMatch(before.plan, after.plan) ||
    before.palette !== after.palette ||
    before.joins !== after.joins ||
    before.showJoins !== after.showJoins ||
    before.showLabels !== after.showLabels ||
    before.edging?.line !== after.edging?.line ||
    before.edging?.ink !== after.edging?.ink
  )
    return 'everything'
  const changed: number[] = []
  after.motifs.forEach((motif, i) => {
    const old = before.motifs[i]!
    if (old.colourway !== motif.colourway || (after.showLabels && old.label !== motif.label)) changed.push(i)
  })
  return changed.length > 0 ? changed : 'nothing'
}

/** The box of motif `index`, a little wider for its contour. */
export function boxOfMotif(picture: Picture, index: number): Box {
  return picture.hit.boxOf(index)
}
