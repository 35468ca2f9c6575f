/** Flowers and squares of our own for the joining round, and what its words come to when they are read. */
import { readFileSync } from 'node:fs'
import type { Project, Terms } from '../../../shared-types/project'
import type { JoiningRound } from '../../../src-core/joining-round/joining-round'
import { readRounds } from '../../../src-core/notation/read'
import type { WorkedElement } from '../../../src-core/notation/worked'

type Blanket = Extract<NonNullable<Project['layout']>, { kind: 'blanket' }>

/** Rounds of a flower whose petals end in `tip`. */
export const flower = (petals: number, tip: string): string[] => [
  `ch 1, ${2 * petals} sc in ring, join with sl st in first sc (${2 * petals} sc)`,
  `ch 1, sc in same st as joining, *ch 5, sk next sc, sc in next sc; rep from * ${petals - 2} more times, ch 5, sk next sc, join with sl st in first sc (${petals} ch-5 sps)`,
  `sl st in first ch-5 sp, ch 1, (sc, hdc, 2 dc, ${tip === '' ? '' : `${tip}, `}2 dc, hdc, sc) in same sp and in each ch-5 sp around, join with sl st in first sc (${petals} petals)`,
]

/** A granny square of three rounds. */
export const GRANNY = [
  'ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of beg ch-3',
  'sl st in next 2 dc and in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, join with sl st in top of beg ch-3 (24 dc, 4 ch-2 sps, 4 ch-1 sps)',
  'sl st in next 2 dc and in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * 2 more times, join with sl st in top of beg ch-3',
]

/** A granny square of so many rounds; each side of round n has n - 1 ch-1 sps. */
export const granny = (rounds: number): string[] => [
  GRANNY[0]!,
  ...Array.from({ length: rounds - 1 }, (_, at) => {
    const side = ['ch 1', ...Array<string>(at).fill('3 dc in next ch-1 sp, ch 1')].join(', ')
    return `sl st in next 2 dc and in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ${side}, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ${side}; rep from * 2 more times, join with sl st in top of beg ch-3`
  }),
]

/** A solid square with ch-2 corners; each side of round n has 4n - 1 dc. */
export const solidSquare = (rounds: number, last?: string): string[] => [
  'ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of beg ch-3 (12 dc, 4 ch-2 sps)',
  ...Array<string>(rounds - 1).fill(
    'ch 3 (counts as dc), *dc in each st to corner, (2 dc, ch 2, 2 dc) in corner sp; rep from * around, dc in each st to end, join with sl st in top of beg ch-3',
  ),
  ...(last === undefined ? [] : [last]),
]

interface Wish {
  readonly rounds: readonly string[]
  readonly layout?: Partial<Blanket>
  readonly joining?: Project['joining']
  readonly terms?: Terms
  readonly hand?: Project['hand']
}

export const readExample = (name: string): Project =>
  JSON.parse(readFileSync(`examples/${name}.petalyard`, 'utf8')) as Project

/** A blanket of a motif in these rounds. */
export const blanketOf = ({ rounds, layout, joining, terms = 'US', hand = 'right' }: Wish): Project => ({
  ...{ format: 'petalyard-project', version: 1, title: 'Joined', terms, hand },
  motifs: [
    {
      ...{ id: 'm1', name: 'Flower', kind: 'rounds', foundation: { ring: 'chain', chains: 6 } },
      rounds: rounds.map((work) => ({ slot: 'petals', work })),
    },
  ],
  layout: {
    ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm1', columns: 3, rows: 3 },
    ...layout,
  },
  joining: { rule: 'tips', ...joining },
})

const isJoin = ({ role, into }: WorkedElement): boolean => role === 'travel' && into[0]?.kind === 'unknown'

/** What the words of a last round come to behind the rounds before it. */
export function readBack(rounds: readonly string[], { words }: Pick<JoiningRound, 'words'>, terms: Terms) {
  const before = rounds.slice(0, -1).map((work, i) => `Rnd ${i + 1}: ${work}.`)
  const text = ['Ch 6, join with sl st to form a ring.', ...before, words].join('\n')
  const { rounds: accounts, worked, findings } = readRounds(text, { terms })
  const { elements } = worked.at(-1)!
  const places: number[] = []
  let place = -1
  let group = -1
  for (const element of elements) {
    if (element.standing && element.group !== group) {
      group = element.group
      place++
    }
    if (isJoin(element)) places.push(place + 1)
  }
  return {
    made: accounts.at(-1)!.made,
    joins: elements.filter(isJoin).length,
    /** Number of the group of stitches (the petal) that each join stands in. */
    places,
    errors: findings.filter(({ severity }) => severity === 'error').map(({ message }) => message),
  }
}
