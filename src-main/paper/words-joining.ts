/** How motifs are joined, told to the person who does it, and what the page of their joins says besides. */
import type { MotifAccount, Plan } from '../../shared-types/plan'
import type { Joining, Terms } from '../../shared-types/project'
import type { JoinLegendWords } from '../../src-core/figures/join-detail'
import { JOIN_MARK_WORDS } from '../../src-core/figures/join-marks'
import type { JoinMark } from '../../src-core/figures/join-marks'
import { seamAdvice } from '../../src-core/figures/seam-words'
import { capital, counted, numbered, numeral, oneOf, plural } from '../../src-core/figures/words'
import { joinsInGeneral } from '../../src-core/joining-round/joining-round'
import { CLOCK_DIRECTIONS } from '../../src-core/motif/anchors'
import { motifWord, motifWords } from './words'

/** How the motifs are joined, told to the person who does it. */
export function joiningAdvice(plan: Plan, terms: Terms): string {
  const { settled, motif } = plan
  const { joining } = settled
  const word = motifWord(motif)
  const { rule } = joining
  if (rule === 'apart')
    return `Nothing is joined: the ${motifWords(motif)} lie at the distances shown on the map.`
  if (rule === 'seam') {
    const where =
      motif?.shape === 'straight' ? 'along the whole of each side that has dots' : 'where the dots are'
    return `Finish and block all the ${motifWords(motif)} first and lay them out by the map. ${seamAdvice(plan, terms)}, ${where}, in the order of the numbers.`
  }
  // A circle that was measured has no places but its marks.
  if (isMarked(motif))
    return `Work each ${word} up to its last round, which begins and ends at mark 1; the order of work says where the marks are. At each mark where a dot meets ${oneOf(word)} already there, ${slipWords(plan, `edge of that ${word}, at its mark`)}; everywhere else go on as usual.`
  const last = `Work each ${word} up to its last round. ${freeWords(motif)}; where a dot meets ${oneOf(word)} already there, `
  // As the joining round tells it, so that page and round say one thing.
  const told = motif && joinsInGeneral(plan, motif.id, terms)
  if (told) return `${last}${told.words}.`
  // Of a measured motif nobody knows whether a chain stands there.
  const place = rule === 'bridge' ? 'space' : 'place'
  return `${last}${slipWords(plan, `matching ${place} of that ${word}`)}.`
}

/** "work a slip stitch into the …", a joining chain out and back round it where there is one. */
function slipWords({ settled: { joining } }: Plan, into: string): string {
  const { rule, bridgeChains } = joining
  if (rule !== 'bridge' || bridgeChains === 0) return `work a slip stitch into the ${into}`
  return `ch ${bridgeChains}, work a slip stitch into the ${into}, and ch ${bridgeChains} again`
}

const isMarked = (motif: MotifAccount | null): boolean => motif?.spaces?.marks === true

/** What is done in the last round where nothing is joined. */
function freeWords(motif: MotifAccount | null): string {
  if (motif?.shape === 'straight') return 'At free corners and sides work that round as written'
  if (motif?.shape === 'petals') return 'In the free petals finish the round'
  return 'Where it meets no other go on as usual'
}

/** Places of a whole circle along an edge. */
const PLACES = CLOCK_DIRECTIONS.length

/** "at its marks and halfway between them": which of its places a circle has at marks; '' where they are not among them. */
function atMarks({ spaces }: MotifAccount): string {
  if (!spaces?.marks || PLACES % spaces.count !== 0) return ''
  const between = PLACES / spaces.count - 1
  if (between === 0) return ': at its marks'
  return `: at its marks and ${between === 1 ? 'halfway between them' : `${numeral(between)} between each two of them`}`
}

/** What a free place is, where an edging that bridges has its stitches in those of circles; else ''. */
export function freePlaces({ motif, edging }: Pick<Plan, 'motif' | 'edging'>): string {
  if (motif?.shape !== 'round' || edging?.style !== 'bridge') return ''
  return `Each circle has ${numbered(PLACES, 'place')} evenly round its edge${atMarks(motif)}. Those on the outer edge of the work at which no other circle is joined are free.`
}

/** What the marks of the join detail mean; those that a sheet does not have are left out. */
export const joinLegendWords = (
  motif: MotifAccount | null,
  marks: readonly JoinMark[],
  hosts: boolean,
  told: boolean,
): JoinLegendWords => {
  const word = motifWord(motif)
  const into = isMarked(motif) ? 'join at its mark' : 'join to it'
  return {
    marks: Object.fromEntries(marks.map((mark) => [mark, JOIN_MARK_WORDS[mark]])),
    ...(hosts ? { host: `the arrow points to the ${word} already there: ${into}` } : {}),
    way: 'the way the round is worked, seen from the right side',
    ...(told ? { focus: `the ${word} whose step is on this page` } : {}),
  }
}

/** "Two meet at 203 points." */
export function nodeKindWords(members: number, count: number): string {
  const meet = `${capital(numbered(members, 'motif'))} ${plural(members, 'meets', 'meet')}`
  return count === 1 ? `${meet} at one point` : `${meet} at ${counted(count, 'point')}`
}

/** "Fillers are joined at 280 points more." */
export const moreJoinsWords = (what: string, points: number): string =>
  `${what} are joined at ${points === 1 ? 'one point' : counted(points, 'point')} more.`

/** Of motifs with straight sides: how many stitches of a side are joined its round says. */
export const alongSidesWords =
  'Two that lie side by side are joined at their corners and evenly along the side between these.'

/** "Besides, motifs are sewn at 280 single points." */
export const sewnPointsWords = (points: number): string =>
  `Besides, motifs are sewn at ${points === 1 ? 'one single point' : counted(points, 'single point')}.`

/** On circles of which some lie between two spaces of their neighbours. */
export const spacesAdvice =
  'In straight rows circles with 4, 8, 12 … spaces meet space to space, in offset rows and rings those with 6, 12, 18 and so on.'

export const sharedPointAdvice =
  'Where three or more meet, every motif that comes later joins into the space of the one that was there first.'

/** `isByStitch`: the joining that is told on the same page names the stitches of a side. */
export const sidesAdvice = (joinedAsYouGo: boolean, isByStitch: boolean): string => {
  const places = isByStitch
    ? 'Evenly along a side means at the stitches of it that are named here, all of them.'
    : 'Evenly along a side means a quarter, half and three quarters of the way from its corner.'
  return `Side 1 follows corner 1 in the direction of work, side 2 corner 2, and so on.${joinedAsYouGo ? ` ${places}` : ''}`
}

/** Whether the joining of a plan is told by the stitches of a side. */
export const joinsByStitch = (plan: Plan, terms: Terms): boolean =>
  plan.motif !== null && (joinsInGeneral(plan, plan.motif.id, terms)?.isBySideStitches ?? false)

export const gapWords = (gap: string): string => `The largest gap at the join is ${gap}.`

/** Whether motifs are joined while they are worked, so that each joins into what is there. */
export const joinedAsYouGo = (joining: Joining | undefined): boolean =>
  joining?.rule !== 'seam' && joining?.rule !== 'apart'

/** A step as a sentence; nothing where motifs are not joined at all. */
export function stepSentence(joining: Joining | undefined, words: string): string {
  if (words === '' || joining?.rule === 'apart') return ''
  return capital(words).replace(/[.;\s]*$/, '.')
}
