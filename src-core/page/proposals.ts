/**
 * What a page says, proposed for a project: what each fact would set, and what the project has now. Nothing is taken
 * without being asked; what was taken or left is remembered with the page.
 */
import type { MotifAccount } from '../../shared-types/plan'
import type {
  MeasuredSizes,
  Motif,
  Project,
  StitchGauge,
  Terms,
  UnitSystem,
} from '../../shared-types/project'
import type { SizeName } from '../motif/stated'
import { laidBlanketOf } from '../plans/layouts'
import { settled, withGauge } from '../settled'
import { translateStitch } from '../stitches/terms'
import { withoutOpenYarns } from './named-yarns'
import { withYarn } from './project-yarns'
import { piecesInto, withPiece } from './pieces'
import { readPage } from './read-page'
import type { PageFact } from './read-page'
import { unitsOf } from './units-of-page'
import { isLongAndWide } from './sizes'
import type { SizeOf } from './sizes'
import { changeWords, labelOf, nowWords, valueWords } from './words'

export interface Proposal {
  readonly id: string
  readonly kind: PageFact['kind']
  readonly at: PageFact['at']
  /** "Hook", "Yarn A": what it is about. */
  readonly label: string
  /** "5 mm". */
  readonly value: string
  /** What the project has there now; null where it has nothing. */
  readonly now: string | null
  /** What undo calls it: "take the hook from the page". */
  readonly change: string
  /** What it would set: values by their place in the file, of the motif as `motif.…`. */
  readonly sets: Readonly<Record<string, unknown>>
  /** Proposals that set the same: of several hooks one can be the motif's. */
  readonly field: string
}

export type MotifShape = MotifAccount['shape'] | null

/** A pasted page as a motif keeps it. */
interface Page {
  readonly text: string
  readonly terms?: Terms
  /** Proposals that were taken or left, by id. */
  readonly done?: string[]
}

/** Where a motif of a shape keeps a measure. */
const PLACES: Readonly<Record<MotifAccount['shape'], Readonly<Record<SizeOf, keyof MeasuredSizes>>>> = {
  petals: {
    ...{ across: 'overTips', sideToSide: 'overTips', pointToPoint: 'overTips' },
    ...{ length: 'overTips', width: 'overTips' },
  },
  straight: {
    ...{ across: 'sideToSide', sideToSide: 'sideToSide', pointToPoint: 'pointToPoint' },
    ...{ length: 'sideToSide', width: 'sideToSide' },
  },
  round: {
    ...{ across: 'across', sideToSide: 'across', pointToPoint: 'across' },
    ...{ length: 'across', width: 'across' },
  },
  leaf: {
    ...{ across: 'length', sideToSide: 'width', pointToPoint: 'length' },
    ...{ length: 'length', width: 'width' },
  },
}

type SizeFact = Extract<PageFact, { kind: 'size' }>

function measuresOf({ size }: SizeFact, shape: MotifShape): MeasuredSizes {
  if (size.of !== 'motif') return {}
  const measures: Record<string, number> = {}
  for (const [of, value] of size.sizes) measures[shape ? PLACES[shape][of] : of] ??= value
  return { ...measures, ...(size.blocked === null ? {} : { blocked: size.blocked }) }
}

/** The stitch of a gauge in the terms of a project. */
const gaugeInto = (gauge: StitchGauge, from: Terms, into: Terms): StitchGauge =>
  gauge.stitch ? { ...gauge, stitch: translateStitch(gauge.stitch, from, into) ?? gauge.stitch } : gauge

const under = (place: string, values: object): Record<string, unknown> =>
  Object.fromEntries(Object.entries(values).map(([key, value]) => [`${place}.${key}`, value]))

function setsOf(fact: PageFact, shape: MotifShape): Record<string, unknown> {
  switch (fact.kind) {
    case 'name':
      return { title: fact.name, 'motif.name': fact.motif }
    case 'designer':
      return { designer: fact.designer }
    case 'skill':
      return fact.skill ? { 'pattern.skill': fact.skill } : { 'motif.instructions': noteOf(fact) }
    case 'notes':
      return { 'motif.instructions': noteOf(fact) }
    case 'hook':
      return { 'motif.gauge.hook': fact.hook }
    case 'swatch':
    case 'rounds-gauge':
      return under('motif.gauge', fact.gauge)
    case 'size':
      return fact.size.of === 'whole'
        ? under('layout.target', { width: fact.size.width, height: fact.size.height })
        : under('motif.measured', measuresOf(fact, shape))
    case 'yarn':
      return under('yarns[]', fact.yarn)
    case 'piece':
      return { 'motifs[].name': fact.name, 'motifs[].rounds': fact.rounds }
  }
}

const noteOf = (fact: Extract<PageFact, { kind: 'notes' | 'skill' }>): string =>
  fact.kind === 'skill' ? `Skill level: ${fact.text}` : fact.text

