/** `petalyard fit --exactly` for people: what to change so that the size comes out as asked for. */
import { lettered } from '../../../src-core/colour/letters'
import type { Project } from '../../../shared-types/project'
import type { SizeWay, WishedSize } from '../../../shared-types/ways'
import { openingsWords } from '../../../src-core/figures/holding-words'
import { counted } from '../../../src-core/figures/words'
import { marked } from '../../../src-core/figures/yarn-words'
import { formatMass, formatSize } from '../../../src-core/units/format'
import { isBegun } from '../../../src-core/progress/progress'
import { settled } from '../../../src-core/settled'
import {
  beyondWords,
  buyWords,
  errorWords,
  knownYarns,
  missingWords,
  MADE_STAYS,
  MOTIFS_ON_TOP,
  NOTHING_NEARER,
  restWords,
  SAME_FABRIC,
  wishWords,
  edgingInWords,
  yarnChange,
} from '../../../src-core/ways/words'
import { printable, wrap } from '../text'
import { unitsOf } from './words'

export function waysReport(
  project: Project,
  wish: WishedSize,
  ways: readonly SizeWay[],
  width: number,
): string[] {
  const units = unitsOf(project)
  const heading = `Ways to ${wishWords(wish, units)}`
  const paragraph = (text: string, indent: string) =>
    wrap(text, width - indent.length).map((line) => indent + line)
  const begun = isBegun(project) ? ['', ...paragraph(MADE_STAYS, '')] : []
  if (ways.length === 0) return [heading, '', NOTHING_NEARER, ...begun]
  const nameOf = (id: string) => printable(project.yarns?.find((yarn) => yarn.id === id)?.name ?? id)
  const wayOf = (id: string) => lettered(project.colourways ?? []).find((way) => way.id === id)
  const names = {
    yarn: nameOf,
    colourway: (id: string) => printable(wayOf(id)?.code ?? id),
  }
  const { terms } = settled(project)
  const blocks = ways.map((way) => {
    const yarns = knownYarns(way.yarns).map(
      ({ id, grams, difference, assumed }) =>
        `${nameOf(id)} ${marked(formatMass(grams, units), assumed === true)}, ${yarnChange(difference, units)}`,
    )
    const facts = [
      formatSize(way.size.width, way.size.height, units),
      errorWords(way.error, units),
      counted(way.motifs, 'motif'),
    ]
    return [
      ...paragraph(way.change, ''),
      ...paragraph(`${facts.join('; ')}.`, '  '),
      ...(edgingInWords(way, nameOf, terms) ? paragraph(`${edgingInWords(way, nameOf, terms)}.`, '  ') : []),
      ...(yarns.length > 0 ? paragraph(`Yarn: ${yarns.join('; ')}.`, '  ') : []),
      ...(yarns.length > 0 && way.unweighed ? paragraph(MOTIFS_ON_TOP, '  ') : []),
      ...[
        buyWords(way, nameOf, terms),
        missingWords(way, nameOf, units),
        beyondWords(way.beyond, names, { units, terms }),
      ].flatMap((told) => (told ? paragraph(`${told}.`, '  ') : [])),
      ...(way.opening === undefined ? [] : paragraph(`${openingsWords(way.opening, units)}.`, '  ')),
      ...[restWords(way.error, way.size, units)].flatMap((told) => (told ? paragraph(told, '  ') : [])),
      ...paragraph(way.fabric ?? SAME_FABRIC, '  '),
    ]
  })
  return [heading, ...blocks.flatMap((block) => ['', ...block]), ...begun]
}
