/** How each motif is worked, folded away under its name: rounds, joining round, abbreviations and chart. */
import type { Plan } from '../../shared-types/plan'
import type { Motif, RoundsMotif, Terms } from '../../shared-types/project'
import { workedRounds } from '../../src-core/accounts'
import { chartKey, leftOutWords, readableFigures } from '../../src-core/figures/chart'
import { KEY_SYMBOL } from '../../src-core/figures/chart/key'
import { keyMarks, mapGround } from '../../src-core/figures/map-ground'
import type { Figure } from '../../src-core/figures/figure'
import { suggestedHalf } from '../../src-core/half-motif/half-motif'
import { joiningRounds } from '../../src-core/joining-round/joining-round'
import { SHARED_PLACE, tellsShared, titleOf } from '../../src-core/joining-round/words'
import { hasInstructions, toldInstructions } from '../../src-core/motif/instructions'
import { specialText } from '../../src-core/motif/rounds/special'
import { abbreviationsIn, abbreviationsUsed, signsIn } from '../../src-core/notation/abbreviations'
import { editionText } from '../../src-core/notation/translate'
import { respelled } from '../../src-core/stitches/spelling'
import { textsBeside } from '../paper/texts-beside'
import { roundLines } from '../paper/round-lines'
import { escaped, SvgWriter, symbolNames, writeParts } from '../paper/svg'
import { FIGURE_WORDS } from '../paper/words-figures'
import { otherYarns } from '../paper/words-colours'
import { instructionsHeading, MOTIF_WORDS, partWords, roundsHeading } from '../paper/words-motif'
import { PHONE_WORDS as WORDS } from './words'

/** Room in mm that a chart is laid out for; the page shows it as wide as the screen is. */
const ROOM = { width: 110, height: 130, style: 'colour' } as const

type Entry = readonly [term: string, words: string]

/** The part of the page; '' where no motif has words or rounds. */
export function motifParts(plan: Plan, terms: Terms): string {
  const used = new Set([
    ...[plan.motif, ...plan.accounts, ...plan.fillerMotifs].map((account) => account?.id),
    ...plan.motifs.map(({ motif }) => motif),
    ...(plan.beside ?? []).map(({ motif }) => motif),
  ])
  const parts = plan.settled.motifs
    .filter(({ id }) => used.has(id))
    .flatMap((motif, i) => {
      const body = motifPart(plan, motif, terms, `m${i + 1}`)
      const hasChart = body.includes('<svg')
      const name = motif.name?.trim() || motif.id
      const elsewhere = hasInstructions(motif) ? [] : [`<p>${escaped(WORDS.elsewhere(name))}</p>`]
      return body === ''
        ? elsewhere
        : [
            ...elsewhere,
            `<details class="motif">\n<summary>${escaped(WORDS.rounds(name, hasChart))}</summary>\n${body}\n</details>`,
          ]
    })
  const beside = abbreviationsBeside(plan, terms)
  if (parts.length === 0) return beside === '' ? '' : `<section>\n${beside}\n</section>\n`
  return `<section>\n<h2>${WORDS.motifs(parts.length)}</h2>\n${[...parts, beside].join('\n')}\n</section>\n`
}

/** What joins and border are told in of motifs that have no written rounds, beside which it would stand. */
function abbreviationsBeside(plan: Plan, terms: Terms): string {
  const { settled } = plan
  if (settled.motifs.some((motif) => motif.kind === 'rounds' && (motif.rounds ?? []).length > 0)) return ''
  const job = { plan, settled, terms, units: settled.units }
  const texts = settled.motifs.flatMap((motif) => [
    ...toldInstructions(motif, settled.terms).map((line) => editionText(line, settled.terms, terms)),
    ...textsBeside(job, motif.id),
  ])
  return entries(
    MOTIF_WORDS.abbreviations,
    [...abbreviationsIn(texts, terms), ...signsIn(texts)].map(({ abbreviation, meaning }): Entry => [
      abbreviation,
      meaning,
    ]),
    true,
  )
}

function motifPart(plan: Plan, motif: Motif, terms: Terms, prefix: string): string {
  const { settled } = plan
  const translated = (text: string): string =>
    respelled(editionText(text, settled.terms, terms), settled.terms, terms)
  const account = [plan.motif, ...plan.accounts].find((each) => each?.id === motif.id)
  const written = motif.kind === 'rounds' && (motif.rounds ?? []).length > 0 ? motif : null
  const told = toldInstructions(motif, settled.terms)
  const parts = [
    paragraphs(instructionsHeading(told), told.map(translated)),
    ...(written ? roundsParts(plan, written, terms) : []),
    ...(account ? [paragraphs(MOTIF_WORDS.half, suggestedHalf(plan, account, terms))] : []),
    joiningPart(plan, motif, terms),
    ...(written ? [chartPart(plan, written, terms, prefix)] : []),
  ]
  return parts.filter((part) => part !== '').join('\n')
}

