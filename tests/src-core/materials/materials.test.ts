import { describe, expect, it } from 'vitest'
import type { Range } from '../../../shared-types/plan'
import { signedArea } from '../../../src-core/geometry/points'
import { materials } from '../../../src-core/materials/materials'
import { measuredAccount } from '../../../src-core/motif/measured'
import { codes, daisy, flower, flowerAccount, input, project, yarn } from './helpers'

describe('M41 weighed motifs', () => {
  it('M41 takes grams per colour as weighed, with the resolution of the scale over the motifs on it', () => {
    const need = yarn(materials(input()), 'y1')
    expect(need.grams.expected).toBeCloseTo(3.4 * 100 * 1.1, 9)
    expect(need.grams.low).toBeCloseTo((3.4 - 0.01) * 100 * 1.1, 9)
    expect(need.grams.high).toBeCloseTo((3.4 + 0.01) * 100 * 1.1, 9)
    expect(need.parts.tails).toBe(0)
    expect(need.metres?.expected).toBeCloseTo(3.4 * 100 * 1.1 * 2.5, 9)
  })

  it('M41 takes ±5 % where nothing is said about the scale', () => {
    const motif = { ...daisy, weighed: undefined }
    const need = yarn(materials(input({ motif })), 'y2')
    expect(need.grams.low).toBeCloseTo(0.8 * 0.95 * 100 * 1.1, 9)
    expect(need.grams.high).toBeCloseTo(0.8 * 1.05 * 100 * 1.1, 9)
  })

  it('M41 splits one weight by its shares, and what they leave out over the rest', () => {
    const weighed = { motifs: 10, grams: 43, resolution: 1, shares: { centre: 0.3, petals: 0.7 } }
    const whole = materials(input({ motif: { ...flower, weighed } }))
    expect(yarn(whole, 'y2').parts.motifs).toBeCloseTo(4.3 * 0.3 * 100, 9)
    expect(yarn(whole, 'y1').grams.high).toBeCloseTo((4.3 + 0.1) * 0.7 * 100 * 1.1, 9)
    const half = materials(input({ motif: { ...flower, weighed: { ...weighed, shares: { centre: 0.3 } } } }))
    expect(yarn(half, 'y1').grams.expected).toBeCloseTo(yarn(whole, 'y1').grams.expected, 9)
    expect(codes(half)).not.toContain('yarn/shares')
  })

  it('M41 warns where the grams of the colours and the weight of the whole motif cannot both be right', () => {
    // By hand: 0.8 g and 3.4 g are 4.2 g a motif; 5 % of that and 0.1 g for rounding are allowed.
    const said = (grams: number, slots = daisy.slots) =>
      materials(
        input({ motif: { ...daisy, slots, weighed: { motifs: 10, grams, resolution: 0.1 } } }),
      ).findings.find(({ code }) => code === 'yarn/weights-differ')
    for (const grams of [39.5, 42, 44.8]) expect(said(grams)).toBeUndefined()
    for (const grams of [37, 46]) expect(said(grams)?.target).toEqual({ motif: daisy.id })
    expect(said(61)?.message).toContain('its colors weigh 4.2 g')
    expect(said(61)?.message).toContain('the whole motif 6.1 g')
    // A colour that is heavier than the whole motif leaves nothing for the other.
    expect(said(61, [{ slot: 'centre', grams: 20 }, { slot: 'petals' }])).toBeDefined()
    expect(said(61, [{ slot: 'centre', grams: 2 }, { slot: 'petals' }])).toBeUndefined()
  })

  it('M41 scales shares that do not add up to 1 and says so', () => {
    const weighed = { motifs: 1, grams: 4, resolution: 0.1, shares: { centre: 0.5, petals: 1.5 } }
    const found = materials(input({ motif: { ...flower, weighed } }))
    expect(codes(found)).toContain('yarn/shares')
    expect(yarn(found, 'y2').parts.motifs).toBeCloseTo(100, 9)
    expect(yarn(found, 'y1').parts.motifs).toBeCloseTo(300, 9)
  })

  it('M41 splits by computed length without shares, evenly and with a note without either', () => {
    const motif = { ...flower, weighed: { motifs: 10, grams: 70, resolution: 1 } }
    const computed = materials(input({ motif, account: flowerAccount }))
    expect(yarn(computed, 'y2').parts.motifs).toBeCloseTo(100, 9)
    expect(codes(computed)).not.toContain('yarn/split-evenly')
    const even = materials(input({ motif }))
    expect(yarn(even, 'y2').parts.motifs).toBeCloseTo(350, 9)
    expect(codes(even)).toContain('yarn/split-evenly')
  })

  it('M41 splits one weight by the areas of the drawing, each part ±25 %, the total as it was weighed', () => {
    const weighed = { motifs: 10, grams: 42, resolution: 1 }
    const motif = { ...daisy, slots: [{ slot: 'centre' }, { slot: 'petals' }], weighed }
    const { account } = measuredAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
    const areas = account!.layers.map(({ outline }) => Math.abs(signedArea(outline)))
    const centre = areas[1]! / areas[0]!
    const found = materials(input({ motif, account }))
    for (const [id, share] of [
      ['y2', centre],
      ['y1', 1 - centre],
    ] as const) {
      const { grams, split } = yarn(found, id)
      expect(grams.expected).toBeCloseTo(4.2 * share * 100 * 1.1, 6)
      expect(grams.low / grams.expected).toBeCloseTo(0.75, 9)
      expect(grams.high / grams.expected).toBeCloseTo(1.25, 9)
      expect(split).toEqual(['areas'])
    }
    const note = found.findings.find(({ code }) => code === 'yarn/split-by-area')
    expect(note?.message).toContain(
      `centre ${Math.round(centre * 100)} %, petals ${Math.round((1 - centre) * 100)} %`,
    )
    const colourways = [{ id: 'c1', motif: 'm1', yarns: { centre: 'y1', petals: 'y1' } }]
    const one = materials(input({ motif, account, project: project({ colourways }) }))
    expect(yarn(one, 'y1').grams.expected).toBeCloseTo(420 * 1.1, 9)
    expect(yarn(one, 'y1').grams.high).toBeCloseTo(430 * 1.1, 9)
    expect(yarn(one, 'y1').split).toBeUndefined()
    expect(codes(one)).not.toContain('yarn/split-by-area')
  })

  it('M41 splits the weight of written rounds by their stitches, each part ±15 %, none beyond the whole', () => {
    // By hand: 7 ± 0.1 g a motif in seven metres, one of them of the centre: that is 1 g ± 15 %, 0.85 to 1.15 g, and
    // the petals take what is left of the whole, 6.9 − 1.15 = 5.75 g to 7.1 − 0.85 = 6.25 g, not 6 g ± 15 %.
    const motif = { ...flower, weighed: { motifs: 10, grams: 70, resolution: 1 } }
    const found = materials(input({ motif, account: flowerAccount }))
    const [petals, centre] = [yarn(found, 'y1'), yarn(found, 'y2')]
    expect(petals.grams.expected).toBeCloseTo(600 * 1.1, 9)
    expect(petals.grams.low).toBeCloseTo(575 * 1.1, 9)
    expect(petals.grams.high).toBeCloseTo(625 * 1.1, 9)
    expect(centre.grams.expected).toBeCloseTo(100 * 1.1, 9)
    expect(centre.grams.low).toBeCloseTo(85 * 1.1, 9)
    expect(centre.grams.high).toBeCloseTo(115 * 1.1, 9)
    expect(petals.split).toEqual(['stitches'])
    const note = found.findings.find(({ code }) => code === 'yarn/split-by-stitches')
    expect(note?.message).toContain('centre 14 %, petals 86 %, each within ±15 %')
  })

  it('M41 is never less sure of a colour for weighing the whole motif, nor of more than the whole motif', () => {
    // The seven metres of the rounds weigh 2.8 g; so does the motif, on scales of several steps up to those ±15 %.
    const tailless = project({ allowance: { tail: 0 } })
    const unweighed = materials(input({ motif: flower, account: flowerAccount, project: tailless }))
    const width = ({ low, expected, high }: Range) => [low / expected, high / expected] as const
    for (const resolution of [0, 0.1, 1, 4]) {
      const motif = { ...flower, weighed: { motifs: 10, grams: 28, resolution } }
      const found = materials(input({ motif, account: flowerAccount }))
      const most = (28 + resolution) * 10 * 1.1
      for (const id of ['y1', 'y2']) {
        const [low, high] = width(yarn(found, id).grams)
        const [leastOf, mostOf] = width(yarn(unweighed, id).grams)
        expect(low).toBeGreaterThanOrEqual(leastOf - 1e-9)
        expect(high).toBeLessThanOrEqual(mostOf + 1e-9)
        expect(yarn(found, id).grams.high).toBeLessThan(most)
      }
    }
  })

  it('M41 keeps what was weighed of some colours, and splits the rest of the weight over the others', () => {
    const slots = [{ slot: 'centre', grams: 1 }, { slot: 'petals' }, { slot: 'edge' }]
    const motif = { ...daisy, slots, weighed: { motifs: 1, grams: 5, resolution: 0.1 } }
    const { account } = measuredAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
    const colourways = [{ id: 'c1', motif: 'm1', yarns: { centre: 'y2', petals: 'y1', edge: 'y1' } }]
    const found = materials(input({ motif, account, project: project({ colourways }) }))
    expect(yarn(found, 'y2').grams.high).toBeCloseTo(1.1 * 100 * 1.1, 9)
    expect(yarn(found, 'y1').grams.expected).toBeCloseTo(4 * 100 * 1.1, 9)
    expect(yarn(found, 'y1').grams.high).toBeCloseTo(4.1 * 100 * 1.1, 9)
  })

  it('M41 takes an unravelled length before a computed one', () => {
    const motif = { ...flower, unravelled: { centre: 1.3, petals: 7 } }
    const need = yarn(materials(input({ motif, account: flowerAccount })), 'y1')
    expect(need.parts.motifs).toBeCloseTo(7 * 0.4 * 100, 9)
    expect(need.parts.tails).toBe(0)
    expect(need.grams.high / need.grams.expected).toBeCloseTo(1.05, 9)
  })
})

