/** Edits of motifs. Measures in mm, masses in g, times in minutes. */
import type {
  KeptPhoto,
  MeasuredMotif,
  MeasuredOutline,
  MeasuredSizes,
  Motif,
  OutlineKind,
  Project,
  RoundsMotif,
  Ruler,
  StitchGauge,
  UnitSystem,
  Weighed,
} from '../../../shared-types/project'
import type { MotifAccount } from '../../../shared-types/plan'
import { OUTLINE_KINDS } from '../../../shared-types/project'
import { editsOf } from '../../kinds/layouts'
import { firstSizes } from '../../../src-core/layout/first-sizes'
import { asTakenBefore, takenAnew } from './other-hook'
import { freeId, freeLetter, freeName } from './ids'
import { isFromRounds, withoutFromRounds } from '../../../src-core/motif/from-rounds'
import { alike, MEASURES, shownIn } from '../../../src-core/motif/ruling'
import type { MeasureName } from '../../../src-core/motif/ruling'
import { withoutStated } from '../../../src-core/motif/stated'
import { circlesOf, layingOf, readingsOf } from '../../../src-core/motif/ruler'
import type { Laying, Readings } from '../../../src-core/motif/ruler'
import { workedEntries } from '../../../src-core/motif/rounds/special'
import type { Measured } from '../../../src-core/photo/motif'
import { isCounted } from '../../../src-core/stitches/gauge-findings'
import { settled, withGauge } from '../../../src-core/settled'
import { saying } from '../../../src-core/stitches/spelling'

export { MEASURES } from '../../../src-core/motif/ruling'
export type MeasureKey = MeasureName

/** The outlines that a measured motif can have: one that was traced, where it was. */
export const outlinesOf = ({ traced }: MeasuredMotif): readonly MeasuredOutline[] =>
  traced ? ['traced', ...OUTLINE_KINDS] : OUTLINE_KINDS

export const findMotif = (project: Project, id: string | null | undefined): Motif | undefined =>
  project.motifs?.find((motif) => motif.id === id)

/** The motif that the layout is made of, else the first. */
export function mainMotif(project: Project): Motif | undefined {
  const placed = project.layout && editsOf(project.layout).motif
  return findMotif(project, placed) ?? project.motifs?.[0]
}

/** The colours of a motif by name, in the order in which they are worked. */
export function slotsOf(motif: Motif): string[] {
  const named =
    motif.kind === 'measured'
      ? (motif.slots ?? []).map((slot) => slot.slot)
      : workedEntries(motif).map((round) => round.slot ?? '')
  return [...new Set(named.filter(Boolean))]
}

/** Replaces one motif by what `edit` makes of it. */
export function updateMotif(project: Project, id: string, edit: (motif: Motif) => Motif): Project {
  return { ...project, motifs: project.motifs?.map((motif) => (motif.id === id ? edit(motif) : motif)) }
}

/** Puts fields over those of a motif; a field given as undefined is taken out of force. */
export const patchMotif = (
  project: Project,
  id: string,
  patch: Partial<MeasuredMotif> | Partial<RoundsMotif>,
): Project => updateMotif(project, id, (motif) => ({ ...motif, ...patch }) as Motif)

/** The words that are printed with a motif; blank ones take them out. */
export const setInstructions = (project: Project, id: string, instructions: string): Project =>
  patchMotif(project, id, { instructions: instructions.trim() === '' ? undefined : instructions })

/** The same with more lines after those that are there. */
export function addInstructions(project: Project, id: string, lines: readonly string[]): Project {
  const { instructions = '' } = project.motifs?.find((motif) => motif.id === id) ?? {}
  const before = instructions.trimEnd()
  return setInstructions(project, id, [...(before === '' ? [] : [before, '']), ...lines].join('\n'))
}

/** What was measured of a motif, wherever its kind keeps it; of written rounds of a shape, what rules there. */
export function measureOf(motif: Motif, key: MeasureKey, shape?: MotifAccount['shape']): number | undefined {
  if (motif.kind === 'measured') return motif[key]
  const { measured } = motif
  return measured?.[shape ? shownIn(measured, shape, key) : key]
}