function roundsParts(plan: Plan, motif: RoundsMotif, terms: Terms): string[] {
  const { settled } = plan
  const others = otherYarns(settled, keyMarks(mapGround(plan, 'colour')), motif.id, terms)
  const { read } = workedRounds(settled, motif)
  const special = editionText(specialText(motif), settled.terms, terms).split('\n')
  const lines = roundLines({ settled, terms }, motif, read)
  const account = [plan.motif, ...plan.accounts].find((each) => each?.id === motif.id)
  const beside = [
    ...(account ? suggestedHalf(plan, account, terms) : []),
    ...textsBeside({ plan, settled, terms, units: settled.units }, motif.id),
  ]
  return [
    paragraphs(MOTIF_WORDS.special, special),
    entries(
      roundsHeading(motif, settled.terms, terms),
      lines.map(({ name, slot, text }): Entry => [slot === '' ? name : `${name} · ${slot}`, text]),
    ),
    ...(others === '' ? [] : [`<p>${escaped(others)}</p>`]),
    entries(
      MOTIF_WORDS.abbreviations,
      [
        ...abbreviationsUsed(read.reading.tree, terms, beside),
        ...signsIn([...lines.map(({ text }) => text), ...beside]),
      ].map(({ abbreviation, meaning }): Entry => [abbreviation, meaning]),
      true,
    ),
  ]
}

/** The last round for each way in which the motif meets its neighbours. */
function joiningPart(plan: Plan, { id }: Motif, terms: Terms): string {
  const told = joiningRounds(plan, terms).filter(({ motif }) => motif === id)
  const rounds = told.some(({ joins }) => joins > 0) ? told : []
  const list = entries(
    MOTIF_WORDS.joiningRound,
    rounds.map((round): Entry => [titleOf(round, false), round.words]),
  )
  return tellsShared(rounds) ? `${list}\n<p>${escaped(SHARED_PLACE)}</p>` : list
}

function chartPart({ settled }: Plan, motif: RoundsMotif, terms: Terms, prefix: string): string {
  const { hand } = settled
  const drawing = workedRounds(settled, motif).drawing()
  if (!drawing) return ''
  const { located, beginning, left } = drawing
  const missing = leftOutWords(left)
  const figures = readableFigures(located, beginning, { hand, ...ROOM })
  const advice = beginning.stem.length > 0 ? MOTIF_WORDS.leafAdvice : MOTIF_WORDS.chartAdvice(hand, terms)
  const charts = figures.map((figure, i) => {
    const svg = inline(figure, `${prefix}-${i + 1}`, FIGURE_WORDS.chart(figure, terms))
    return figures.length > 1 ? `<p>${escaped(partWords(figure))}</p>\n${svg}` : svg
  })
  const { width, height } = KEY_SYMBOL
  const symbols = chartKey(located, beginning, { terms, hand }).map(({ words, items }) => {
    const drawn = new SvgWriter(new Map(), null).items(items)
    const box = `${-width / 2} ${-height / 2} ${width} ${height}`
    return `<li><svg viewBox="${box}" width="48" height="36" aria-hidden="true" focusable="false">${drawn}</svg> ${escaped(words)}</li>`
  })
  return [
    `<h3>${MOTIF_WORDS.chart}</h3>`,
    `<p>${escaped(advice)}</p>`,
    ...charts,
    ...(missing === '' ? [] : [`<p>${escaped(missing)}</p>`]),
    `<h3>${MOTIF_WORDS.key}</h3>`,
    `<ul class="key symbols">\n${symbols.join('\n')}\n</ul>`,
  ].join('\n')
}

/** A figure in the page; its names are its own among those of the others. */
function inline(figure: Figure, prefix: string, words: string): string {
  const names = new Map([...symbolNames(figure)].map(([symbol, name]) => [symbol, `${prefix}-${name}`]))
  const { definitions, items } = writeParts(figure, names, new SvgWriter(names, null))
  const defs = definitions.length > 0 ? `<defs>\n${definitions.join('\n')}\n</defs>\n` : ''
  const box = `0 0 ${Math.ceil(figure.width)} ${Math.ceil(figure.height)}`
  return `<svg class="chart" viewBox="${box}" role="img" aria-label="${escaped(words)}" stroke-linejoin="round">\n${defs}${items}\n</svg>`
}

/** Terms with what is said of them below, or beside short ones. */
function entries(heading: string, list: readonly Entry[], isShort = false): string {
  if (list.length === 0) return ''
  const rows = list.map(([term, words]) => `<dt>${escaped(term)}</dt>\n<dd>${escaped(words)}</dd>`)
  return `<h3>${escaped(heading)}</h3>\n<dl${isShort ? ' class="short"' : ''}>\n${rows.join('\n')}\n</dl>`
}

function paragraphs(heading: string, lines: readonly string[]): string {
  const texts = lines.map((line) => line.trim()).filter((line) => line !== '')
  if (texts.length === 0) return ''
  return [`<h3>${escaped(heading)}</h3>`, ...texts.map((text) => `<p>${escaped(text)}</p>`)].join('\n')
}
