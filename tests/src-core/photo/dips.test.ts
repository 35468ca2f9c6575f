/** How the dip is held between what the clefts say and what the line round the motif says, and what slits add to it. */
import { describe, expect, it } from 'vitest'
import { dipOfAll, heldDip } from '../../../src-core/photo/dips'
import { slitBehind, spaceBehind } from '../../../src-core/photo/slits'

const cleft = (far: number, growth = 1.2, stray = 0.01) => ({
  far,
  growth,
  stray,
  thin: 0,
  slit: null,
  space: null,
})
const opens = (far: number, to: number, open = true) => ({ ...cleft(far), slit: { far: to, open } })

describe('the dip', () => {
  it('is what one law says that fits all clefts alike', () => {
    const held = heldDip([cleft(100), cleft(101), cleft(100)], 100, 106)
    expect(held).toMatchObject({ far: 100, fits: true })
    expect(held.apart).toBeCloseTo(0.06, 10)
  })

  it('is nearer to the line where no law fits or clefts differ', () => {
    const odd = heldDip([cleft(95, 1.2, 0.2), cleft(105, 1.2, 0.2)], 100, 106)
    expect(odd.fits).toBe(false)
    expect(odd.far).toBeGreaterThan(103)
  })

  it('is never beyond the line, and the difference is told', () => {
    const held = heldDip([cleft(110)], 110, 100)
    expect(held.far).toBe(100)
    expect(held.apart).toBeCloseTo(100 / 110 - 1, 10)
  })
})