describe('M40, M42 yarn from stitches', () => {
  it('M42 brings computed metres to grams by the ball band, ±15 %, with two tails to a colour section', () => {
    const need = yarn(materials(input({ motif: flower, account: flowerAccount })), 'y1')
    expect(need.parts.motifs).toBeCloseTo(6 * 0.4 * 100, 9)
    expect(need.parts.tails).toBeCloseTo(0.3 * 0.4 * 100, 9)
    expect(need.parts.waste).toBeCloseTo((240 + 12) * 0.1, 9)
    expect(need.grams.high).toBeCloseTo((240 * 1.15 + 12) * 1.1, 9)
    expect(need.grams.low).toBeCloseTo((240 * 0.85 + 12) * 1.1, 9)
  })

  it('M42 widens to ±25 % where the motif itself rests on a rule of thumb', () => {
    const account = { ...flowerAccount, provenance: 'rule-of-thumb' as const }
    const need = yarn(materials(input({ motif: flower, account })), 'y1')
    expect(need.grams.high).toBeCloseTo((240 * 1.25 + 12) * 1.1, 9)
  })

  it('M42 counts balls from the high value, then the stash, leftover and cost', () => {
    const yarns = [
      { id: 'y1', ballGrams: 50, ballMetres: 125, price: 3.9, onHandGrams: 120 },
      { id: 'y2', ballGrams: 50, ballMetres: 125, price: 4.1, onHandGrams: 500 },
    ]
    const found = materials(input({ project: project({ yarns }) }))
    const need = yarn(found, 'y1')
    expect(need.grams.high).toBeCloseTo(375.1, 6)
    expect(need.balls).toBe(8)
    expect(need.toBuy).toBe(6)
    expect(need.leftover).toBeCloseTo(120 + 300 - 374, 6)
    expect(need.cost).toBeCloseTo(6 * 3.9, 9)
    expect(yarn(found, 'y2').toBuy).toBe(0)
    expect(yarn(found, 'y2').cost).toBe(0)
    expect(codes(found)).toContain('yarn/stash-short')
    const short = found.findings.find((finding) => finding.code === 'yarn/stash-short')
    expect(short?.message).toContain('it is enough for at least 31 of the 100 motifs that use it')
    expect(short?.target).toEqual({ yarn: 'y1' })
  })

  it('M42 adds balls on hand to the grams on hand', () => {
    const onHand = (stash: object) => {
      const yarns = [
        { id: 'y1', ballGrams: 50, ballMetres: 125, price: 3.9, ...stash },
        { id: 'y2', ballGrams: 50, ballMetres: 125, price: 4.1 },
      ]
      return materials(input({ project: project({ yarns }) }))
    }
    const need = yarn(onHand({ onHandGrams: 20, onHandBalls: 2 }), 'y1')
    expect(need).toEqual(yarn(onHand({ onHandGrams: 120 }), 'y1'))
    expect([need.onHand, need.toBuy]).toEqual([120, 6])
    expect(yarn(onHand({ onHandBalls: 2.5 }), 'y1').onHand).toBe(125)
    const odd = onHand({ onHandBalls: -1, ballGrams: undefined })
    expect(yarn(odd, 'y1').onHand).toBe(0)
    expect(codes(odd)).toContain('yarn/invalid-value')
  })

  it('M42 marks every number that follows from a band which nobody entered, and says it once', () => {
    const yarns = [
      { id: 'y1', ballGrams: 50, ballMetres: 125, price: 3.9, assumed: ['ballGrams', 'ballMetres'] as const },
      { id: 'y2', ballGrams: 50, ballMetres: 125, price: 4, onHandBalls: 1, assumed: ['ballGrams'] as const },
    ].map((entry) => ({ ...entry, assumed: [...entry.assumed] }))
    const weighed = materials(input({ project: project({ yarns }) }))
    // Grams that were weighed do not hang on the band.
    expect(yarn(weighed, 'y1').assumed).toEqual(['metres', 'balls', 'toBuy', 'leftover', 'cost'])
    expect(yarn(weighed, 'y2').assumed).toEqual(['metres', 'balls', 'onHand', 'toBuy', 'leftover', 'cost'])
    const stitched = materials(input({ motif: flower, account: flowerAccount, project: project({ yarns }) }))
    // Metres that follow from stitches do not either.
    expect(yarn(stitched, 'y1').assumed).toEqual(['grams', 'balls', 'toBuy', 'leftover', 'cost'])
    for (const found of [weighed, stitched]) {
      const said = found.findings.filter(({ code }) => code === 'yarn/band-assumed')
      expect(said.map(({ message }) => message)).toEqual([
        expect.stringMatching(/^y1 \(50 g, 125 m\) and y2 \(50 g\): /),
      ])
    }
    const entered = yarns.map(({ assumed: _, ...entry }) => entry)
    const known = materials(input({ project: project({ yarns: entered }) }))
    expect(yarn(known, 'y1')).not.toHaveProperty('assumed')
    expect(codes(known)).not.toContain('yarn/band-assumed')
  })

  it('M42 says what bands do not tell once, with the names of all yarns', () => {
    const yarns = [
      { id: 'y1', name: 'Sea glass' },
      { id: 'y2', name: 'Sand' },
    ]
    const messages = materials(input({ project: project({ yarns }) })).findings.map(({ message }) => message)
    expect(messages.filter((message) => message.startsWith('Sea glass and Sand: the weight'))).toHaveLength(1)
    expect(messages.filter((message) => message.startsWith('Sea glass and Sand: the price'))).toHaveLength(1)
    const stitched = materials(
      input({ motif: flower, account: flowerAccount, project: project({ yarns }) }),
    ).findings.filter(({ code }) => code === 'yarn/no-ball-band')
    expect(stitched.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^\d+ m of Sea glass and \d+ m of Sand: /),
    ])
  })

  it('M42 does not buy a ball for a rounding error', () => {
    const motif = { ...daisy, slots: [{ slot: 'petals', grams: 0.1 }], weighed: { motifs: 1, resolution: 0 } }
    const counts = { motifs: 1500, byColourway: { c1: 1500 } }
    const allowance = { wastePercent: 0, tail: 150 }
    expect(yarn(materials(input({ motif, counts, project: project({ allowance }) })), 'y1').balls).toBe(3)
  })

  it('M42 says one dye lot, once', () => {
    expect(codes(materials(input())).filter((code) => code === 'yarn/dye-lot')).toHaveLength(1)
  })
})