/** Enters one measure, in place of what was measured there by another shape; undefined takes it out. */
export function setMeasure(
  project: Project,
  id: string,
  key: MeasureKey,
  value: number | undefined,
): Project {
  // What is measured now is no longer worked out from what was measured before.
  const entered = { [key]: value, asMeasured: undefined }
  return updateMotif(project, id, (given) => {
    const motif = takenAnew(withoutStated(given, key), 'sizes')
    if (motif.kind === 'measured') return { ...withoutFromRounds(motif, key), ...entered }
    const others: MeasuredSizes = { ...motif.measured }
    for (const other of alike(key)) if (other !== key) delete others[other]
    return { ...motif, measured: { ...others, ...entered } }
  })
}

const ALL_MEASURES = [...new Set(Object.values(MEASURES).flat())]

/** Lengths in other units; a tail that is the usual one of the units before is the usual one of these. */
export function setUnits(project: Project, units: UnitSystem): Project {
  const { tail } = project.allowance ?? {}
  const usual = tail !== undefined && Math.abs(tail - firstSizes(project.units).tail) < 0.01
  return {
    ...project,
    units,
    ...(usual && { allowance: { ...project.allowance, tail: firstSizes(units).tail } }),
  }
}

/** Whether anything was measured of a motif in written rounds, by whatever shape it had then. */
export const hasMeasures = ({ measured }: RoundsMotif): boolean =>
  ALL_MEASURES.some((key) => measured?.[key] !== undefined)

/** Takes out every size that was measured of a motif in written rounds. */
export const clearMeasures = (project: Project, id: string): Project =>
  updateMotif(project, id, (motif) => {
    if (motif.kind !== 'rounds') return motif
    const measured: MeasuredSizes = { ...motif.measured }
    for (const key of [...ALL_MEASURES, 'asMeasured'] as const) delete measured[key]
    const { stated: _, ...rest } = takenAnew(motif, 'sizes')
    return { ...rest, measured }
  })

/** Where a motif keeps what was measured of it. */
const measuresOf = (motif: Motif): MeasuredSizes =>
  motif.kind === 'measured' ? motif : (motif.measured ?? {})

const FLOWER = ['overTips', 'overValleys'] as const

/** The numbers that the ruler shows of a flower, as far as they were measured; `share` as in `readingsOf`. */
export function flowerReadings(
  motif: Motif,
  laying: Laying,
  share: number,
): { readonly lead: number | undefined; readonly second: number | undefined } {
  const [overTips, overValleys] = FLOWER.map((key) => measureOf(motif, key, 'petals'))
  const { lead, second } = readingsOf(laying, { overTips: overTips ?? 0, overValleys }, share)
  return { lead: overTips === undefined ? undefined : lead, second }
}

/** Enters one number of the ruler; what it showed besides stays, and the circles follow from both. */
export function setReading(
  project: Project,
  id: string,
  laying: Laying,
  share: number,
  part: keyof Readings,
  value: number | undefined,
): Project {
  const motif = findMotif(project, id)
  if (!motif) return project
  const before = flowerReadings(motif, laying, share)
  const { lead, second } = part === 'lead' ? { ...before, lead: value } : { ...before, second: value }
  const { overTips, overValleys } = circlesOf(laying, { lead: lead ?? 0, second }, share)
  const tips = lead === undefined ? undefined : overTips
  const both = setMeasure(setMeasure(project, id, 'overTips', tips), id, 'overValleys', overValleys)
  const next = stillStated(motif, both, part === 'lead' ? 'overValleys' : 'overTips')
  return motif.kind === 'measured' ? stillFromRounds(motif, next, part) : next
}

/** What the page states of a flower stays stated while the ruler's other number is entered. */
function stillStated(before: Motif, project: Project, other: MeasureKey): Project {
  const size = before.stated?.[other]
  if (size === undefined) return project
  return updateMotif(project, before.id, (motif) => ({
    ...motif,
    stated: { ...motif.stated, [other]: size },
  }))
}

/** What the rounds give of a flower stays no measure while the ruler's other number is entered, also where it follows from that. */
function stillFromRounds(before: MeasuredMotif, project: Project, part: keyof Readings): Project {
  const other = part === 'lead' ? 'overValleys' : 'overTips'
  if (!isFromRounds(before, other)) return project
  return updateMotif(project, before.id, (motif) => {
    const size = measureOf(motif, other)
    if (motif.kind !== 'measured' || size === undefined) return motif
    const { fromRounds } = motif
    return { ...motif, fromRounds: { ...fromRounds, sizes: { ...fromRounds?.sizes, [other]: size } } }
  })
}

