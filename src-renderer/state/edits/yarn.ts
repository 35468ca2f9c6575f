/** Edits of yarns and colourways. Masses in g, ball lengths in m. */
import { say } from '../say'
import { saying } from '../../../src-core/stitches/spelling'
import { settled } from '../../../src-core/settled'
import type { Colourway, Project, Yarn } from '../../../shared-types/project'
import { BAND_FIELDS } from '../../../shared-types/project'
import { editsOf } from '../../kinds/layouts'
import { shadeNamed } from '../../../src-core/page/shade-names'
import { patternLetters } from '../../../src-core/colour/letters'
import { freeId, freeLetter, freeName } from './ids'
import { findMotif, mainMotif, slotsOf } from './motif'

/** Colours that a new yarn starts with, far enough apart to be told from each other. */
const FIRST_COLOURS = ['#b3583f', '#e3c188', '#6f8fa6', '#7c9a78', '#8a6a8f', '#d9b3a6', '#3f4f63', '#c9c2b2']

/** A colour that no yarn has yet; where all are taken, each again in its turn. */
function freeColour(yarns: readonly Yarn[]): string {
  const taken = new Set(yarns.map(({ colour }) => colour?.toLowerCase()))
  const turn = FIRST_COLOURS[yarns.length % FIRST_COLOURS.length]!
  return taken.has(turn) ? (FIRST_COLOURS.find((colour) => !taken.has(colour)) ?? turn) : turn
}

export const findYarn = (project: Project, id: string | undefined): Yarn | undefined =>
  project.yarns?.find((yarn) => yarn.id === id)

export const findColourway = (project: Project, id: string | null | undefined): Colourway | undefined =>
  project.colourways?.find((way) => way.id === id)

/** A yarn without what is assumed of some fields of its band: somebody entered them. */
function entered(yarn: Yarn, fields: readonly string[]): Yarn {
  const { assumed = [], ...rest } = yarn
  const left = assumed.filter((field) => !fields.includes(field))
  return left.length > 0 ? { ...rest, assumed: left } : rest
}

/** Puts fields over those of a yarn; what is put there of its band is assumed no longer. */
export const patchYarn = (project: Project, id: string, patch: Partial<Yarn>): Project => ({
  ...project,
  yarns: project.yarns?.map((yarn) =>
    yarn.id === id ? { ...entered(yarn, Object.keys(patch)), ...patch } : yarn,
  ),
})

/**
 * Names a yarn. One that was given its first name takes the colour that this name says ("Cream"), as long as nobody chose
 * another than it began with.
 */
export function nameYarn(project: Project, id: string, name: string): Project {
  const yarn = findYarn(project, id)
  const isFirst = UNNAMED.test(yarn?.name?.trim() ?? '') && FIRST_COLOURS.includes(yarn?.colour ?? '')
  const colour = isFirst ? shadeNamed(name) : null
  return patchYarn(project, id, { name, ...(colour !== null && { colour }) })
}

/** Nothing, or what a new yarn is called: "Yarn 2", "Centre yarn". */
const UNNAMED = /^((\p{L}+ )?yarn( \d+)?)?$/iu

/** Puts what the band of one yarn says, its price and other sizes included, over that of others. */
export function shareBand(project: Project, from: string, to: readonly string[]): Project {
  const yarn = findYarn(project, from)
  if (!yarn) return project
  const { ballGrams, ballMetres, price, fibre, packs } = yarn
  const band = Object.fromEntries(
    Object.entries({ ballGrams, ballMetres, price, fibre, packs }).filter(([, value]) => value !== undefined),
  )
  return to.reduce((shared, id) => patchYarn(shared, id, band), project)
}

/** Says that all that is assumed of a yarn's band is right. */
export const confirmBand = (project: Project, id: string): Project => ({
  ...project,
  yarns: project.yarns?.map((yarn) => (yarn.id === id ? entered(yarn, BAND_FIELDS) : yarn)),
})

/**
 * A yarn to start from, in a colour of its own: its band is that of the project's last yarn, or of a common 50 g
 * ball, and is assumed until somebody enters it.
 */
export function newYarn(project: Project): Yarn {
  const yarns = project.yarns ?? []
  const last = yarns.at(-1)
  const names = yarns.map((yarn) => yarn.name)
  return {
    id: freeId('y', yarns),
    name: freeName('Yarn', names),
    colour: freeColour(yarns),
    ballGrams: last?.ballGrams ?? 50,
    ballMetres: last?.ballMetres ?? 125,
    ...(last?.fibre ? { fibre: last.fibre } : {}),
    ...(last?.price ? { price: last.price } : {}),
    assumed: ['ballGrams', 'ballMetres', ...(last?.price ? (['price'] as const) : [])],
  }
}

/** g. A cone (ours), where nothing better is known. */
const NEW_PACK = 500

/** Adds a size that a yarn is sold in besides the ball, for as much a gram as the ball costs. */
export function addPack(project: Project, id: string): Project {
  const yarn = findYarn(project, id)
  const perGram = yarn?.price && yarn.ballGrams ? yarn.price / yarn.ballGrams : null
  const pack = {
    grams: NEW_PACK,
    ...(perGram === null ? {} : { price: Math.round(perGram * NEW_PACK * 100) / 100 }),
  }
  return patchYarn(project, id, { packs: [...(yarn?.packs ?? []), pack] })
}

