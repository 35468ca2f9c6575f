/** A project from the motif that lies on the table: what is counted and measured on it, and what it becomes. */
import { saying } from '../../src-core/stitches/spelling'
import type { Settings } from '../../shared-types/bridge'
import type {
  KeptPhoto,
  MeasuredMotif,
  MeasuredSizes,
  OutlineKind,
  Project,
  Ruler,
  Terms,
} from '../../shared-types/project'
import { PROJECT_FORMAT, PROJECT_VERSION } from '../../shared-types/project'
import { DEFAULT_LEAF_WIDTH_SHARE, DEFAULT_VALLEY_SHARE } from '../../src-core/motif/constants'
import type { Measured } from '../../src-core/photo/motif'
import { assumedSecond, circlesOf, isOdd, layingOf } from '../../src-core/motif/ruler'
import type { Made } from '../kinds/kind'
import { KINDS } from '../kinds/kinds'
import { firstSizes } from '../../src-core/layout/first-sizes'
import { addColourway, addYarn, newColourway, newYarn, setSlotYarn } from '../state/edits/yarn'
import { MEASURES, newMotif } from '../state/edits/motif'

export type { Made }

export interface OwnMotif {
  readonly outline: OutlineKind
  readonly petals: number
  /** How an odd number of petals is measured. */
  readonly ruler?: Ruler
  /** mm, as the ruler shows it: tip to tip (or what stands for it), across, side to side or length. */
  readonly lead: number
  /** mm: dip to dip (or what stands for it), or the width of a leaf; left out, it follows the first. */
  readonly second?: number | undefined
  /** It was measured in a photo: its line, and what a ruler does not ask for at the start. */
  readonly photo?: Measured | undefined
  /** Its colours in the photo, from the middle outwards. */
  readonly colours?: readonly string[] | undefined
  /** The picture itself, where it is kept. */
  readonly kept?: KeptPhoto | undefined
}

/** Swags to begin with (ours). */
export const FIRST_SWAGS = 3
/** The second measure, in mm, as it is assumed while it was not typed; null where there is none. */
export function secondAssumed({ outline, petals, ruler, lead }: OwnMotif): number | null {
  if (outline === 'petals') return assumedSecond(layingOf(petals, ruler), lead, DEFAULT_VALLEY_SHARE)
  return outline === 'leaf' ? lead * DEFAULT_LEAF_WIDTH_SHARE : null
}

/** What a photo gives besides the numbers that may be typed over, as long as the motif is the one in it. */
function fromPhoto({ photo, outline, petals, lead }: OwnMotif): Partial<MeasuredMotif> {
  if (!photo) return {}
  if (photo.outline === 'traced')
    return outline === 'petals' && petals === photo.petals ? { outline: 'traced', traced: photo.traced } : {}
  const { sideToSide, pointToPoint } = photo
  if (photo.outline !== outline || !sideToSide || !pointToPoint) return {}
  return { pointToPoint: Math.round(((pointToPoint * lead) / sideToSide) * 10) / 10 }
}

/** The motif as the project keeps it. */
const ownMotif = (project: Project, own: OwnMotif): MeasuredMotif => ({
  ...measuredByHand(project, own),
  ...fromPhoto(own),
  ...(own.kept && { photo: own.kept }),
})

function measuredByHand(project: Project, own: OwnMotif): MeasuredMotif {
  const made = newMotif(project, own.outline)
  switch (own.outline) {
    case 'petals': {
      const { petals, lead, second, ruler } = own
      const circles = circlesOf(layingOf(petals, ruler), { lead, second }, DEFAULT_VALLEY_SHARE)
      return { ...made, petals, ...circles, ...(isOdd(petals) && ruler && { ruler }) }
    }
    case 'round':
      return { ...made, across: own.lead }
    case 'leaf':
      return { ...made, length: own.lead, width: own.second }
    default:
      return { ...made, sideToSide: own.lead }
  }
}

/** The sizes of the motif of a project that was made of the answers at the start. */
export function sizesOf({ motifs = [] }: Project): MeasuredSizes | undefined {
  const [motif] = motifs
  if (motif?.kind !== 'measured') return undefined
  const { ruler, outline } = motif
  const given = MEASURES[outline].flatMap((key) => (motif[key] === undefined ? [] : [[key, motif[key]]]))
  return { ...(Object.fromEntries(given) as MeasuredSizes), ...(ruler && { ruler }) }
}

/** The whole project, laid out as what it is made into: a blanket in a piece, until an arrangement is chosen. */
export function ownProject(settings: Settings, own: OwnMotif, made: Made): Project {
  const { units, terms, hand, currency, paper } = settings
  let project: Project = {
    format: PROJECT_FORMAT,
    version: PROJECT_VERSION,
    title: '',
    units,
    terms,
    hand,
    currency,
    sheet: { paper, style: 'colour', terms },
    order: 'there-and-back',
    joining: { rule: own.outline === 'petals' || own.outline === 'round' ? 'tips' : 'edges' },
    allowance: { wastePercent: 10, tail: firstSizes(units).tail },
  }
  const parts = partsOf(own, terms)
  const motif = { ...ownMotif(project, own), slots: parts.map(({ slot }) => ({ slot })) }
  project = { ...project, motifs: [motif] }
  const yarns = parts.map(({ name, colour }) => {
    const yarn = { ...newYarn(project), name, colour }
    project = addYarn(project, yarn)
    return yarn.id
  })
  const way = newColourway(project, motif.id)
  project = addColourway(project, way)
  parts.forEach(({ slot }, i) => {
    project = setSlotYarn(project, way.id, slot, yarns[i]!)
  })
  return KINDS[made.kind].start.lay(project, motif.id, way.id, made)
}

/** The colour parts of a motif from the middle outwards, as a photo shows them, each with its yarn. */
function partsOf(
  { outline, colours = [] }: OwnMotif,
  terms: Terms,
): { slot: string; name: string; colour: string }[] {
  const isFlower = outline === 'petals'
  const [first = '#e3c188', ...others] = colours.length > 0 ? colours : isFlower ? ['#e3c188', '#b3583f'] : []
  const last = others.at(-1)
  // A motif of one colour has no centre to name it by.
  if (last === undefined) return [{ slot: 'motif', name: 'Main yarn', colour: first }]
  const say = saying(terms)
  const outer = { slot: isFlower ? 'petals' : 'edge', name: isFlower ? 'Petal yarn' : 'Edge yarn' }
  return [
    { slot: say`centre`, name: say`Centre yarn`, colour: first },
    ...others
      .slice(0, -1)
      .map((colour, i) => ({ slot: `ring ${i + 2}`, name: `Yarn of ring ${i + 2}`, colour })),
    { ...outer, colour: last },
  ]
}
