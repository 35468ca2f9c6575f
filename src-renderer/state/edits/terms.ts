/** Switches the terms of a project: every stitch name in it is brought over, so that it means the same work. */
import type { Project, RoundsMotif, StitchGauge, Terms } from '../../../shared-types/project'
import { translateTexts } from '../../../src-core/notation/translate'
import { saying } from '../../../src-core/stitches/spelling'
import { translateStitch } from '../../../src-core/stitches/terms'
import { editsOf } from '../../kinds/layouts'
import { slotsOf } from './motif'
import { renameSlot } from './slots'
import { settled } from '../../../src-core/settled'

const gaugeIn = <Gauge extends StitchGauge | undefined>(gauge: Gauge, from: Terms, to: Terms): Gauge => {
  if (!gauge) return gauge
  const heights = gauge.heights
  return {
    ...gauge,
    ...(gauge.stitch ? { stitch: translateStitch(gauge.stitch, from, to) ?? gauge.stitch } : {}),
    ...(heights
      ? {
          heights: Object.fromEntries(
            Object.entries(heights).map(([stitch, mm]) => [translateStitch(stitch, from, to) ?? stitch, mm]),
          ),
        }
      : {}),
  }
}

/** Names that the program gave, which nobody typed, and how the terms spell them. */
const GIVEN: readonly (readonly [name: RegExp, spelled: (terms: Terms) => string])[] = [
  [/^Colou?rway(?= [A-Z]{1,2}$)/, (terms) => saying(terms)`Colourway`],
  [/^Cent(?:re|er) yarn$/, (terms) => saying(terms)`Centre yarn`],
]

/** The colour of a motif that the program named so. */
const GIVEN_SLOT = /^cent(?:re|er)$/

/** The project with the colours of its motifs that the program named as the terms spell them. */
const withSlotsIn = (project: Project, terms: Terms): Project =>
  (project.motifs ?? []).reduce((next, motif) => {
    const given = slotsOf(motif).find((slot) => GIVEN_SLOT.test(slot))
    return given === undefined ? next : renameSlot(next, motif.id, given, saying(terms)`centre`)
  }, project)

/** A name as the terms spell it, where the program gave it; others stay as they were typed. */
const nameIn = (name: string, terms: Terms): string =>
  GIVEN.reduce((told, [given, spelled]) => told.replace(given, spelled(terms)), name)

const named = <Thing extends { readonly name?: string | undefined }>(thing: Thing, terms: Terms): Thing =>
  thing.name === undefined ? thing : { ...thing, name: nameIn(thing.name, terms) }

/** The rounds of a motif and its own stitches, which belong together. */
function roundsIn({ rounds, special }: RoundsMotif, from: Terms, to: Terms): Partial<RoundsMotif> {
  const [stitches, ...works] = translateTexts(
    [special ?? '', ...(rounds ?? []).map(({ work }) => work)],
    from,
    to,
  )
  return {
    ...(rounds && { rounds: rounds.map((round, i) => ({ ...round, work: works[i]! })) }),
    ...(special && { special: stitches! }),
  }
}

/** The project in other terms; sheets that were printed in its terms follow. */
export function setTerms(project: Project, to: Terms): Project {
  const from = settled(project).terms
  if (from === to) return project
  const { layout } = project
  const next: Project = {
    ...project,
    terms: to,
    ...(project.sheet?.terms === from ? { sheet: { ...project.sheet, terms: to } } : {}),
    ...(project.colourways ? { colourways: project.colourways.map((way) => named(way, to)) } : {}),
    ...(project.yarns ? { yarns: project.yarns.map((yarn) => named(yarn, to)) } : {}),
    ...(project.gauge ? { gauge: gaugeIn(project.gauge, from, to) } : {}),
    ...(project.motifs
      ? {
          motifs: project.motifs.map((motif) => ({
            ...motif,
            ...(motif.gauge ? { gauge: gaugeIn(motif.gauge, from, to) } : {}),
            ...(motif.kind === 'rounds' ? roundsIn(motif, from, to) : {}),
          })),
        }
      : {}),
    ...(layout && {
      layout: editsOf(layout).inTerms(
        (stitch) => translateStitch(stitch, from, to) ?? stitch,
        (texts) => translateTexts(texts, from, to),
      ),
    }),
  }
  return withSlotsIn(next, to)
}
