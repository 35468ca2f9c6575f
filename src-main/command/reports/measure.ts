/** `petalyard measure` for people: each motif with its sizes, rounds and yarn. */
import type { MotifAccount, Provenance } from '../../../shared-types/plan'
import type { Project, Terms } from '../../../shared-types/project'
import { isStitchKey } from '../../../src-core/stitches/table'
import { stitchAbbreviation } from '../../../src-core/stitches/terms'
import { lieWords } from '../../../src-core/figures/lie-words'
import { capital, LIE_WORDS } from '../../../src-core/figures/words'
import { figureSizes, stands } from '../../../src-core/motif/forms'
import { layingOfAccount, leadMeasure, readingsOf, rulerWords } from '../../../src-core/motif/ruler'
import { formatNumber, formatYarnLength, lengthsIn } from '../../../src-core/units/format'
import { listing, table } from '../text'
import { saying } from '../../../src-core/stitches/spelling'
import { termWord } from '../../../src-core/stitches/terms'
import { termsOf, unitsOf } from './words'

const sources = (gauge: string): Record<Provenance, string> => ({
  measured: 'your own measure',
  'other-hook': 'your own measure with another hook: make one with this one and measure it',
  stated: 'the finished size that the page states, which nobody has measured: make one and measure it',
  aimed: `worked out from your own measure for another ${gauge} or other rounds: make one and measure it`,
  gauge: `your rounds and ${gauge}`,
  'rule-of-thumb': `a rule of thumb, since no ${gauge} is given: make one and measure it`,
})

/** The measures of a motif as a ruler shows them, the leading one first. */
function sizesOf(motif: MotifAccount, terms: Terms): [string, number][] {
  const { overTips, overValleys } = motif
  switch (motif.shape) {
    case 'round':
      return [['Across', overTips]]
    case 'straight':
      return [
        ['Point to point', overTips],
        ['Side to side', overValleys],
      ]
    case 'leaf':
      return figureSizes(motif).map(([name, mm]) => [capital(name), mm])
    case 'petals': {
      const laying = layingOfAccount(motif)
      const words = rulerWords(laying, terms)
      const { lead, second = 0 } = readingsOf(laying, motif, 1)
      return [
        [capital(words.lead), lead],
        [capital(words.second), second],
      ]
    }
  }
}

export function measureReport(project: Project, motifs: readonly MotifAccount[], width: number): string[] {
  return motifs.flatMap((motif, index) => [...(index > 0 ? [''] : []), ...motifReport(project, motif, width)])
}

function motifReport(project: Project, motif: MotifAccount, width: number): string[] {
  const units = unitsOf(project)
  const sizes = sizesOf(motif, termsOf(project))
  const length = lengthsIn(units, [
    ...sizes.map(([, mm]) => mm),
    ...motif.rounds.map(({ outerRadius }) => 2 * outerRadius),
  ])
  const [lead, leadWords] = leadMeasure(motif, termsOf(project))
  const share = lead / motif.overTips
  const range = `${length(motif.range.low * share)} to ${length(motif.range.high * share)} ${leadWords}`
  const facts = sizes.map(([name, mm]): [string, string] => [name, length(mm)])
  if (layingOfAccount(motif) !== 'across') facts.push(['Through its tips', length(motif.overTips)])
  if (motif.range.low !== motif.range.high) facts.push(['May come out', range])
  const lies = lieWords(motif)
  if (lies !== '') facts.push(['Lies', lies])
  const source = sources(termWord('gauge', termsOf(project)))[motif.provenance]
  if (motif.shape === 'straight' && motif.rounds.length > 0)
    facts.push(['Rounds', 'across at their widest, from corner to corner where they have corners'])
  facts.push(['Taken from', source], ['Can be joined', anchorWords(motif)])
  return [
    `${motif.name || motif.id} (${motif.id})`,
    ...listing(facts, width),
    ...roundTable(motif, length, width),
    ...colourTable(project, motif, width),
  ]
}

/** "at 6 tips, 6 valleys": how many places of each kind there are. */
function anchorWords(motif: MotifAccount): string {
  const counts = new Map<string, number>()
  for (const anchor of motif.anchors) counts.set(anchor.kind, (counts.get(anchor.kind) ?? 0) + 1)
  const words = [...counts].map(([kind, count]) => `${count} ${PLACES[kind] ?? kind}`)
  return words.length > 0 ? `at ${words.join(', ')}` : 'nowhere'
}

const PLACES: Record<string, string> = {
  tip: 'tips',
  shoulder: 'shoulders',
  valley: 'dips',
  corner: 'corners',
  side: 'side places',
}

function roundTable(motif: MotifAccount, length: (mm: number) => string, width: number): string[] {
  if (motif.rounds.length === 0) return []
  const rows = motif.rounds.map((round) => [
    formatNumber(round.number),
    round.outerRadius > 0 ? length(2 * round.outerRadius) : '–',
    formatNumber(round.stitches),
    formatNumber(round.flatness, 2),
    round.lies ? LIE_WORDS[round.lies] : '',
  ])
  // A figure with a length grows along it.
  const across = motif.shape !== 'leaf' ? 'Across' : stands(motif) ? 'High' : 'Long'
  const right = ['Round', across, 'Stitches', 'Fullness'].map((head) => ({ head, align: 'right' as const }))
  const columns = [...right, { head: 'How it lies', align: 'left' as const }]
  return ['', ...table(columns, rows, width)]
}

function colourTable(project: Project, motif: MotifAccount, width: number): string[] {
  const slots = [...new Set([...Object.keys(motif.stitches), ...Object.keys(motif.metres)])]
  if (slots.length === 0) return []
  const rows = slots.map((slot) => {
    const stitches = Object.entries(motif.stitches[slot] ?? {}).map(
      ([name, count]) =>
        `${formatNumber(count)} ${isStitchKey(name) ? stitchAbbreviation(name, termsOf(project)) : name}`,
    )
    const metres = motif.metres[slot]
    return [
      slot,
      metres === undefined ? '–' : formatYarnLength(metres, unitsOf(project)),
      stitches.join(', ') || '–',
    ]
  })
  const columns = [
    { head: saying(termsOf(project))`Colour`, align: 'left' },
    { head: 'Yarn', align: 'right' },
    { head: 'Stitches', align: 'left' },
  ] as const
  return ['', ...table(columns, rows, width)]
}
