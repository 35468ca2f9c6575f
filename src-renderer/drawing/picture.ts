/**
 * The picture of a plan: everything that the map layer draws, ready to be painted piece by piece. It is made
 * anew when the plan or its colours change; what has not changed is taken over by identity.
 */
import type { MotifAccount, Plan, PlacedMotif, Point } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { TOLERANCE } from '../../src-core/figures/detail'
import { edgingShapes } from '../../src-core/figures/edging-shapes'
import type { EdgingShapes } from '../../src-core/figures/edging-shapes'
import { joinMarkOf } from '../../src-core/figures/join-marks'
import { createHitMap } from '../../src-core/geometry/hit'
import type { HitMap } from '../../src-core/geometry/hit'
import type { Box } from '../../src-core/geometry/points'
import { marksOnMap } from '../../src-core/layout/placed'
import type { JoinPoint, PlacedPiece } from '../../src-core/layout/placed'
import { blockingFactors } from '../../src-core/layout/blanket'
import { blanketOf } from '../../src-core/plans/layouts'
import { simplify } from '../../src-core/geometry/simplify'
import { drawnAs } from '../kinds/drawn'
import { additionPieces, additionsOf, piecesHit } from './additions'
import type { AdditionsPicture, Pieces } from './additions'
import { groundOf } from './ground'
import type { GroundPicture } from './ground'
import { layerInk, inksOf } from './yarn-inks'
import type { Inks, LayerInk } from './yarn-inks'
import { MotifArtist } from './motif-art'
import type { Palette } from './palette'
import type { Scene } from './scene'

/** One kind of motif: its paths, and its colours by colourway. */
export interface MotifKind {
  readonly account: MotifAccount
  readonly artist: MotifArtist
  readonly inks: Inks
}

export interface Picture {
  readonly plan: Plan
  /** By motif id; '' is the motif of a blanket that has but one. */
  readonly kinds: ReadonlyMap<string, MotifKind>
  /** The motif of a blanket, else the first of those that are placed. */
  readonly main: MotifKind | null
  readonly motifs: readonly PlacedMotif[]
  /** Where motifs may lie on each other: the place of each in the pile; null where they lie side by side. */
  readonly ranks: readonly number[] | null
  readonly joins: readonly JoinPoint[]
  readonly stretch: { readonly width: number; readonly height: number }
  readonly hit: HitMap
  /** Half motifs and fillers; null where there are none. */
  readonly additions: AdditionsPicture | null
  /** What lies where, of everything that a hand can point at. */
  readonly pieces: Pieces
  /** Fillers between the motifs, by their motif. */
  readonly fillers: ReadonlyMap<string, MotifKind>
  /** The lines an edging runs along, its height and colour. */
  readonly edging: {
    readonly stretches: readonly EdgingStretch[]
    /** What it levels, as the edge runs from tip to tip. */
    readonly dips: Plan['edgingLines']
    readonly height: number
    readonly ink: LayerInk
    /** Its written rounds as they are, each with the ink of its yarn; null without any. */
    readonly shapes: { readonly of: EdgingShapes; readonly inks: readonly LayerInk[] } | null
  } | null
  /** What the motifs lie on or hang from. */
  readonly ground: GroundPicture | null
  readonly palette: Palette
  readonly showLabels: boolean
  readonly showJoins: boolean
  readonly showCorners: boolean
}

/** Lines that an edging runs along, and on which side of them it lies. */
export interface EdgingStretch {
  readonly lines: Plan['edgingLines']
  /** Outside of them everywhere, or in a box alone (mm); of holes within them. */
  readonly within: 'outside' | 'holes' | Box
}

/** What has to be painted anew between two pictures: nothing, what meets some boxes (mm), or everything. */
export type Difference = 'nothing' | 'everything' | readonly Box[]

const UNSTRETCHED = { width: 1, height: 1 }
const BLANKET = ''

/** The kind of a placed motif; undefined where its outline is not known. */
export const kindOf = (picture: Picture, motif: Pick<PlacedMotif, 'motif'>): MotifKind | undefined =>
  picture.kinds.get(motif.motif ?? BLANKET)

/** The kind of anything that is placed: a filler's is that of its own motif. */
export const kindOfPiece = (
  picture: Picture,
  piece: Pick<PlacedPiece, 'motif' | 'kind'>,
): MotifKind | undefined =>
  piece.kind === 'filler' ? picture.fillers.get(piece.motif ?? '') : kindOf(picture, piece)

