/** Every text of a project that is printed, with where it stands. */
import type { FindingTarget } from '../../shared-types/finding'
import type { Colourway, Kit, Layout, Motif, Project, StitchGauge, Yarn } from '../../shared-types/project'
import { formatMoney } from '../units/format'

interface ProjectText {
  /** Path into the file. */
  readonly where: string
  /** What it is, within a sentence: "the title". */
  readonly what: string
  readonly text: string
  /** Stands in the motifs of the map, where there is room for a letter or two. */
  readonly isCode?: boolean
  readonly target?: FindingTarget
}

/** What printed texts are read from: each part is the same object for as long as nothing in it changed. */
export interface TextSources {
  readonly title: string | undefined
  readonly designer: string | undefined
  readonly notes: string | undefined
  readonly pattern: Project['pattern']
  readonly currency: string | undefined
  readonly gauge: StitchGauge | undefined
  readonly yarns: readonly Yarn[] | undefined
  readonly motifs: readonly Motif[] | undefined
  readonly colourways: readonly Colourway[] | undefined
  readonly items: Extract<Layout, { kind: 'garland' | 'applique' }>['items']
  readonly edging: Extract<Layout, { kind: 'blanket' }>['edging']
  readonly kit: Kit | undefined
}

/** A name as findings quote it. */
const quoted = (name: string): string => `“${name}”`

function* ofYarns(yarns: readonly Yarn[]): Generator<ProjectText> {
  for (const [i, { id, name, fibre }] of yarns.entries()) {
    const target = { yarn: id }
    yield { where: `yarns[${i}].name`, what: 'the name of a yarn', text: name || id, target }
    yield {
      where: `yarns[${i}].fibre`,
      what: `the fibre of ${quoted(name || id)}`,
      text: fibre ?? '',
      target,
    }
  }
}

function* ofMotifs(motifs: readonly Motif[]): Generator<ProjectText> {
  for (const [i, motif] of motifs.entries()) {
    const where = `motifs[${i}]`
    const target = { motif: motif.id }
    const name = motif.name || motif.id
    yield { where: `${where}.name`, what: 'the name of a motif', text: name, target }
    const of = quoted(name)
    const instructions = motif.instructions ?? ''
    yield { where: `${where}.instructions`, what: `the instructions of ${of}`, text: instructions, target }
    const stitch = motif.gauge?.stitch ?? ''
    yield { where: `${where}.gauge.stitch`, what: `the stitch in the gauge of ${of}`, text: stitch, target }
    const slots =
      motif.kind === 'measured' ? (motif.slots ?? []) : (motif.rounds ?? []).map(({ slot }) => ({ slot }))
    const names = [...new Set(slots.map(({ slot }) => slot ?? ''))].join(' ')
    yield { where: `${where}.slots`, what: `the names of the parts of ${of}`, text: names, target }
    if (motif.kind !== 'rounds') continue
    const rounds = (motif.rounds ?? []).map(({ work }) => work).join('\n')
    yield { where: `${where}.rounds`, what: `the rounds of ${of}`, text: rounds, target }
    yield {
      where: `${where}.foundation`,
      what: `the foundation of ${of}`,
      text: motif.foundation?.ring ?? '',
      target,
    }
    yield {
      where: `${where}.special`,
      what: `the special stitches of ${of}`,
      text: motif.special ?? '',
      target,
    }
  }
}

function* ofColourways(colourways: readonly Colourway[]): Generator<ProjectText> {
  for (const [i, { id, code, name }] of colourways.entries()) {
    const target = { colourway: id }
    yield {
      where: `colourways[${i}].code`,
      what: 'the letter of a colourway',
      text: code ?? '',
      isCode: true,
      target,
    }
    yield { where: `colourways[${i}].name`, what: 'the name of a colourway', text: name ?? '', target }
  }
}

function* ofKit(kit: Kit): Generator<ProjectText> {
  for (const [i, { name }] of (kit.extras ?? []).entries())
    yield { where: `layout.kit.extras[${i}].name`, what: 'the name of something put in', text: name }
  yield { where: 'layout.kit.care', what: 'the care', text: kit.care ?? '' }
  yield { where: 'layout.kit.pattern.by', what: 'whose pattern it is', text: kit.pattern?.by ?? '' }
}

/** All of them, in the order of the file; empty ones are left out. */
export function printedTexts(sources: TextSources): ProjectText[] {
  const { title, designer, notes, pattern, currency, gauge, yarns, motifs, colourways, items, edging, kit } =
    sources
  const beads = (items ?? []).flatMap((item, i): ProjectText[] => {
    const text = 'bead' in item && typeof item.bead === 'string' ? item.bead : ''
    return [{ where: `layout.items[${i}].bead`, what: 'the name of a bead', text }]
  })
  const all: ProjectText[] = [
    { where: 'title', what: 'the title', text: title ?? '' },
    { where: 'designer', what: 'the designer’s name', text: designer ?? '' },
    { where: 'notes', what: 'the notes', text: notes ?? '' },
    { where: 'pattern.line', what: 'the line below the title', text: pattern?.line ?? '' },
    { where: 'pattern.copyright', what: 'the copyright', text: pattern?.copyright ?? '' },
    { where: 'currency', what: 'the currency', text: currency ? formatMoney(0, currency) : '' },
    { where: 'gauge.stitch', what: 'the stitch of the gauge', text: gauge?.stitch ?? '' },
    ...ofYarns(yarns ?? []),
    ...ofMotifs(motifs ?? []),
    ...ofColourways(colourways ?? []),
    ...beads,
    {
      where: 'layout.edging.rounds',
      what: 'the rounds of the edging',
      text: (edging?.rounds ?? []).join(' '),
    },
    ...(edging?.written ?? []).map(({ work }, i): ProjectText => ({
      where: `layout.edging.written[${i}].work`,
      what: 'a round of the edging',
      text: work ?? '',
    })),
    ...(kit ? ofKit(kit) : []),
  ]
  return all.filter(({ text }) => text.trim() !== '')
}
