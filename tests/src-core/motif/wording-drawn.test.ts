/** The stitches decide, not the wording: rounds drawn by chance, each written in every way that it can be. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chartFigures } from '../../../src-core/figures/chart'
import { runs } from '../../runs'
import { workedMotif } from './written-motif'

/** What a lap of a round does, in turn: works into a place, chains, or passes places. */
type Unit =
  | { readonly kind: 'place'; readonly made: readonly string[] }
  | { readonly kind: 'chains'; readonly count: number }
  | { readonly kind: 'skip'; readonly count: number }

const stitch = fc.constantFrom('sc', 'hdc', 'dc', 'tr')
const made = fc.oneof(
  fc.tuple(stitch, fc.integer({ min: 1, max: 3 })).map(([a, count]) => Array<string>(count).fill(a)),
  fc.tuple(stitch, stitch).map(([a, b]) => [a, 'ch 2', b]),
  fc.tuple(stitch, stitch).map(([a, b]) => [a, b, a]),
  fc.tuple(stitch, stitch).map(([a, b]) => [a, b, 'ch 1', b, a]),
  stitch.map((a) => ['sc', 'ch 1', a, a, 'ch 1', 'sc']),
  stitch.map((a) => ['sl st', 'ch 2', a, a, 'ch 2', 'sl st']),
  stitch.map((a) => ['sl st', 'ch 3', a, a, a, 'ch 3', 'sl st']),
)
const place = made.map((list): Unit => ({ kind: 'place', made: list }))
const unit = fc.oneof(
  { weight: 5, arbitrary: place },
  fc.integer({ min: 1, max: 5 }).map((count): Unit => ({ kind: 'chains', count })),
  fc.integer({ min: 1, max: 2 }).map((count): Unit => ({ kind: 'skip', count })),
)

const beginsWell = ([first]: readonly Unit[]): boolean => first?.kind === 'place'

/** Chains after chains, and skips after skips, would be one. */
const isPlain = (units: readonly Unit[]): boolean =>
  units.every(({ kind }, i) => kind === 'place' || units[(i + 1) % units.length]!.kind !== kind)

const lap = fc
  .array(unit, { minLength: 1, maxLength: 5 })
  .filter((units) => beginsWell(units) && isPlain(units))

/** What a round works into: its words, and how many there are. */
interface Ground {
  readonly noun: string
  readonly same: string
}
const STITCHES: Ground = { noun: 'sc', same: 'same st' }
const SPACES: Ground = { noun: 'ch-3 sp', same: 'same sp' }

type Way = 'plain' | 'each' | 'count' | 'group' | 'same'
const WAYS: readonly Way[] = ['plain', 'each', 'count', 'group', 'same']

/** What goes into one place: "2 dc in next sc", "(dc, dc) in next sc", "dc in next sc, dc in same st". */
function placeWords(list: readonly string[], where: string, way: Way, { same }: Ground): string {
  const [first] = list
  if (way === 'same')
    return list.map((x, i) => (x.startsWith('ch') ? x : `${x} in ${i === 0 ? where : same}`)).join(', ')
  if (list.length === 1) return `${first} in ${where}`
  const isOne = list.every((x) => x === first)
  return isOne && way !== 'group' ? `${list.length} ${first} in ${where}` : `(${list.join(', ')}) in ${where}`
}

/** A lap in words. */
function words(units: readonly Unit[], way: Way, ground: Ground): string {
  const { noun } = ground
  const said: string[] = []
  for (let i = 0; i < units.length; i++) {
    const each = units[i]!
    if (each.kind === 'chains') said.push(`ch ${each.count}`)
    else if (each.kind === 'skip')
      said.push(each.count === 1 ? `sk next ${noun}` : `sk next ${each.count} ${noun}s`)
    else {
      let times = 1
      const again = (next: Unit | undefined) => JSON.stringify(next) === JSON.stringify(each)
      if (way !== 'plain' && way !== 'same') while (again(units[i + times])) times++
      const counted = way === 'count' && each.made.length === 1
      const several = counted ? `next ${times} ${noun}s` : `each of next ${times} ${noun}s`
      said.push(placeWords(each.made, times === 1 ? `next ${noun}` : several, way, ground))
      i += times - 1
    }
  }
  return said.join(', ')
}

/** A round of so many laps, in every way. */
function wordings(units: readonly Unit[], laps: number, ground: Ground): string[] {
  const all = Array.from({ length: laps }, () => units).flat()
  return WAYS.flatMap((way) => {
    const said = words(units, way, ground)
    return [
      `*${said}; rep from * ${laps - 1} more times`,
      `[${said}] ${laps} times`,
      Array.from({ length: laps }, () => said).join(', '),
      words(all, way, ground),
    ]
  }).map((round) => `${round}, join with sl st in first st`)
}

const takes = (units: readonly Unit[]): number =>
  units.reduce((sum, each) => sum + (each.kind === 'place' ? 1 : each.kind === 'skip' ? each.count : 0), 0)

/** Sums in another order differ in their last digits. */
const rounded = <T>(value: T): T =>
  JSON.parse(JSON.stringify(value), (_, each: unknown) =>
    typeof each === 'number' ? Math.round(each * 1e5) / 1e5 + 0 : each,
  ) as T

function told(rounds: readonly string[]) {
  const { account, drawing } = workedMotif(rounds, { ring: 'adjustable' })
  const drawn = drawing()
  const room = { hand: 'right', style: 'ink', width: 170, height: 170 } as const
  const chart = drawn ? chartFigures(drawn.located, drawn.beginning, room) : []
  return rounded({
    shape: account!.shape,
    petals: account!.petals,
    outline: account!.outline,
    anchors: account!.anchors,
    chart: chart.flatMap(({ marks }) => marks.map(({ ink }) => ink)),
  })
}

describe('rounds that are written in several ways', () => {
  it.each([
    ['stitches', STITCHES],
    ['spaces', SPACES],
  ] as const)('have one outline and chart: into %s', (_, ground) => {
    const FEWEST = 4
    const MOST = 40
    fc.assert(
      fc.property(lap, fc.integer({ min: 3, max: 7 }), (units, laps) => {
        const count = takes(units) * laps
        fc.pre(count >= FEWEST && count <= MOST)
        const first = `ch 1, ${count} sc in ring, join with sl st in first sc`
        const loops = 'ch 1, *sc in next sc, ch 3; rep from * around, join with sl st in first sc'
        const before = ground === SPACES ? [first, loops] : [first]
        const [plain, ...others] = wordings(units, laps, ground)
        const wanted = told([...before, plain!])
        for (const text of others) expect([text, told([...before, text])]).toEqual([text, wanted])
      }),
      { numRuns: runs(45), seed: 20261201 },
    )
  })
})
