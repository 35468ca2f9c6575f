/** Finished and joined motifs, where another arrangement is taken or motifs are turned. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { holdWork } from '../../../src-core/progress/hold'
import { lostMade, settleLost } from '../../../src-core/progress/lost'
import { joinedOf, markJoined, markMade } from '../../../src-core/progress/mark'
import { lostWords } from '../../../src-core/progress/words'
import { colours, coloursOf, fill, laidAnew, large, painted, withBlanket, withFill } from './large'
import { disc } from './project'

describe('motifs already made, taken as another arrangement', () => {
  // 300 in four colours with limits, 120 of them joined: as somebody had them in a drawer.
  const limits = { a: 112, b: 91, c: 60, d: 37 }
  const drawer = (() => {
    const blanket = { columns: 20, rows: 15, arrangement: 'straight-rows', cells: { fill } } as const
    const bare = withFill(large(0, blanket), { most: limits })
    return holdWork(bare, laidAnew(bare, {}))
  })()
  const countsOf = (of: Project) =>
    Object.fromEntries(
      colours.map((way) => [way, [...coloursOf(of).values()].filter((each) => each === way).length]),
    )
  const take = (of: Project) =>
    holdWork(of, laidAnew(of, { arrangement: 'offset-rows', columns: 14, rows: 22 }))

  it('ask before joined ones lose their joins or their place, and keep colours and marks otherwise', () => {
    expect(countsOf(drawer)).toEqual(limits)
    const rows = Object.keys(drawer.made!).filter((key) => Number.parseInt(key) <= 8)
    const joined = markJoined(
      drawer,
      rows.map((id) => ({ id, colourway: coloursOf(drawer).get(id)! })),
      '2026-12-02',
    )
    const more = holdWork(joined, withFill(joined, { most: { ...limits, b: 101 } }))
    const next = take(more)
    const lost = lostMade(more, next)!
    // The 48 beyond column 14 in rows 1 to 8; all others stay joined, and would lie beside others.
    expect(lost.gone).toBe(48)
    expect(lost.rejoined).toHaveLength(112)
    expect(lostWords(lost, 'US').yes).toBe('Clear 48 marks and mark 112 as not joined')
    const settledNow = settleLost(next, lost)
    // They stay made, and their joins have to be undone.
    expect(joinedOf(settledNow)).toEqual({})
    const [was, is] = [coloursOf(joined), coloursOf(settledNow)]
    for (const key of Object.keys(joined.joined!))
      if (is.has(key)) expect(is.get(key), key).toBe(was.get(key))
    expect(Object.keys(settledNow.made!)).toHaveLength(308)
  })

  it('take loose ones anew without a question where each has a place of its colour', () => {
    const plain = withFill(large(0, { columns: 20, rows: 15 }), { pattern: 'one', colourways: ['c'] })
    const marked = holdWork(plain, laidAnew(plain, {}))
    const same = take(marked)
    expect(lostMade(marked, same)).toBeNull()
    expect(Object.keys(same.made!)).toHaveLength(308)
    expect(planProject(same).findings.map(({ code }) => code)).not.toContain('progress/unknown-place')
  })

  it('ask where one would have to be of another colour, and name which', () => {
    const all = Object.fromEntries(Object.keys(drawer.made!).map((key) => [key, 'd']))
    const plum = painted(withFill({ ...drawer, made: {} }, { pattern: 'one', most: undefined }), all)
    const marked = holdWork(plum, laidAnew(plum, {}))
    const next = take(marked)
    const lost = lostMade(marked, next)!
    expect(lost.recolouredFrom).toEqual([['D', lost.recoloured]])
    expect(lostWords(lost, 'US').question).toContain(`made them in: ${lost.recoloured} of D.`)
  })
})

describe('joined motifs in another arrangement', () => {
  it('would be joined elsewhere where every second row is turned, but not by a whole petal', () => {
    const flower = { ...disc, outline: 'petals', petals: 6, overTips: 60, overDips: 45 }
    const made = markMade(
      { ...large(0), motifs: [flower as never] },
      planProject(large(0)).motifs.slice(0, 40),
      '',
    )
    const joined = markJoined(made, planProject(made).motifs.slice(0, 40), '2026-12-02')
    const turned = (patch: Partial<BlanketLayout>) =>
      lostMade(joined, holdWork(joined, withBlanket(joined, patch)))
    expect(turned({ alternateTurn: 30 })!.rejoined).toHaveLength(40)
    expect(turned({ turn: 30 })!.rejoined).toHaveLength(40)
    expect(turned({ turn: 60 })).toBeNull()
    expect(turned({ turn: -120 })).toBeNull()
    // Joined as they are made, nobody has to say so.
    const asMade = lostMade(made, holdWork(made, withBlanket(made, { alternateTurn: 30 })))
    expect(asMade!.rejoined).toHaveLength(40)
    const loose = { ...made, joined: {} }
    expect(lostMade(loose, holdWork(loose, withBlanket(loose, { alternateTurn: 30 })))).toBeNull()
  })

  it('would lie beside others than they are joined to, which is asked about; made ones alone are not', () => {
    const made = large(40)
    const joined = markJoined(made, planProject(made).motifs.slice(0, 40), '2026-12-02')
    const to = (arrangement: 'straight-rows' | 'offset-rows') => (of: Project) =>
      holdWork(of, withBlanket(of, { arrangement, cells: { ...(of.layout as BlanketLayout).cells } }))
    const [own, other] =
      (joined.layout as BlanketLayout).arrangement === 'offset-rows'
        ? (['offset-rows', 'straight-rows'] as const)
        : (['straight-rows', 'offset-rows'] as const)
    expect(lostMade(joined, to(own)(joined))).toBeNull()
    const lost = lostMade(joined, to(other)(joined))
    expect(lost!.gone).toBe(0)
    expect(lost!.rejoined).toHaveLength(40)
    expect(lostWords(lost!, 'US')).toMatchObject({
      question: expect.stringContaining('40 joined motifs would be joined to other motifs') as string,
      yes: 'Mark 40 as not joined',
    })
    expect(lostMade(made, to(other)(made))!.rejoined).toHaveLength(40)
    const loose = { ...made, joined: {} }
    expect(lostMade(loose, to(other)(loose))).toBeNull()
  })

  it('are asked about where petals or ways to join change, and by nothing that leaves their joins', () => {
    const flower = { ...disc, outline: 'petals', petals: 6, overTips: 60, overDips: 45 } as never
    const bare = { ...large(0), motifs: [flower] }
    // A row of 20 and four of the next: all of them are joined to another.
    const made = markMade(bare, planProject(bare).motifs.slice(0, 24), '2026-12-01')
    const rejoined = (next: Project) => lostMade(made, holdWork(made, next))?.rejoined.length ?? 0
    const withMotif = (patch: object) => ({ ...made, motifs: [{ ...(flower as object), ...patch } as never] })
    expect(rejoined(withMotif({ petals: 8 }))).toBe(24)
    expect(rejoined(withMotif({ outline: 'round', across: 60 }))).toBe(24)
    expect(rejoined({ ...made, joining: { rule: 'bridge', bridgeChains: 3 } })).toBe(24)
    const bridged = { ...made, joining: { rule: 'bridge', bridgeChains: 3 } } as const
    expect(
      lostMade(bridged, { ...bridged, joining: { rule: 'bridge', bridgeChains: 5 } })!.rejoined,
    ).toHaveLength(24)
    // Heavier, larger, more of them, other colours: joined as they are.
    expect(rejoined(withMotif({ slots: [{ slot: 'middle', grams: 2 }] }))).toBe(0)
    expect(rejoined(withMotif({ overTips: 64, overDips: 48 }))).toBe(0)
    expect(rejoined(withBlanket(made, { columns: 25, rows: 20 }))).toBe(0)
    expect(rejoined(withFill(made, { pattern: 'no-two-alike', colourways: colours, seed: 4 }))).toBe(0)
    expect(rejoined({ ...made, joining: { yarn: 'moss' } })).toBe(0)
    // One alone is joined to nothing.
    const alone = markMade(bare, planProject(bare).motifs.slice(0, 1), '2026-12-01')
    expect(lostMade(alone, { ...alone, joining: { rule: 'bridge', bridgeChains: 3 } })).toBeNull()
  })
})