/** Says how an odd number of petals is measured; the flower stays as large as it is. */
export const setRuler = (project: Project, id: string, ruler: Ruler): Project =>
  updateMotif(project, id, (motif) =>
    motif.kind === 'measured' ? { ...motif, ruler } : { ...motif, measured: { ...motif.measured, ruler } },
  )

/** How a flower of so many petals is measured. */
export const layingOfMotif = (motif: Motif, petals: number): Laying =>
  layingOf(petals, measuresOf(motif).ruler)

export const isBlocked = (motif: Motif): boolean =>
  (motif.kind === 'measured' ? motif.blocked : motif.measured?.blocked) ?? true

/** Says whether the measures were taken after blocking. */
export function setBlocked(project: Project, id: string, blocked: boolean): Project {
  return updateMotif(project, id, (motif) =>
    motif.kind === 'measured'
      ? { ...motif, blocked }
      : { ...motif, measured: { ...motif.measured, blocked } },
  )
}

/** Puts fields over what was weighed. */
export const setWeighed = (project: Project, id: string, patch: Partial<Weighed>): Project =>
  updateMotif(project, id, (motif) => ({
    ...takenAnew(motif, 'weight'),
    weighed: { ...motif.weighed, ...patch },
  }))

/**
 * Puts fields over the motif's own gauge, which starts from the project's. One that was counted remembers its hook while
 * another one is taken, until it is counted again.
 */
export const setMotifGauge = (project: Project, id: string, patch: Partial<StitchGauge>): Project =>
  updateMotif(project, id, (motif) => {
    const before = withGauge(motif, project.gauge).gauge ?? {}
    const { countedWith: _, ...counted } = { ...before, ...patch }
    const own = 'hook' in patch ? (before.countedWith ?? before.hook) : undefined
    const keeps = own !== undefined && own !== counted.hook && isCounted(before)
    return asTakenBefore({ ...motif, gauge: { ...counted, ...(keeps && { countedWith: own }) } }, before)
  })

/** Says that a gauge was counted with the hook that stands beside it. */
export const countedWithHook = (project: Project, id: string): Project => setMotifGauge(project, id, {})

const PETALS = 6

/** The leading measure alone: the other one is assumed until it is measured. */
const sizeOf = (project: Project, outline: OutlineKind): Partial<MeasuredMotif> => ({
  ...(outline === 'petals' ? { petals: PETALS } : {}),
  [MEASURES[outline][0]!]: firstSizes(project.units).motif[outline],
})

const NAMES: Readonly<Record<OutlineKind, string>> = {
  petals: 'Flower',
  round: 'Round',
  square: 'Square',
  hexagon: 'Hexagon',
  octagon: 'Octagon',
  leaf: 'Leaf',
}

/** A measured motif to start from: middling sizes, which its own measures then replace. */
export function newMotif(project: Project, outline: OutlineKind): MeasuredMotif {
  const centre = saying(settled(project).terms)`centre`
  const slots = outline === 'petals' ? [{ slot: centre }, { slot: 'petals' }] : [{ slot: 'motif' }]
  const names = (project.motifs ?? []).map((motif) => motif.name)
  return {
    id: freeId('m', project.motifs),
    name: freeName(NAMES[outline], names),
    kind: 'measured',
    outline,
    ...sizeOf(project, outline),
    blocked: true,
    slots,
  }
}

export const addMotif = (project: Project, motif: Motif): Project => ({
  ...project,
  motifs: [...(project.motifs ?? []), motif],
})

const SIDES = { square: 4, hexagon: 6, octagon: 8 } as const

/** Point to point of a straight-sided motif in its side to side. */
const perSide = (outline: keyof typeof SIDES): number => 1 / Math.cos(Math.PI / SIDES[outline])

const isSided = (outline: MeasuredOutline): outline is keyof typeof SIDES => outline in SIDES

/** How far a motif reaches across: tip to tip, point to point. */
function reachOf(motif: MeasuredMotif): number | undefined {
  const { outline, pointToPoint, sideToSide } = motif
  if (!isSided(outline)) return measureOf(motif, MEASURES[outline][0]!)
  return pointToPoint ?? (sideToSide === undefined ? undefined : sideToSide * perSide(outline))
}

