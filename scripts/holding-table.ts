/**
 * Which arrangement a motif starts in, for every kind of outline, 3 to 24 petals, three profiles and five sizes:
 * `npm run docs:holding` writes the page, a test checks a part of it.
 */
import type { MeasuredMotif, Project } from '../shared-types/project'
import { PROJECT_FORMAT, PROJECT_VERSION } from '../shared-types/project'
import { rotationWords } from '../src-core/figures/holding-words'
import { holds } from '../src-core/joins/holding'
import { proposeProject } from '../src-core/plan'

/** mm, as one measures them: a flower of 82 mm, squares and the like of 80 mm. */
const TIPS = 82
const SIDES = 80
/** Dip to dip as a share of tip to tip. */
export const PROFILES = [0.5, 0.65, 0.8] as const
/** Width and height in mm: a cushion, a pram, a lap, a throw, a bed. */
export const SIZES = [
  [450, 450],
  [750, 900],
  [1000, 1300],
  [1300, 1600],
  [1500, 2000],
] as const

export interface Case {
  readonly name: string
  readonly profile: number | null
  readonly motif: MeasuredMotif
}

/** Every motif of the table. */
export function cases(): Case[] {
  const own = { id: 'm', kind: 'measured' } as const
  const petals = Array.from({ length: 22 }, (_, i) => i + 3)
  return [
    ...petals.flatMap((count) =>
      PROFILES.map((profile): Case => ({
        name: `${count} petals`,
        profile,
        motif: { ...own, outline: 'petals', petals: count, overTips: TIPS, overValleys: TIPS * profile },
      })),
    ),
    { name: 'round', profile: null, motif: { ...own, outline: 'round', across: SIDES } },
    ...(['square', 'hexagon', 'octagon'] as const).map((outline): Case => ({
      name: outline,
      profile: null,
      motif: { ...own, outline, sideToSide: SIDES },
    })),
    ...PROFILES.map((profile): Case => ({
      name: 'leaf',
      profile,
      motif: { ...own, outline: 'leaf', length: TIPS, width: TIPS * profile },
    })),
  ]
}

export const caseProject = (motif: MeasuredMotif): Project => ({
  format: PROJECT_FORMAT,
  version: PROJECT_VERSION,
  motifs: [motif],
  layout: { kind: 'blanket', motif: motif.id },
})

const RULES = {
  tips: 'tips',
  edges: 'tips and shoulders',
  bridge: 'chains',
  seam: 'seams',
  apart: 'not at all',
} as const

/** One line of the table. */
export function row({ name, profile, motif }: Case, [width, height]: readonly [number, number]): string {
  const wish = { width, height }
  const { proposals, failed } = proposeProject(caseProject(motif), wish, undefined, 1)
  const [first] = proposals
  if (!first) throw new Error(`nothing is proposed for ${name}`)
  const { fit, rule, points } = first
  const straight = first.plan.motif?.shape === 'straight'
  const cells = [
    name,
    profile === null ? '' : profile,
    `${width / 10} × ${height / 10}`,
    `${fit.arrangement.replace('-', ' ')}${fit.alternateRows === 'oneFewer' ? ', one fewer' : ''}`,
    fit.arrangement === 'rings' ? fit.rings : `${fit.columns} × ${fit.rows}`,
    rotationWords(fit) || 'not rotated',
    straight ? 'corners and sides' : RULES[rule],
    fit.motifs,
    points,
    fit.pieces,
    fit.single,
    holds(fit)
      ? failed.length > 0
        ? `not by ${failed.map((each) => RULES[each]).join(', ')}`
        : 'yes'
      : 'none holds',
  ]
  return `| ${cells.join(' | ')} |`
}

const HEADS = [
  'Motif', 'Dip : tip', 'Target, cm', 'Arrangement', 'Counts', 'Rotation', 'Joined at', 'Motifs', 'Join points',
  'Pieces', 'On one point', 'Holds',
] as const // prettier-ignore

/** The whole page. */
export function holdingPage(tell: (done: number, all: number) => void = () => undefined): string {
  const all = cases()
  const rows = all.flatMap((each, i) => {
    tell(i, all.length)
    return SIZES.map((size) => row(each, size))
  })
  return [
    '# What holds',
    'Written by `npm run docs:holding`. Do not edit by hand.',
    `The arrangement that is proposed first at the start, for every kind of outline and five target sizes (flowers and leaves of ${TIPS} mm, everything else of ${SIDES} mm side to side). It holds where it hangs together in one piece and no motif hangs on a single join point. “Not by tips” says that joined at tips alone none of the usual rotations holds; then the next way of joining is proposed. “None holds” says that no rotation does, by any way of joining that suits the shape.`,
    [`| ${HEADS.join(' | ')} |`, `| ${HEADS.map(() => '---').join(' | ')} |`, ...rows].join('\n'),
    '',
  ].join('\n\n')
}