/** Facts of one field exclude each other; yarns and notes stand beside each other. */
function fieldOf(fact: PageFact): string {
  if (fact.kind === 'size') return fact.size.of === 'whole' ? 'target' : 'size'
  return ['yarn', 'notes', 'piece'].includes(fact.kind) ? fact.id : fact.kind
}

/** What some facts of a page would set, in `terms`; of a project and its motif, where they are given. */
function proposalOf(
  fact: PageFact,
  terms: Terms,
  project: Project | null,
  motif: Motif | null,
  shape: MotifShape,
  /** Those of the page, where there is no project. */
  units: UnitSystem = project ? settled(project).units : 'metric',
): Proposal {
  return {
    id: fact.id,
    kind: fact.kind,
    at: fact.at,
    label: labelOf(fact, terms),
    value: valueWords(fact, units),
    now: project && motif ? nowWords(fact, project, motif, shape) : null,
    change: changeWords(fact, terms),
    sets: setsOf(fact, shape),
    field: fieldOf(fact),
  }
}

/** Facts of a page with their stitches in the terms of a project; how long and wide one is that is neither is a note. */
function factsOf(page: Page, into: Terms, shape: MotifShape): PageFact[] {
  const from = page.terms ?? into
  return readPage(page.text, from).map((fact) => {
    if (fact.kind === 'size' && shape !== 'leaf' && isLongAndWide(fact.size))
      return { kind: 'notes', text: `Finished size: ${fact.at.words}`, id: fact.id, at: fact.at }
    if (fact.kind === 'swatch') return { ...fact, gauge: gaugeInto(fact.gauge, from, into) }
    return fact.kind === 'piece' ? { ...fact, rounds: piecesInto(fact.rounds, from, into) } : fact
  })
}

/** What a text proposes by itself, without a project. */
export function proposalsOfText(text: string, terms: Terms): Proposal[] {
  const facts = readPage(text, terms)
  const units = unitsOf(facts)
  return facts.map((fact) => proposalOf(fact, terms, null, null, null, units))
}

const motifOf = (project: Project, id: string): Motif | undefined =>
  project.motifs?.find((motif) => motif.id === id)

const pageOf = (motif: Motif | undefined): Page | undefined =>
  motif?.kind === 'rounds' && motif.page ? { ...motif.page, text: motif.page.text ?? '' } : undefined

function patched(project: Project, id: string, patch: (motif: Motif) => Motif): Project {
  return { ...project, motifs: project.motifs?.map((motif) => (motif.id === id ? patch(motif) : motif)) }
}

/** A motif with sizes that its page states: nobody has measured one, but where they stand already, as measured. */
function withSize(motif: Motif, sizes: MeasuredSizes): Motif {
  const before: MeasuredSizes = motif.kind === 'rounds' ? (motif.measured ?? {}) : motif
  const { blocked: _, ...numbers } = sizes as Record<string, number> & { blocked?: boolean }
  const news = Object.entries(numbers).filter(([name, value]) => before[name as SizeName] !== value)
  const next: Motif =
    motif.kind === 'rounds' ? { ...motif, measured: { ...motif.measured, ...sizes } } : { ...motif, ...sizes }
  return news.length === 0 ? next : { ...next, stated: { ...motif.stated, ...Object.fromEntries(news) } }
}

function apply(
  project: Project,
  id: string,
  fact: PageFact,
  shape: MotifShape,
  facts: readonly PageFact[],
): Project {
  /** A page names a project that nobody has named. */
  const untitled = (project.title ?? '').trim() === ''
  const withMotif = (patch: (motif: Motif) => Motif, title?: string) => ({
    ...patched(project, id, patch),
    ...(title !== undefined && { title }),
  })
  const withOwnGauge = (gauge: StitchGauge) =>
    withMotif((motif) => {
      // What a page says belongs together: its gauge was counted with its hook.
      const { countedWith: _, ...own } = withGauge(motif, project.gauge).gauge ?? {}
      return { ...motif, gauge: { ...own, ...gauge } }
    })
  switch (fact.kind) {
    case 'name':
      return withMotif((motif) => ({ ...motif, name: fact.motif }), untitled ? fact.name : undefined)
    case 'designer':
      return { ...project, designer: fact.designer }
    case 'skill':
    case 'notes':
      if (fact.kind === 'skill' && fact.skill)
        return { ...project, pattern: { ...project.pattern, skill: fact.skill } }
      return withMotif((motif) => ({
        ...motif,
        instructions: [motif.instructions ?? '', noteOf(fact)]
          .filter((text) => text.trim() !== '')
          .join('\n'),
      }))
    case 'hook':
      return withOwnGauge({ hook: fact.hook })
    case 'swatch': {
      // What the first rounds measured with another gauge would rule over the new one.
      const isTold = facts.some(({ kind }) => kind === 'rounds-gauge')
      return withOwnGauge({
        ...{ rows: undefined, ...fact.gauge },
        ...(isTold ? {} : { rounds: undefined, across: undefined }),
      })
    }
    case 'rounds-gauge':
      return withOwnGauge(fact.gauge)
    case 'size':
      if (fact.size.of === 'whole') {
        const { width, height } = fact.size
        const layout = laidBlanketOf(project)
        return layout ? { ...project, layout: { ...layout, target: { width, height } } } : project
      }
      return withMotif((motif) => withSize(motif, measuresOf(fact, shape)))
    case 'yarn':
      return withYarn(project, id, fact, facts.filter(({ kind }) => kind === 'yarn').length === 1)
    case 'piece':
      return withPiece(project, id, fact)
  }
}

