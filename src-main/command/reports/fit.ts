/** `petalyard fit` for people: what comes nearest to the target size, what holds first. */
import type { FitArrangement } from '../../../shared-types/plan'
import type { Project, Terms } from '../../../shared-types/project'
import {
  apartWords,
  childWords,
  holdingWords,
  leavesWords,
  rotationWords,
  betweenWords,
  wideWords,
} from '../../../src-core/figures/holding-words'
import { stopWords } from '../../../src-core/figures/stop-words'
import { capital, counted } from '../../../src-core/figures/words'
import { marked } from '../../../src-core/figures/yarn-words'
import type { Have } from '../../../src-core/layout/fit-have'
import { saying } from '../../../src-core/stitches/spelling'
import { formatMass, formatSize } from '../../../src-core/units/format'
import { wrap } from '../text'
import { ARRANGEMENT_WORDS, countWords, termsOf, unitsOf } from './words'

/** Whether one that lies closed stands before a larger one of which some join points gape. */
const isClosedFirst = (fits: readonly FitArrangement[]): boolean => {
  const area = ({ size }: FitArrangement) => size.width * size.height
  return fits.some(
    (fit, i) => !fit.wide && fits.slice(i + 1).some((after) => after.wide && area(after) > area(fit)),
  )
}

const stashWords = (terms: Terms): string =>
  saying(
    terms,
  )`It needs colours that stay within the yarn on hand (layout.cells.fill.withinStash), which the project does not ask for yet.`

export function fitReport(
  project: Project,
  wish: { readonly width: number; readonly height: number } | Have,
  arrangements: readonly FitArrangement[],
  width: number,
): string[] {
  const units = unitsOf(project)
  const nameOf = (id: string) => project.yarns?.find((yarn) => yarn.id === id)?.name || id
  const isJoined = project.joining?.rule !== 'apart'
  const signed = (mm: number) => (mm > 0 ? '+' : '')
  const paragraph = (text: string, indent: string) =>
    wrap(text, width - indent.length).map((line) => indent + line)
  const blocks = arrangements.map((fit) => {
    const grams = fit.yarns.reduce((sum, yarn) => sum + yarn.grams, 0)
    const off = formatSize(fit.error.width, fit.error.height, units).split(' × ')
    const fewer = fit.arrangement === 'offset-rows' && fit.alternateRows === 'oneFewer' ? 'one fewer' : ''
    const name = [`${ARRANGEMENT_WORDS[fit.arrangement]}, ${countWords(fit)}`, fewer, rotationWords(fit)]
    const facts = [
      formatSize(fit.size.width, fit.size.height, units),
      ...('width' in wish
        ? [`off by ${signed(fit.error.width)}${off[0] ?? ''} × ${signed(fit.error.height)}${off[1] ?? ''}`]
        : []),
      [counted(fit.motifs, 'motif'), apartWords(fit)].filter(Boolean).join(', '),
      ...(fit.yarns.length > 0
        ? [
            marked(
              `${formatMass(grams, units)} of yarn`,
              fit.yarns.some(({ assumed }) => assumed),
            ),
          ]
        : []),
    ]
    return [
      ...paragraph(name.filter(Boolean).join(', '), ''),
      ...paragraph(`${facts.join('; ')}.`, '  '),
      ...(isJoined ? paragraph(`${capital(holdingWords(fit))}.`, '  ') : []),
      ...(fit.wide ? paragraph(`${capital(wideWords(fit.wide, units))}.`, '  ') : []),
      ...[betweenWords(fit.between)].flatMap((told) => (told ? paragraph(`${capital(told)}.`, '  ') : [])),
      ...[leavesWords(fit, units)].flatMap((told) => (told ? paragraph(`${told}.`, '  ') : [])),
      ...stopWords(fit, nameOf, units, termsOf(project)).flatMap((told) => paragraph(told, '  ')),
    ]
  })
  const heading =
    'width' in wish
      ? `Closest fit to ${formatSize(wish.width, wish.height, units)}`
      : 'motifs' in wish
        ? `From ${counted(wish.motifs, 'motif')}`
        : 'count' in wish
          ? `With ${counted(wish.count, 'motif')}, or the nearest number`
          : `The largest from the yarn on hand${isClosedFirst(arrangements) ? ', those that lie closed first where about as large' : ''}`
  const openings = arrangements.flatMap(({ opening }) => opening ?? [])
  const child = openings.length > 0 ? childWords(openings, units) : null
  return [
    heading,
    ...(child ? ['', ...paragraph(child.words, '')] : []),
    ...(arrangements.some(({ withinStash }) => withinStash)
      ? ['', ...paragraph(stashWords(termsOf(project)), '')]
      : []),
    ...blocks.flatMap((block) => ['', ...block]),
  ]
}