/** Makes pictures of scenes and keeps what did not change. */
export class PictureMaker {
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
    const known = before?.picture
    const stretch = stretchOf(project)
    const sameColours =
      known !== undefined &&
      known.palette === palette &&
      before!.scene.project.yarns === project.yarns &&
      before!.scene.project.colourways === project.colourways
    const kind = (account: MotifAccount, old: MotifKind | null | undefined): MotifKind => {
      const same = old?.account === account
      if (same && sameColours) return old
      const inks = inksOf(project.colourways, project.yarns, account, palette.bare)
      return { account, artist: same ? old.artist : new MotifArtist(account), inks }
    }
    const kinds = kindsOf(accountsOf(plan), kind, known?.kinds)
    const ranks = ranksOf(plan, known?.ranks)
    const samePlaces =
      known !== undefined &&
      known.ranks === ranks &&
      sameAccounts(known.kinds, kinds) &&
      known.stretch.width === stretch.width &&
      known.stretch.height === stretch.height &&
      placesMatch(known.motifs, plan.motifs)
    const hit = samePlaces ? known.hit : hitMapOf(plan, kinds, stretch, ranks)
    const additions =
      samePlaces && additionsStandAlike(known.plan, plan)
        ? known.additions && { ...known.additions, pieces: additionPieces(plan) }
        : additionsOf(plan, stretch)
    return {
      plan,
      kinds,
      main: kinds.values().next().value ?? null,
      motifs: plan.motifs,
      ranks,
      joins: samePlaces && joinsMatch(known.joins, marksOnMap(plan)) ? known.joins : marksOnMap(plan),
      stretch,
      hit,
      additions,
      pieces: piecesHit(hit, additions),
      fillers: kindsOf(byId(plan.fillerMotifs), kind, known?.fillers),
      edging: edgingOf(project, plan, palette, known),
      ground: groundOf(project, plan, palette, known?.ground),
      palette,
      showLabels: scene.showLabels,
      showJoins: scene.showJoins,
      showCorners: scene.showCorners ?? true,
    }
  }
}

type Accounts = readonly (readonly [string, MotifAccount])[]

const byId = (accounts: readonly MotifAccount[]): Accounts => accounts.map((account) => [account.id, account])

/** The motifs of a plan by id. */
const accountsOf = (plan: Plan): Accounts =>
  plan.motif && plan.accounts.length === 0 ? [[BLANKET, plan.motif]] : byId(plan.accounts)

/** The kinds of some motifs; the same map as before where every one of them is the same. */
function kindsOf(
  accounts: Accounts,
  kind: (account: MotifAccount, old: MotifKind | undefined) => MotifKind,
  known: Picture['kinds'] | undefined,
): Picture['kinds'] {
  const kinds = new Map(accounts.map(([id, account]) => [id, kind(account, known?.get(id))]))
  const same = known?.size === kinds.size && [...kinds].every(([id, one]) => known.get(id) === one)
  return same ? known : kinds
}

const sameAccounts = (a: Picture['kinds'], b: Picture['kinds']): boolean =>
  a === b || (a.size === b.size && [...a].every(([id, { account }]) => b.get(id)?.account === account))

/** Places in the pile by index: a panel's stacking; along a cord each hangs over the one before. */
function ranksOf(plan: Plan, known: Picture['ranks'] | undefined): Picture['ranks'] {
  if (!drawnAs(plan).isPile) return null
  const places = new Map((plan.stacking ?? []).map((id, place) => [id, place]))
  const ranks = plan.motifs.map(({ id }, index) => places.get(id) ?? index)
  const same = known?.length === ranks.length && ranks.every((rank, index) => rank === known[index])
  return same ? known : ranks
}

const NOTHING: readonly Point[] = []

function hitMapOf(
  plan: Plan,
  kinds: Picture['kinds'],
  stretch: Picture['stretch'],
  ranks: Picture['ranks'],
): HitMap {
  const { motifs } = plan
  if (plan.motif && plan.accounts.length === 0)
    return createHitMap({ motifs, outline: plan.motif.outline, stretch })
  const outline = motifs.map((motif) => kinds.get(motif.motif ?? BLANKET)?.account.outline ?? NOTHING)
  return createHitMap({ motifs, outline, stretch, ...(ranks && { ranks }) })
}

function stretchOf(project: Project): Picture['stretch'] {
  const blanket = blanketOf(project)
  if (!blanket) return UNSTRETCHED
  const { width, height } = blockingFactors(blanket)
  return { width, height }
}

function edgingOf(
  project: Project,
  plan: Plan,
  palette: Palette,
  known: Picture | undefined,
): Picture['edging'] {
  const { edging, edgingLines } = plan
  if (!edging || edging.height <= 0) return null
  const colour = project.yarns?.find((yarn) => yarn.id === edging.yarn)?.colour
  const ink = layerInk(colour, palette.bare)
  const stretches =
    known?.edging && known.plan.edgingLines === edgingLines ? known.edging.stretches : stretchesOf(plan)
  const dips = known?.edging && known.plan.edgingDips === plan.edgingDips ? known.edging.dips : dipsOf(plan)
  return { stretches, dips, height: edging.height, ink, shapes: shapesOf(project, plan, palette, known) }
}

const dipsOf = ({ edgingDips = [] }: Plan): Plan['edgingLines'] =>
  edgingDips.map((dip) => simplify(dip, TOLERANCE.edging))