/** Whether a project has all of it already; notes also where they stand among others. */
function isThere(
  project: Project,
  id: string,
  fact: PageFact,
  shape: MotifShape,
  facts: readonly PageFact[],
): boolean {
  const motif = motifOf(project, id)
  if (fact.kind === 'skill' && fact.skill) return project.pattern?.skill === fact.skill
  if (fact.kind === 'notes' || fact.kind === 'skill')
    return motif?.instructions?.includes(noteOf(fact)) ?? false
  if (fact.kind === 'piece') return false
  if (fact.kind === 'size' && fact.size.of === 'whole' && !laidBlanketOf(project)) return true
  const next = apply(project, id, fact, shape, facts)
  const touched = (of: Project) =>
    JSON.stringify([
      motifOf(of, id),
      of.title,
      of.yarns,
      of.designer,
      laidBlanketOf(of)?.target,
      of.colourways,
    ])
  return touched(next) === touched(project)
}

/** What is still to be answered of the page of a motif, in the order of the page. */
export function proposalsFor(project: Project, motifId: string, shape: MotifShape): Proposal[] {
  const motif = motifOf(project, motifId)
  const page = pageOf(motif)
  if (!motif || !page) return []
  const { terms } = settled(project)
  const done = new Set(page.done)
  const facts = factsOf(page, terms, shape)
  return facts
    .filter((fact) => !done.has(fact.id) && !isThere(project, motifId, fact, shape, facts))
    .map((fact) => proposalOf(fact, terms, project, motif, shape))
}

/**
 * Keeps the page that a motif's rounds were pasted from, where it says something besides; `more`: behind what was
 * pasted before.
 */
export function withPage(
  project: Project,
  motifId: string,
  text: string,
  terms: Terms,
  more = false,
): Project {
  const before = pageOf(motifOf(project, motifId))
  const isMore = more && before !== undefined && (before.terms ?? terms) === terms
  if (more && readPage(text, terms).length === 0) return project
  const page = isMore
    ? { ...before, text: `${before.text}\n\n${text}` }
    : readPage(text, terms).length > 0
      ? { text, terms }
      : undefined
  return patched(project, motifId, (motif) => (motif.kind === 'rounds' ? { ...motif, page } : motif))
}

/** How many facts of a motif's page were answered. */
export const answered = (motif: Motif): number => pageOf(motif)?.done?.length ?? 0

const withDone = (project: Project, id: string, done: readonly string[]): Project =>
  patched(project, id, (motif) =>
    motif.kind === 'rounds' && motif.page ? { ...motif, page: { ...motif.page, done: [...done] } } : motif,
  )

const doneOf = (project: Project, id: string): readonly string[] => pageOf(motifOf(project, id))?.done ?? []

/** Leaves proposals as they are: they are not asked again. */
export const leaveProposals = (project: Project, motifId: string, ids: readonly string[]): Project =>
  withDone(project, motifId, [...new Set([...doneOf(project, motifId), ...ids])])

/** Asks everything of the page again. */
export const askAgain = (project: Project, motifId: string): Project => withDone(project, motifId, [])

/** Takes proposals. Of several that would set the same the first one holds, and the others stay to be asked. */
export function takeProposals(
  project: Project,
  motifId: string,
  ids: readonly string[],
  shape: MotifShape,
): Project {
  const page = pageOf(motifOf(project, motifId))
  if (!page) return project
  const facts = factsOf(page, settled(project).terms, shape)
  const fields = new Set<string>()
  let next = project
  const taken: string[] = []
  for (const fact of facts) {
    const field = fieldOf(fact)
    if (!ids.includes(fact.id) || fields.has(field)) continue
    fields.add(field)
    next = apply(next, motifId, fact, shape, facts)
    taken.push(fact.id)
  }
  const isYarn = taken.some((each) => facts.some(({ kind, id }) => id === each && kind === 'yarn'))
  return leaveProposals(isYarn ? withoutOpenYarns(next) : next, motifId, taken)
}
