/** What is said where a blanket falls apart, and once it is fixed. */
import type { Holds } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { holdingWords, rotationWords } from '../../src-core/figures/holding-words'
import { capital } from '../../src-core/figures/words'
import { layoutName } from '../../src-core/layout/fit'
import type { Fix, State } from '../../src-core/layout/remedy'
import { saying } from '../../src-core/stitches/spelling'
import { termWord } from '../../src-core/stitches/terms'
import { formatSize } from '../../src-core/units/format'
import { blanketOf } from '../state/edits/layout'
import { counted } from '../state/summaries'
import { settled } from '../../src-core/settled'

/** "The blanket falls into 24 pieces, 48 motifs hang on one join point." */
export const troubleWords = (plan: Holds): string =>
  plan.pieces > 1 ? `The blanket ${holdingWords(plan)}.` : `${capital(holdingWords(plan))}, and will spin.`

const isRotated = ({ layout }: Fix): boolean =>
  layout.turn !== undefined || layout.alternateTurn !== undefined

/** "rotated 21.4°, every other row 25.7° more"; empty where a fix leaves the rotation. */
const turned = ({ layout }: Fix): string =>
  rotationWords({ turn: layout.turn ?? 0, alternateTurn: layout.alternateTurn ?? 0 })

const joined = ({ joining }: Fix): string =>
  joining.rule === 'bridge' ? `with joining chains of ${joining.bridgeChains ?? 0}` : 'at tips and shoulders'

/** The change in words, as undo names it. */
export function changeName(fix: Fix): string {
  if (fix.by === 'joining') return `join ${joined(fix)}`
  return fix.by === 'rotation' ? 'take the best rotation' : `take ${layoutName(fix.layout)}`
}

export function fixButton(fix: Fix): string {
  if (fix.by === 'rotation') return 'Rotate to hold'
  if (fix.by === 'arrangement') return `Take ${layoutName(fix.layout)}`
  return fix.joining.rule === 'bridge' ? 'Join with chains' : 'Join shoulders too'
}

export const leaveOutButton = (count: number): string =>
  count === 1
    ? 'Leave out the motif that joins nothing'
    : `Leave out ${counted(count, 'motif')} that join nothing of the rest`

/** What would make it hold. */
export function fixWords(fix: Fix, project: Project): string {
  const points = counted(fix.then.points, 'join point')
  const size = formatSize(fix.then.width, fix.then.height, settled(project).units)
  const rotation = isRotated(fix) && turned(fix)
  switch (fix.by) {
    case 'rotation':
      return `${capital(turned(fix) || 'not rotated')}, it holds: ${points}, ${size}.`
    case 'arrangement':
      return `No rotation holds in this arrangement. In ${layoutName(fix.layout)}${rotation ? `, ${rotation},` : ''} it holds: ${points}, ${size}.`
    default:
      return `No rotation holds when motifs are joined like this. Joined ${joined(fix)}${rotation ? ` and ${rotation}` : ''}, it holds: ${points}, ${size}.`
  }
}

/** Where nothing was found. */
export function noFixWords(project: Project): string {
  const { terms = 'US' } = project
  const { rows, columns, cells, arrangement } = blanketOf(project) ?? {}
  const large = cells?.large ?? {}
  const putIn = Object.entries(cells?.motifs ?? {}).some(([id, motif]) => motif !== null && !(id in large))
  if (putIn && arrangement === 'straight-rows')
    return 'The motifs you put in are not the same size as those around them. To put in one large motif, select a block of 3 by 3 and choose “One large motif here”.'
  if (rows !== 1 && columns !== 1)
    return 'None of the rotations and arrangements tried holds. Try fillers between the motifs, joining chains or a longer joining distance.'
  const edging = termWord('edging', terms)
  return saying(
    terms,
  )`Motifs at the ends of a single row have one neighbour only: add a row, or ${terms === 'UK' ? 'an' : 'a'} ${edging} round all.`
}

/** What a fix gained. */
export function gainWords(now: State, { then }: Fix, project: Project): string {
  const { units } = settled(project)
  const pieces =
    now.pieces > 1 ? `In one piece instead of ${now.pieces}` : 'No motif hangs on one join point now'
  const points = `${counted(then.points, 'join point')} instead of ${counted(now.points, 'join point').split(' ')[0]}`
  const isSized = Math.abs(now.width - then.width) > 1 || Math.abs(now.height - then.height) > 1
  const size = isSized ? ` The size is now ${formatSize(then.width, then.height, units)}.` : ''
  return `${pieces}, ${points}.${size}`
}