describe('the dip of all petals', () => {
  const narrow = (...all: number[]) => all.map((far) => ({ far, broad: false }))
  const lines = narrow(100, 100, 100, 100, 100)
  const shut = [cleft(100), cleft(100), cleft(100)]

  it('counts a cleft that goes on with the end of its slit, and not with its narrow', () => {
    const dip = dipOfAll([...shut, opens(104, 60), opens(98, 70)], narrow(100, 100, 100, 130, 130), 0)
    expect(dip.far).toBeCloseTo((3 * 100 + 60 + 70) / 5, 10)
    expect(dip).toMatchObject({ sure: true })
    expect(dipOfAll([opens(90, 50), opens(91, 52)], narrow(100, 100), 0)).toMatchObject({
      far: 51,
      sure: true,
    })
  })

  it('is not led out by a line that a thread leads across the mouth of one cleft', () => {
    const five = [100, 101, 99, 100, 100].map((far) => cleft(far, 1.2, 0.05))
    const dip = dipOfAll(five, narrow(102, 103, 101, 240, 102), 0)
    expect(dip.far).toBeLessThan(103)
    expect(dip.sure).toBe(true)
    // Where most mouths are shut, nobody knows.
    expect(dipOfAll(five, narrow(240, 240, 101, 240, 102), 0).sure).toBe(false)
  })

  it('is not sure where clefts end outside the line, which has entered farther than they were followed', () => {
    const many = (far: number) => Array.from({ length: 5 }, () => cleft(far))
    expect(dipOfAll(many(103), lines, 0)).toMatchObject({ far: 100, sure: true })
    // As in lace under fuzz: 147 for a line at 138, where the dip was 129.
    expect(dipOfAll(many(147), narrow(138, 138, 138, 138, 138), 0)).toMatchObject({ far: 138, sure: false })
  })

  it('is sure on threads that close all clefts off alike, where no law fits and the line ends too, whatever spaces lie behind', () => {
    const blunt = (stray: number) => Array.from({ length: 5 }, () => cleft(106, 1, stray))
    const laced = blunt(0.15).map((each) => ({ ...each, space: 70 }))
    expect(dipOfAll(laced, lines, 0)).toMatchObject({ far: 100, least: 100, sure: true })
    expect(dipOfAll(blunt(0.1), lines, 0)).toMatchObject({ far: 100, least: 100, sure: true })
    // A law fits them: then they were clefts, and not followed to their ends.
    expect(dipOfAll(blunt(0.03), lines, 0).sure).toBe(false)
    // Fuzz hides some of it, and some more.
    expect(dipOfAll(blunt(0.1), narrow(98, 102, 98, 102, 100), 0).sure).toBe(false)
    // The two say too unlike things.
    const far = Array.from({ length: 5 }, () => cleft(111, 1, 0.1))
    expect(dipOfAll(far, lines, 0).sure).toBe(false)
  })

  it('does not count what no law fits at all as a slit, though light is seen behind it', () => {
    const none = { ...opens(160, 76), stray: 9.9 }
    expect(dipOfAll([...shut, none, null], narrow(101, 101, 101, 101, 101), 0)).toMatchObject({
      far: 100,
      sure: true,
    })
  })

  it('is not sure where clefts run out thinly and the line follows some farther than others', () => {
    const thin = (by: number, lines: number[]) =>
      dipOfAll(
        [97, 102, 100, 101, 95].map((far) => ({ ...cleft(far), thin: by })),
        narrow(...lines),
        0,
      ).sure
    expect(thin(7, [98, 106, 100, 103, 102])).toBe(false)
    expect(thin(3, [98, 106, 100, 103, 102])).toBe(true)
    expect(thin(7, [99, 104, 102, 103, 97])).toBe(true)
  })

  it('is sure a little farther from the line where clefts are alike and none may go on', () => {
    const alike = (slit: { far: number; open: boolean } | null, ...by: number[]) =>
      dipOfAll([-by[0]!, by[0]!, -by[0]!, by[0]!, 0].map((each) => ({ ...cleft(100 + each, 1.5, 0.04), slit })), narrow(109, 109, 109, 109, 109), 0).sure // prettier-ignore
    expect(alike(null, 2)).toBe(true)
    expect(alike(null, 6)).toBe(false)
    expect(alike({ far: 98, open: false }, 2)).toBe(false)
  })

  it('counts a cleft that is deeper than the others where its own line says so too, and not where only its fit does', () => {
    const fits = [cleft(98), cleft(98), cleft(98), cleft(98), cleft(78)]
    const far = (...lines: number[]) => dipOfAll(fits, narrow(...lines), 0).far
    expect(Math.abs(far(100, 100, 100, 100, 80) - (4 * 98 + 78) / 5)).toBeLessThan(0.3)
    expect(Math.abs(far(100, 100, 100, 100, 100) - 98)).toBeLessThan(0.3)
  })

  it('does not count fits that end outside their own line, which a hard shadow in the cleft leads astray', () => {
    const astray = [cleft(97), cleft(97), cleft(97), cleft(111), cleft(113)]
    expect(Math.abs(dipOfAll(astray, lines, 0).far - 97)).toBeLessThan(0.4)
  })

  it('says what it is at least, and is not sure, where petals may touch or not', () => {
    const one = dipOfAll([...shut, cleft(100), opens(100, 90, false)], lines, 0)
    expect(one).toMatchObject({ far: 100, least: 98, sure: true })
    const more = dipOfAll([...shut, opens(100, 60, false), opens(100, 60, false)], lines, 0)
    expect(more).toMatchObject({ far: 100, least: 84, sure: false })
  })

  it('is not sure where petals touch in front of a space, which a stitch alone may close off', () => {
    const closedOff = { ...cleft(100), space: 70 }
    expect(dipOfAll([closedOff, closedOff, closedOff, closedOff, cleft(100)], lines, 0)).toMatchObject({
      far: 100,
      least: 76,
      sure: false,
    })
  })

  it('is sure in front of the spaces of lace, where nothing opens like a cleft', () => {
    const lace = { ...cleft(102, 1, 0.21), space: 70 }
    const both = (one: typeof lace) => dipOfAll([one, one, one, one, one], lines, 0)
    expect(both(lace)).toMatchObject({ far: 100, least: 100, sure: true })
    expect(both({ ...lace, stray: 0.12 })).toMatchObject({ least: 70, sure: false })
  })

  it('is not sure where clefts are unlike, however well a law fits each of them', () => {
    const dip = dipOfAll([cleft(120), cleft(80), cleft(110), cleft(70)], narrow(121, 81, 111, 71), 0)
    expect(dip.sure).toBe(false)
    const alike = dipOfAll([cleft(97), cleft(93), cleft(96), cleft(94)], narrow(98, 94, 97, 95), 0)
    expect(alike.sure).toBe(true)
  })

  it('is not sure where clefts come and go twice in a turn, as those between thick petals at a slant', () => {
    const turned = (by: number, times: number) =>
      Array.from({ length: 12 }, (_, k) => cleft(100 + by * Math.cos((2 * Math.PI * times * k) / 12)))
    const dip = (all: readonly ReturnType<typeof cleft>[]) =>
      dipOfAll(all, narrow(...all.map(({ far }) => far + 2)), 0).sure
    expect(dip(turned(6, 2))).toBe(false)
    expect(dip(turned(2, 2))).toBe(true)
    expect(dip(turned(6, 3))).toBe(true)
  })

  it('is sure where line and clefts say the same, though clefts differ or no law fits them', () => {
    const odd = (by: number) => [cleft(96, 0.8, 0.14), cleft(104, 0.8, 0.14), cleft(96, 0.8, 0.14), cleft(104, 0.8, 0.14)].map((each) => ({ ...each, far: each.far + by })) // prettier-ignore
    expect(dipOfAll(odd(0), narrow(101, 101, 101, 101), 0).sure).toBe(true)
    expect(dipOfAll(odd(0), narrow(103, 103, 103, 103), 0).sure).toBe(false)
  })

  it('is sure where clefts are drawn out only as long as the line is near them', () => {
    const drawn = [96, 104, 96, 104].map((far) => cleft(far, 2.3, 0.03))
    expect(dipOfAll(drawn, narrow(105, 105, 105, 105), 0)).toMatchObject({ sure: true, far: 102.5 })
    expect(dipOfAll(drawn, narrow(107, 107, 107, 107), 0).sure).toBe(false)
  })

  it('is where the line is where most dips are too broad for any blur to fill, unless a slit goes on there', () => {
    const broad = [101, 100, 99].map((far) => ({ far, broad: true }))
    expect(dipOfAll([cleft(94, 0), cleft(95, 2.5), null], broad, 0)).toEqual({
      far: 100,
      least: 100,
      sure: true,
    })
    expect(dipOfAll([opens(94, 60), opens(95, 60), opens(94, 60)], broad, 0)).toMatchObject({ far: 60 })
    // Spoons that touch: the line shuts the mouths of the clefts.
    expect(dipOfAll([cleft(70), cleft(71), cleft(70)], broad, 0).far).toBeLessThan(75)
  })

  it('is what the line shows where no cleft is seen, and not sure', () => {
    expect(dipOfAll([null, null, null], narrow(90, 90, 90), 88)).toEqual({ far: 88, least: 88, sure: false })
  })
})