/** Makes a measured motif another kind, which reaches as far across as it did. */
export function setOutline(project: Project, id: string, outline: MeasuredOutline): Project {
  return updateMotif(project, id, (motif) => {
    if (motif.kind !== 'measured' || motif.outline === outline) return motif
    const reach = reachOf(motif)
    const lead = MEASURES[outline][0]!
    // What was traced has sizes of its own.
    const start = outline === 'traced' ? {} : sizeOf(project, outline)
    const size = reach && isSided(outline) ? reach / perSide(outline) : reach
    const scale = size && start[lead] ? size / start[lead] : 1
    const measures = Object.fromEntries(
      MEASURES[outline].flatMap((key) => {
        const given = motif[key] ?? start[key]
        return given === undefined ? [] : [[key, motif[key] ?? Math.round(given * scale * 10) / 10]]
      }),
    )
    return { ...motif, outline, petals: motif.petals ?? start.petals, ...measures }
  })
}

/** What a ruler or a photo says of a measured motif; another one takes its place as a whole. */
const SIZE_FIELDS = [
  ...([
    'outline',
    'petals',
    'ruler',
    'traced',
    'photo',
    'asMeasured',
    'measuredWith',
    'fromRounds',
    'stated',
    'overTips',
    'overValleys',
  ] as const),
  ...(['across', 'sideToSide', 'pointToPoint', 'length', 'width'] as const),
]

/** A motif as it was measured in a photo; its name, colours, weight and words stay. */
export const takeMeasured = (project: Project, id: string, measured: Measured, photo?: KeptPhoto): Project =>
  updateMotif(project, id, (motif) => {
    if (motif.kind !== 'measured') return motif
    const rest: Partial<MeasuredMotif> = { ...motif }
    for (const field of SIZE_FIELDS) delete rest[field]
    return {
      ...{ ...rest, ...measured, id: motif.id, kind: 'measured', blocked: true },
      ...(photo && { photo }),
    }
  })

/** A new motif as it was measured in a photo. */
export function photographed(project: Project, measured: Measured, photo?: KeptPhoto): MeasuredMotif {
  const { outline, ...sizes } = measured
  const made = newMotif(project, outline === 'traced' ? 'petals' : outline)
  const { petals: _petals, overTips: _tips, ...named } = made
  return { ...named, ...sizes, outline, ...(photo && { photo }) }
}

/** Takes the photo away that is kept with a motif; what was measured in it stays. */
export const removePhoto = (project: Project, id: string): Project =>
  updateMotif(project, id, ({ photo: _photo, ...motif }) => motif as Motif)

/** A copy of a motif, with its colourways, under a name of its own. */
export function duplicateMotif(project: Project, id: string): Project {
  const motif = findMotif(project, id)
  if (!motif) return project
  const names = (project.motifs ?? []).map((entry) => entry.name)
  const copy = { ...motif, id: freeId('m', project.motifs), name: freeName(motif.name ?? 'Motif', names) }
  const ways = [...(project.colourways ?? [])]
  for (const way of project.colourways ?? []) {
    if (way.motif !== id) continue
    const code = freeLetter(ways)
    // A name that only says the letter says the new one.
    const name =
      way.code && way.name?.endsWith(` ${way.code}`) ? way.name.slice(0, -way.code.length) + code : way.name
    ways.push({ ...way, id: freeId('c', ways), code, ...(name !== undefined && { name }), motif: copy.id })
  }
  return addMotif({ ...project, colourways: ways }, copy)
}

/** What still needs a motif; empty where it may go. */
export const usesOfMotif = (project: Project, id: string): string[] =>
  project.layout ? editsOf(project.layout).usesOfMotif(id) : []

/** Takes a motif and its colourways out. */
export function removeMotif(project: Project, id: string): Project {
  const gone = new Set(project.colourways?.filter((way) => way.motif === id).map((way) => way.id))
  const next: Project = {
    ...project,
    motifs: project.motifs
      ?.filter((motif) => motif.id !== id)
      // What went with it goes with nothing any more.
      .map((motif) => (motif.goesWith?.motif === id ? { ...motif, goesWith: undefined } : motif)),
    colourways: project.colourways?.filter((way) => way.motif !== id),
  }
  return next.layout ? { ...next, layout: editsOf(next.layout).withoutWays(gone) } : next
}