/** The written rounds of an edging; the same as before where nothing of them changed. */
function shapesOf(
  project: Project,
  plan: Plan,
  palette: Palette,
  known: Picture | undefined,
): NonNullable<Picture['edging']>['shapes'] {
  const shapes = edgingShapes(plan)
  if (!shapes) return null
  const inks = shapes.rounds.map(({ yarn }) =>
    layerInk(project.yarns?.find(({ id }) => id === yarn)?.colour, palette.bare),
  )
  const before = known?.edging?.shapes
  const isSame = before?.of === shapes && inks.every((ink, i) => ink === before.inks[i])
  return isSame ? before : { of: shapes, inks }
}

/** The stretches of an edging: all of it, or of a round each open end by itself and then what runs round holes. */
function stretchesOf({ edgingLines, round, size }: Plan): EdgingStretch[] {
  const lines = edgingLines.map((line) => simplify(line, TOLERANCE.edging))
  if (!round) return [{ lines, within: 'outside' }]
  const middle = size.height / 2
  const ends = lines.slice(0, 2).flatMap((line, end): EdgingStretch[] => {
    const [first, last] = [line[0], line.at(-1)]
    if (!first || !last || line.length < 2) return []
    // Closed in the middle of the map, which its half of the map leaves out.
    const closed = [...line, { x: last.x, y: middle }, { x: first.x, y: middle }]
    const [top, bottom] = end === 0 ? [-size.height, middle] : [middle, 2 * size.height]
    return [{ lines: [closed], within: { left: first.x, right: last.x, top, bottom } }]
  })
  const holes = lines.slice(2)
  return holes.length > 0 ? [...ends, { lines: holes, within: 'holes' }] : ends
}

const lieAlike = (a: PlacedMotif, b: PlacedMotif): boolean =>
  a.x === b.x &&
  a.y === b.y &&
  a.turn === b.turn &&
  a.id === b.id &&
  a.motif === b.motif &&
  (a.flipped ?? false) === (b.flipped ?? false)

const placesMatch = (a: readonly PlacedMotif[], b: readonly PlacedMotif[]): boolean =>
  a === b || (a.length === b.length && a.every((motif, i) => lieAlike(motif, b[i]!)))

const joinsMatch = (a: readonly JoinPoint[], b: readonly JoinPoint[]): boolean =>
  a === b ||
  (a.length === b.length &&
    a.every((join, i) => {
      const other = b[i]!
      return join.x === other.x && join.y === other.y && joinMarkOf(join) === joinMarkOf(other)
    }))

type Addition = Pick<PlacedMotif, 'x' | 'y' | 'turn' | 'colourway' | 'motif' | 'label'>

const additionsOfPlan = ({ halves, fillers }: Plan): readonly Addition[] => [...halves, ...fillers]

/** Whether the half motifs and fillers of two plans stand alike. */
function additionsStandAlike(a: Plan, b: Plan): boolean {
  if (a.fillers === b.fillers && a.halves === b.halves) return true
  if (a.halves.length !== b.halves.length) return false
  const others = additionsOfPlan(b)
  const own = additionsOfPlan(a)
  return (
    own.length === others.length &&
    own.every(({ x, y, turn, motif }, i) => {
      const other = others[i]!
      return other.x === x && other.y === y && other.turn === turn && other.motif === motif
    })
  )
}

/** Boxes of the half motifs and fillers whose colourway, or number where it is shown, is another one. */
function recoloured(before: Picture, after: Picture): Box[] {
  const old = additionsOfPlan(before.plan)
  return additionsOfPlan(after.plan).flatMap(({ colourway, label }, i) =>
    colourway === old[i]!.colourway && (!after.showLabels || label === old[i]!.label)
      ? []
      : (after.additions?.hit.boxOf(i) ?? []),
  )
}

/** What of the map differs between two pictures. */
export function differenceOf(before: Picture | null, after: Picture): Difference {
  if (before === after) return 'nothing'
  if (
    !before ||
    before.kinds !== after.kinds ||
    before.fillers !== after.fillers ||
    !additionsStandAlike(before.plan, after.plan) ||
    before.palette !== after.palette ||
    before.ground !== after.ground ||
    before.joins !== after.joins ||
    before.showJoins !== after.showJoins ||
    before.showLabels !== after.showLabels ||
    before.edging?.stretches !== after.edging?.stretches ||
    before.edging?.dips !== after.edging?.dips ||
    before.edging?.ink !== after.edging?.ink ||
    before.edging?.shapes !== after.edging?.shapes
  )
    return 'everything'
  // On a blanket everything moves together; on a panel what was moved leaves one box and fills another.
  if (before.hit !== after.hit && (!after.ranks || before.ranks !== after.ranks)) return 'everything'
  const boxes: Box[] = recoloured(before, after)
  after.motifs.forEach((motif, i) => {
    const old = before.motifs[i]!
    const moved = before.hit !== after.hit && !lieAlike(old, motif)
    if (moved) boxes.push(before.hit.boxOf(i))
    if (moved || old.colourway !== motif.colourway || (after.showLabels && old.label !== motif.label))
      boxes.push(after.hit.boxOf(i))
  })
  return boxes.length > 0 ? boxes : 'nothing'
}