describe('a slit', () => {
  // Four places to the mm, from 5 to 30 mm from the middle; the space behind is 3 mm wide and ends at 12 mm.
  const SCALE = 4
  const far = Array.from({ length: 101 }, (_, at) => 20 + at)
  const widths = (narrow: number) =>
    far.map((r) =>
      r < 48 ? 0 : r < 72 ? 3 * SCALE : r < 92 ? narrow * SCALE : ((r - 92) / 4 + narrow) * SCALE,
    )
  const behind = (narrow: number) => slitBehind(far, widths(narrow), 92, 1, SCALE)

  it('goes on to the end of the space behind it where light is seen all along', () => {
    expect(behind(0.2)).toEqual({ far: 48, open: true })
  })

  it('may be shut where hardly any light is seen, and is where none is', () => {
    expect(behind(0.05)).toEqual({ far: 48, open: false })
    expect(behind(0)).toBeNull()
  })

  it('may be the shadow of a fold where light yarn lies on a dark sheet, unless it is somewhere as bare as the sheet', () => {
    const seen = (barest: number) =>
      slitBehind(
        far,
        widths(0.2),
        92,
        1,
        SCALE,
        far.map((r) => (r >= 92 ? 1 : barest)),
      )
    expect(seen(0.4)).toEqual({ far: 48, open: false })
    expect(seen(0.8)).toEqual({ far: 48, open: true })
  })

  it('closes off a space where petals touch in front of it, which is ground and no shadow', () => {
    expect(spaceBehind(far, widths(0), 92, 1, SCALE)).toBe(48)
    expect(spaceBehind(far, widths(0), 92, 1, SCALE, far.map((r) => (r < 80 ? 0.4 : 1)))).toBeNull() // prettier-ignore
    // Nothing behind, or a ring of spaces far behind that has nothing to do with this cleft.
    expect(spaceBehind(far, far.map((r) => Math.max(0, r - 92)), 92, 1, SCALE)).toBeNull() // prettier-ignore
    expect(spaceBehind(far, far.map((r) => (r < 60 ? 8 : Math.max(0, r - 92))), 92, 1, SCALE)).toBeNull() // prettier-ignore
  })

  it('closes off nothing where what lies in front hangs together for longer than a stitch or two', () => {
    // A space up to so far behind the dip at 276: 46 mm from the middle with six places to the mm.
    const away = Array.from({ length: 300 }, (_, at) => at)
    const upTo = (edge: number) => away.map((r) => (r < 120 ? 0 : r < edge ? 10 : Math.max(0, r - 276)))
    expect(spaceBehind(away, upTo(250), 276, 1, 6)).toBe(120)
    expect(spaceBehind(away, upTo(230), 276, 1, 6)).toBeNull()
    // A blur that wide may hide where they part.
    expect(spaceBehind(away, upTo(230), 276, 9, 6)).not.toBeNull()
  })

  it('is none where the cleft only ends a blur behind its dip, or no space lies behind', () => {
    const smeared = far.map((r) => Math.max(0, r - 89) * 0.5)
    expect(slitBehind(far, smeared, 92, 1, SCALE)).toBeNull()
    const closed = far.map((r) => (r < 92 ? 0.05 * SCALE : (r - 92) * 0.5 + 0.2))
    expect(slitBehind(far, closed, 92, 1, SCALE)).toBeNull()
  })
})