describe('M34 yarn of joins', () => {
  const joining = { rule: 'bridge', bridgeChains: 3, yarn: 'y1' } as const

  it('M34 costs nothing extra to join as you go', () => {
    const found = materials(
      input({ project: project({ joining: { rule: 'tips', yarn: 'y1' } }), joinOperations: 180 }),
    )
    expect(yarn(found, 'y1').parts.joins).toBe(0)
    expect(found.ends).toBe(400)
  })

  it('M34 takes 5.2·w·2k for each joining chain, out and back, without tails in the yarn of the last round', () => {
    const found = materials(input({ project: project({ joining }), joinOperations: 180 }))
    expect(yarn(found, 'y1').parts.joins).toBeCloseTo((180 * 5.2 * 5 * 6 * 0.4) / 1000, 9)
    expect(yarn(found, 'y1').parts.tails).toBe(0)
    expect(found.ends).toBe(400)
  })

  it('M34 gives joining chains in another yarn two tails and two ends for each motif that joins', () => {
    const other = { ...joining, yarn: 'y2' }
    const found = materials(input({ project: project({ joining: other }), joinOperations: 180 }))
    expect(yarn(found, 'y2').parts.tails).toBeCloseTo(99 * 0.3 * 0.4, 9)
    expect(found.ends).toBe(400 + 198)
  })

  it('M34 takes seams by their length: whip 3 ×, slip stitch 5.5 ×, sc 10.5 ×, flat braid 10 ×, plus tails', () => {
    const factors = { whip: 3, mattress: 3, 'slip-stitch': 5.5, sc: 10.5, 'flat-braid': 10 } as const
    for (const [seam, factor] of Object.entries(factors)) {
      const joined = project({ joining: { rule: 'seam', yarn: 'y2', seam: seam as keyof typeof factors } })
      const found = materials(input({ project: joined, seams: { length: 9000, count: 18 } }))
      expect(yarn(found, 'y2').parts.joins).toBeCloseTo(9 * factor * 0.4, 9)
      expect(yarn(found, 'y2').parts.tails).toBeCloseTo(18 * 0.3 * 0.4, 9)
      expect(found.ends).toBe(436)
    }
  })

  it('M34 keeps the crocheted seams within 12 % of the one published measurement (chain 4.95, sc 10.6 × length)', () => {
    // §windchilde: a slip-stitch seam is of the order of the chain's 5 × its length.
    const seam = (kind: 'slip-stitch' | 'sc') => {
      const joined = project({ joining: { rule: 'seam', yarn: 'y2', seam: kind } })
      return (
        yarn(materials(input({ project: joined, seams: { length: 1000, count: 0 } })), 'y2').parts.joins / 0.4
      )
    }
    expect(Math.abs(seam('slip-stitch') / 4.95 - 1)).toBeLessThan(0.12)
    expect(Math.abs(seam('sc') / 10.6 - 1)).toBeLessThan(0.02)
  })

  it('M34 takes the yarn that the motifs end with where none is named, and says so', () => {
    const joined = project({ joining: { rule: 'seam', seam: 'whip' } })
    const found = materials(input({ project: joined, seams: { length: 9000, count: 18 } }))
    expect(yarn(found, 'y1').parts.joins).toBeGreaterThan(0)
    expect(codes(found)).toContain('yarn/joining-yarn-assumed')
  })

  it('says by which colourway the yarn of joins is chosen where the motifs end with several', () => {
    const colourways = [
      { id: 'c1', code: 'A', motif: 'm1', yarns: { centre: 'y2', petals: 'y1' } },
      { id: 'c2', code: 'B', motif: 'm1', yarns: { centre: 'y1', petals: 'y2' } },
    ]
    const joined = project({ colourways, joining: { rule: 'seam', seam: 'whip' } })
    const found = (c1: number, c2: number) =>
      materials(
        input({
          project: joined,
          seams: { length: 9000, count: 18 },
          counts: { motifs: c1 + c2, byColourway: { c1, c2 } },
        }),
      )
    const told = found(3, 9)
    expect(yarn(told, 'y2').parts.joins).toBeGreaterThan(0)
    expect(codes(told)).not.toContain('yarn/joining-yarn-assumed')
    expect(told.findings.find(({ code }) => code === 'yarn/joining-yarn-of-several')?.message).toContain(
      'counted in “Sand”, the last yarn of colorway B; no other colorway is made more often.',
    )
    // All of one colourway: the motifs do end with it.
    expect(codes(found(0, 12))).toContain('yarn/joining-yarn-assumed')
    expect(codes(found(0, 12))).not.toContain('yarn/joining-yarn-of-several')
  })
})
