/** Ends of repeats in many words, what is passed in a list or behind a post stitch, a beginning cluster told last. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import type { Terms } from '../../../shared-types/project'

const read = (text: string, terms: Terms = 'US') => {
  const { findings, rounds } = readRounds(text, { terms })
  return {
    marked: findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code),
    made: rounds.map(({ made }) => made),
  }
}

const SIX = 'Rnd 1: In magic ring, ch 1, 6 sc, join with sl st in first sc. (6 sc)'
const LOOPS =
  'Rnd 2: Ch 1, *sc in next sc, ch 5; rep from * around, join with sl st in first sc. (6 ch-5 lps)'

describe('how a repeat ends (wordings of our own)', () => {
  it.each([
    'omitting sc at end of last rep',
    'omitting last sc at the end of the last repeat',
    'omit sc on last rep',
  ])('leaves off what is said: %s', (ending) => {
    const round = `Rnd 2: Ch 1, sc in same st, *ch 5, sc in next sc; rep from * 5 more times, ${ending}, join with sl st in first sc. (6 sc, 6 ch-5 lps)`
    expect(read(`${SIX}\n${round}`)).toEqual({ marked: [], made: [6, 6] })
  })

  it.each([
    'rep from * in each of next 5 lps',
    'rep from * in each of the remaining 5 loops',
    'rep from * in each lp around',
  ])('goes over places: %s', (again) => {
    const round = `Rnd 3: Ch 1, *(sc, 5 dc, sc) in next lp; ${again}; join with sl st in first sc. (6 petals)`
    expect(read(`${SIX}\n${LOOPS}\n${round}`)).toEqual({ marked: [], made: [6, 6, 42] })
  })

  it('counts the places that are asked for', () => {
    const round =
      'Rnd 3: Ch 1, *(sc, 5 dc, sc) in next lp; rep from * in each of next 6 lps; join with sl st in first sc.'
    expect(read(`${SIX}\n${LOOPS}\n${round}`).marked).toEqual(['rounds/too-many-used'])
  })
})

describe('what is passed', () => {
  const open =
    'Rnd 2: Ch 4 (counts as dc and ch 1), *dc in next sc, ch 1; rep from * around; join with sl st in 3rd ch of ch-4. (12 dc, 12 ch-1 sps)'
  const twelve = 'Rnd 1: In magic ring, ch 1, 12 sc, join with sl st in first sc. (12 sc)'

  it.each(['(ch-1 sp, dc, ch-1 sp)', '[ch-1 sp, dc and ch-1 sp]'])('stands in a list: %s', (list) => {
    const round = `Rnd 3: Ch 1, sc in same st, *ch 6, sk next ${list}, sc in next dc; rep from * 4 more times, ch 6, sk last ${list}; join with sl st in first sc. (6 sc, 6 ch-6 sps)`
    expect(read(`${twelve}\n${open}\n${round}`)).toEqual({ marked: [], made: [12, 12, 6] })
  })

  it.each(['sk sc behind FPdc', 'skip the st behind it', 'sk next sc behind post st'])(
    'lies behind a post stitch: %s',
    (skip) => {
      const text = [
        'Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring; join with sl st in top of ch-3. (12 dc)',
        'Rnd 2: Ch 1, 2 sc in each dc around; join with sl st in first sc. (24 sc)',
        `Rnd 3: Ch 1, *FPdc around next dc of Rnd 1, ${skip}, sc in next sc; rep from * around; join with sl st in first FPdc. (24 sts)`,
      ]
      expect(read(text.join('\n'))).toEqual({ marked: [], made: [12, 24, 24] })
    },
  )
})

describe('a place by its stitch alone', () => {
  it('is the next one of that name', () => {
    const round =
      'Rnd 3: Ch 1, *sc in sc, 7 sc in next lp; rep from * around, join with sl st in first sc. (48 sc)'
    expect(read(`${SIX}\n${LOOPS}\n${round}`)).toEqual({ marked: [], made: [6, 6, 48] })
  })
})

describe('a beginning cluster that is told behind its stitches', () => {
  it.each(['counts as first cl', 'counts as beg cl'])('is one: (%s)', (words) => {
    const text = `Special stitch\nCluster (cl): Dc2tog in same ring.\n\nRnd 1: Ch 4, sl st in first ch to form ring. Ch 2, dc in ring (${words}), ch 3, [cl in ring, ch 3] 5 times; join with sl st in first dc. (6 cl, 6 ch-3 sps)`
    expect(read(text)).toEqual({ marked: [], made: [6] })
  })
})

describe('groups worked into the ring', () => {
  const ring =
    'Rnd 1: Ch 5, sl st in first ch to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 3 more times; join with sl st in top of ch-3. (15 dc, 5 ch-2 sps)'

  it.each(['center dc of next 3-dc group', 'center dc of next group', 'middle dc of the next 3-dc group'])(
    'are told apart by the spaces between them: %s',
    (where) => {
      const round = `Rnd 2: Sl st in next dc, ch 1, sc in same dc, *5 dc in next ch-2 sp, sc in ${where}; rep from * 4 more times, omitting last sc on last rep; join with sl st in first sc. (5 sc, 25 dc)`
      expect(read(`${ring}\n${round}`)).toEqual({ marked: [], made: [15, 30] })
    },
  )

  it('hold as many stitches of a name as a petal has', () => {
    const text = [
      SIX,
      LOOPS,
      'Rnd 3: Ch 1, (sc, hdc, 3 dc, hdc, sc) in each lp around; join with sl st in first sc. (6 petals)',
      'Rnd 4: Join yarn with sl st in first dc of any petal, ch 1, sc in same st, *ch 6, sc in first dc of next petal; rep from * 4 more times, ch 6; join with sl st in first sc. (6 sc, 6 ch-6 sps)',
    ]
    const { worked } = readRounds(text.join('\n'), { terms: 'US' })
    const into = worked[3]!.elements.flatMap(({ role, into }) => (role === 'stitch' ? into : []))
    expect(into.map(({ index }) => worked[2]!.places[index]!.stitch)).toEqual(Array(6).fill('dc'))
  })
})