export const removePack = (project: Project, id: string, index: number): Project =>
  patchYarn(project, id, { packs: findYarn(project, id)?.packs?.filter((_, i) => i !== index) })

export const addYarn = (project: Project, yarn: Yarn): Project => ({
  ...project,
  yarns: [...(project.yarns ?? []), yarn],
})

/** What still needs a yarn, in words; empty where it may go. */
export function usesOfYarn(project: Project, id: string): string[] {
  const uses: string[] = []
  for (const way of project.colourways ?? [])
    if (Object.values(way.yarns ?? {}).includes(id))
      uses.push(say`colourway ${way.code ?? way.name ?? way.id}`)
  if (project.joining?.yarn === id) uses.push('the joins')
  return project.layout ? [...uses, ...editsOf(project.layout).usesOfYarn(id)] : uses
}

export const removeYarn = (project: Project, id: string): Project => ({
  ...project,
  yarns: project.yarns?.filter((yarn) => yarn.id !== id),
})

/** Puts fields over those of a colourway. */
export const patchColourway = (project: Project, id: string, patch: Partial<Colourway>): Project => ({
  ...project,
  colourways: project.colourways?.map((way) => (way.id === id ? { ...way, ...patch } : way)),
})

/** Chooses the yarn of one colour of a colourway. */
export const setSlotYarn = (project: Project, id: string, slot: string, yarn: string): Project =>
  patchColourway(project, id, { yarns: { ...findColourway(project, id)?.yarns, [slot]: yarn } })

/** Combinations of yarns that are looked through for one that is not there yet, at most (our choice). */
const MOST_COMBINATIONS = 5000

/**
 * A colourway of a motif with the next free letter, and unlike those there: yarns that nothing uses yet come
 * first, on the colours that are worked last and seen most; then a combination that is not there yet.
 */
export function newColourway(project: Project, motifId: string): Colourway {
  const ways = project.colourways ?? []
  const motif = findMotif(project, motifId) ?? mainMotif(project)
  const slots = motif ? slotsOf(motif) : []
  // "Join B" in the rounds of a pattern is no colourway.
  const code = freeLetter([...ways, ...patternLetters(slots).map((letter) => ({ code: letter }))])
  const own = ways.filter((way) => way.motif === motifId)
  return {
    id: freeId('c', ways),
    code,
    name: saying(settled(project).terms)`Colourway ${code}`,
    motif: motifId,
    yarns: newYarns(project, slots, own),
  }
}

function newYarns(
  project: Project,
  slots: readonly string[],
  own: readonly Colourway[],
): Record<string, string> {
  const ids = (project.yarns ?? []).map(({ id }) => id)
  const [first] = ids
  if (first === undefined) return {}
  const last = own.at(-1)
  const usual = slots.map((slot) => last?.yarns?.[slot] ?? first)
  const named = (yarns: readonly string[]) =>
    Object.fromEntries(slots.map((slot, index) => [slot, yarns[index]!]))
  // The first colourway of a project takes the yarns in their order.
  const used = new Set((project.colourways ?? []).flatMap((way) => Object.values(way.yarns ?? {})))
  const unused = ids.filter((id) => !used.has(id) && usesOfYarn(project, id).length === 0)
  if (own.length === 0) return named(usual)
  // The outermost colour changes, the others (a centre in one yarn for all) stay.
  const [fresh] = unused
  if (fresh !== undefined) return named([...usual.slice(0, -1), fresh])
  const taken = new Set(own.map((way) => slots.map((slot) => way.yarns?.[slot]).join('\n')))
  const asMany = new Set(usual).size
  let found: readonly string[] | null = null
  for (const yarns of combinations(ids, usual)) {
    if (taken.has(yarns.join('\n'))) continue
    // Colours that were told apart are told apart again, where that can be had.
    if (new Set(yarns).size >= asMany) return named(yarns)
    found ??= yarns
  }
  return named(found ?? usual)
}

/** Yarns for each colour, those of the last colours changing first, starting behind the usual ones. */
function* combinations(ids: readonly string[], usual: readonly string[]): Generator<readonly string[]> {
  const start = usual.map((id) => Math.max(0, ids.indexOf(id)))
  const steps = usual.map(() => 0)
  for (let many = 0; many < MOST_COMBINATIONS; many++) {
    let slot = steps.length - 1
    while (slot >= 0 && steps[slot] === ids.length - 1) steps[slot--] = 0
    if (slot < 0) return
    steps[slot] = (steps[slot] ?? 0) + 1
    yield steps.map((step, index) => ids[((start[index] ?? 0) + step) % ids.length]!)
  }
}

/** Adds a colourway, and to the fill where that names its colourways. */
export function addColourway(project: Project, way: Colourway): Project {
  const next = { ...project, colourways: [...(project.colourways ?? []), way] }
  return next.layout ? { ...next, layout: editsOf(next.layout).withWay(way) } : next
}

/** Takes a colourway out, also of the fill and of what was painted. */
export function removeColourway(project: Project, id: string): Project {
  const next = { ...project, colourways: project.colourways?.filter((way) => way.id !== id) }
  return next.layout ? { ...next, layout: editsOf(next.layout).withoutWays(new Set([id])) } : next
}
