/** What pages of many styles say besides their rounds. The pages are ours; sizes of hooks by letter: §yarn-weights. */
import { describe, expect, it } from 'vitest'
import { colourNamed } from '../../../src-core/page/colour-names'
import { readPage } from '../../../src-core/page/read-page'
import { facts, only, US } from './facts'

describe('a hook', () => {
  it.each([
    ['Hook: 5.5 mm (I-9)', 5.5],
    ['Hook: US I/9', 5.5],
    ['Size H-8 (5 mm) crochet hook or size needed to obtain gauge', 5],
    ['Materials: worsted yarn, 5mm hook, scissors', 5],
    ['MATERIALS\n- G hook\n- DK yarn', 4],
    ['Crochet hook\n4.00mm', 4],
    ['Hook size: K-10½', 6.5],
    ['You will need: a 3,5 mm hook', 3.5],
    ['Materials: thread, No. 7 steel crochet hook', 1.65],
    ['Use a size 4 mm hook.', 4],
    ['Gauge: 16 dc = 4 in with a 5 mm hook', 5],
  ])('is found: %s', (head, mm) => {
    expect(only(facts(head), 'hook').map(({ hook }) => hook)).toEqual([mm])
  })

  it('is told once for all its mentions, and two are two', () => {
    const hooks = (head: string) => only(facts(head), 'hook').map(({ hook }) => hook)
    expect(hooks('Hook: 4 mm\nGauge: 18 sc = 4 in using 4 mm hook')).toEqual([4])
    expect(hooks('Materials: 4 mm hook, 5 mm hook for the edging')).toEqual([4, 5])
  })
})

describe('a gauge', () => {
  it.each([
    ['Gauge: 16 dc = 4 in', { stitch: 'dc', stitches: 16, over: 101.6 }],
    ['GAUGE\n16 dc and 8 rows = 4" [10 cm]', { stitch: 'dc', stitches: 16, rows: 8, over: 101.6 }],
    ['Gauge: 18 sts x 20 rows = 10 cm in sc', { stitch: 'sc', stitches: 18, rows: 20, over: 100 }],
    ['Gauge - 4 sts per inch in single crochet', { stitch: 'sc', stitches: 4, over: 25.4 }],
    ['Gauge: In sc, 14 sts and 16 rows = 4"', { stitch: 'sc', stitches: 14, rows: 16, over: 101.6 }],
    ['Gauge: 4" = 17 sts in half double crochet', { stitch: 'hdc', stitches: 17, over: 101.6 }],
    ['Gauge: 12 sc = 4"; 4 rows = 1"', { stitch: 'sc', stitches: 12, rows: 16, over: 101.6 }],
    ['17 dc = 4 in.', { stitch: 'dc', stitches: 17, over: 101.6 }],
  ])('over a swatch: %s', (head, gauge) => {
    const [found, ...others] = only(facts(head), 'swatch')
    expect(others).toEqual([])
    expect(found!.gauge.stitches).toBe(gauge.stitches)
    expect(found!.gauge).toMatchObject({
      ...gauge,
      ...('rows' in gauge && { rows: expect.closeTo(gauge.rows!, 1) }),
    })
  })

  it.each([
    ['Tension: 5 tr to 2.5 cm', { stitch: 'tr', stitches: 5, over: 25 }],
    ['Tension\n20 sts and 10 rows to 10 cm over tr', { stitch: 'tr', stitches: 20, rows: 10, over: 100 }],
    ['Tension: 18 dc and 20 rows to 10cm (4in)', { stitch: 'dc', stitches: 18, rows: 20, over: 100 }],
    ['Tension: 16 sts to 10 cm in half treble', { stitch: 'htr', stitches: 16, over: 100 }],
  ])('in UK terms: %s', (head, gauge) => {
    expect(only(facts(head, 'UK'), 'swatch').map((fact) => fact.gauge)).toEqual([gauge])
  })

  it.each([
    ['Gauge: Rnds 1-3 = 4"', 3, 101.6],
    ['GAUGE\nRnds 1 and 2 = 2" [5 cm] across', 2, 50.8],
    ['Gauge: Rounds 1 and 2 = 3 in', 2, 76.2],
    ['Gauge: Rnd 1 = 1-1/2 in. across', 1, 38.1],
    ['Gauge: First 2 rounds measure 2½" in diameter', 2, 63.5],
    ['Gauge: first three rnds = 7.5 cm', 3, 75],
    ['Gauge: 2 rounds = 3 in', 2, 76.2],
    ['Gauge: After Rnd 4, piece measures 10 cm (4 in)', 4, 100],
    ['Rounds 1 to 3 measure 9 cm across.', 3, 90],
  ])('by the first rounds: %s', (head, rounds, across) => {
    const list = facts(head)
    expect(only(list, 'rounds-gauge').map(({ gauge }) => gauge)).toEqual([{ rounds, across }])
    expect(only(list, 'swatch')).toEqual([])
  })

  it('from corner to corner is none, and no size of the motif either', () => {
    const list = facts('Gauge: Rounds 1 to 3 of the square measure 12 cm corner to corner')
    expect(list.map(({ kind }) => kind)).toEqual(['notes'])
  })

  it('that is none stays a note', () => {
    expect(only(facts('Gauge: not important for this project.'), 'notes')[0]?.text).toBe(
      'Gauge: not important for this project.',
    )
  })
})

describe('a size', () => {
  it.each([
    ['FINISHED MEASUREMENTS\n4" [10 cm] side to side', [['sideToSide', 101.6]]],
    ['Finished size: approx. 11 cm in diameter', [['across', 110]]],
    ['Size: 6" x 6"', [['sideToSide', 152.4]]],
    [
      'Finished size: 4" (10 cm) side to side, 4½" (11.5 cm) point to point',
      [
        ['sideToSide', 101.6],
        ['pointToPoint', 114.3],
      ],
    ],
    ['Each square measures 5 in across.', [['sideToSide', 127]]],
    ['Gauge: Motif = 3¾" across', [['across', 95.25]]],
    [
      'Finished size: 8 cm long, 5 cm wide',
      [
        ['length', 80],
        ['width', 50],
      ],
    ],
  ])('of a motif: %s', (head, sizes) => {
    expect(only(facts(head), 'size').map(({ size }) => size)).toEqual([{ of: 'motif', sizes, blocked: null }])
  })

  it('says whether it is blocked', () => {
    expect(only(facts('Size: 12 cm across, after blocking'), 'size')[0]?.size).toMatchObject({
      blocked: true,
    })
    expect(only(facts('Size: 12 cm across before blocking'), 'size')[0]?.size).toMatchObject({
      blocked: false,
    })
  })

  it('of a blanket', () => {
    const [found] = only(facts('Finished size: 48 x 60 in (122 x 152 cm)'), 'size')
    expect(found?.size).toEqual({ of: 'whole', width: 1219.2, height: 1524 })
  })

  it('that leaves a choice stays a note', () => {
    const list = facts('Finished size: small 8 cm, large 12 cm')
    expect(only(list, 'size')).toEqual([])
    expect(only(list, 'notes')[0]?.text).toBe('Finished size: small 8 cm, large 12 cm')
  })
})

describe('yarns', () => {
  const yarns = (head: string) =>
    only(facts(head), 'yarn').map(({ yarn, role }) => [role, yarn.name, yarn.ballGrams, yarn.ballMetres])
  it.each([
    ['Yarn: 4-ply cotton (50 g/170 m)', [[null, '4-ply cotton', 50, 170]]],
    [
      'Yarn: Worsted weight acrylic, 7 oz/364 yds per skein',
      [[null, 'Worsted weight acrylic', 198.45, 332.84]],
    ],
    ['Yarn: sport weight wool, 1.75 oz/50 g, 137 yd/125 m per ball', [[null, 'Sport weight wool', 50, 125]]],
    [
      'Materials: Medium (worsted) weight yarn, 15 yds; H-8 hook',
      [[null, 'Medium (worsted) weight yarn', undefined, undefined]],
    ],
    ['Size 10 crochet thread; No. 7 steel hook', [[null, 'Size 10 crochet thread', undefined, undefined]]],
    [
      'Materials: DK cotton (50 g/125 m), 20 m each of yellow (A) and white (B); 3.5 mm hook; yarn needle.',
      [
        ['A', 'Yellow', 50, 125],
        ['B', 'White', 50, 125],
      ],
    ],
    [
      'Yarn\n3 x 50g balls of 4-ply cotton (100% cotton, 50g/170m)\nMC: Poppy Red\nCC: Black',
      [
        ['MC', '4-ply cotton, Poppy Red', 50, 170],
        ['CC', '4-ply cotton, Black', 50, 170],
      ],
    ],
    ...[
      'Materials: Cotton (50 g/170 m) in Saffron (A), Coral (B) and Claret (C). 3 mm hook.',
      'Materials: 4-ply cotton in Saffron (A), Coral (B) and Claret (C), 50 g / 170 m each. 3 mm hook.',
      'You will need: cotton, 50 g / 170 m, in Saffron (A), Coral (B) and Claret (C) and a 3 mm hook.',
      'Materials: Cotton (50 g/170 m) in Saffron (A), Coral (B), Claret (C). Steel hook no. 2. A needle.',
    ].map((head): [string, (string | number)[][]] => [
      head,
      [
        ['A', 'Saffron', 50, 170],
        ['B', 'Coral', 50, 170],
        ['C', 'Claret', 50, 170],
      ],
    ]),
    [
      'Colors: Color A = sky blue; Color B = cream',
      [
        ['A', 'Sky blue', undefined, undefined],
        ['B', 'Cream', undefined, undefined],
      ],
    ],
  ])('are found: %s', (head, expected) => {
    expect(yarns(head)).toEqual(expected)
  })

  it('have a fibre and a colour where they are told', () => {
    const [red] = only(facts('Yarn: DK (80% wool, 20% nylon, 50 g/125 m), A: dark green'), 'yarn')
    expect(red?.yarn).toMatchObject({ fibre: '80% wool, 20% nylon', colour: '#356038' })
  })

  it('are none among scissors and needles', () => {
    expect(yarns('Notions: yarn needle, scissors, stitch markers')).toEqual([])
  })
})

describe('a line that says only whose terms they are', () => {
  it.each([
    'UK terms',
    '(Written in US terms)',
    'This pattern uses UK terminology.',
    '- US crochet terms used throughout',
  ])('is no name and no instruction: "%s"', (line) => {
    for (const head of [
      line,
      `${line}\nHook: 4 mm`,
      `Meadow Hexagon\n${line}\n\nHook: 4 mm`,
      `Notes\n${line}`,
    ]) {
      const list = facts(head)
      expect(only(list, 'notes')).toEqual([])
      expect(only(list, 'name').map(({ name }) => name)).toEqual(
        head.startsWith('Meadow') ? ['Meadow Hexagon'] : [],
      )
    }
  })

  it('leaves what it says besides', () => {
    expect(only(facts('Notes\nUK terms. Turn the work after round 2.'), 'notes')[0]?.text).toBe(
      'Notes: UK terms. Turn the work after round 2.',
    )
  })
})

describe('who made it', () => {
  it('stands behind what it is', () => {
    const list = facts('Meadow Hexagon\nA doily-start hexagon by Ada Birch')
    expect(only(list, 'designer').map(({ designer }) => designer)).toEqual(['Ada Birch'])
    expect(only(list, 'notes').map(({ text }) => text)).toEqual(['A doily-start hexagon'])
  })

  it.each([
    'Photographs by Ada Birch',
    'Tested by Ada Birch',
    'Join the motifs by hand',
    'Set apart by Row 2',
  ])('is not told by "%s"', (line) => {
    expect(only(facts(`Meadow Hexagon\n\n${line}`), 'designer')).toEqual([])
  })
})

it('"Measurement: …" is a size, and none of the gauge', () => {
  const list = facts('Tension: 24 dc and 28 rows = 10 cm.\nMeasurement: about 8 cm across.')
  expect(only(list, 'size')).toHaveLength(1)
  expect(only(list, 'notes')).toEqual([])
})

describe('names, designers, skill and notes', () => {
  const PAGE = `Meadow Hexagon
Designed by Ada Birch

A quick little hexagon for scraps. Use it for a throw.

Skill level: Easy
Hook: 4 mm
Abbreviations: ch = chain
Pattern notes
Weave in ends as you go.

Keep the ring loose.`

  it('are each told with where they stand', () => {
    const list = facts(PAGE)
    expect(list.map(({ kind, at }) => [kind, at.line, at.column, at.words.split('\n')[0]])).toEqual([
      ['name', 1, 1, 'Meadow Hexagon'],
      ['designer', 2, 13, 'Ada Birch'],
      ['notes', 4, 1, 'A quick little hexagon for scraps. Use it for a throw.'],
      ['skill', 6, 14, 'Easy'],
      ['hook', 7, 7, '4 mm'],
      ['notes', 10, 1, 'Weave in ends as you go.'],
    ])
    for (const { at } of list) expect((PAGE + US).slice(at.start, at.end)).toBe(at.words)
    expect(only(list, 'notes')[1]?.text).toBe('Pattern notes: Weave in ends as you go.\nKeep the ring loose.')
  })

  it.each([
    ['Title: Bell Square', 'Bell Square'],
    ['POPPY COASTER\nby Jo Fern', 'Poppy Coaster'],
    ['** Bell Square **\n\nGauge: 16 dc = 4 in', 'Bell Square'],
    ['SKILL LEVEL\nEasy\n\nHEXAGON', 'Hexagon'],
  ])('name: %s', (head, name) => {
    expect(only(facts(head), 'name').map((fact) => fact.name)).toEqual([name])
  })

  it.each([
    ['Bell Square\nby Jo Fern', 'Jo Fern'],
    ['Bell Square\nDesigner: Jo Fern', 'Jo Fern'],
    ['Bell Square\n© 2021 Jo Fern', 'Jo Fern'],
    ['Bell Square\nPattern by Jo van Fern', 'Jo van Fern'],
  ])('designer: %s', (head, designer) => {
    expect(only(facts(head), 'designer').map((fact) => fact.designer)).toEqual([designer])
  })

  it('none where only rounds stand', () => {
    expect(facts('')).toEqual([])
    expect(readPage('', 'US')).toEqual([])
  })

  it('take no round and no explained stitch', () => {
    expect(facts('Special stitches\nShell: 5 dc in one st.')).toEqual([])
  })

  it('what stands behind the rounds is found as well', () => {
    const list = readPage(`${US.trim()} Fasten off.\n\nFinishing: Weave in ends. Block.`, 'US')
    expect(only(list, 'notes').map(({ text }) => text)).toEqual(['Finishing: Weave in ends. Block.'])
  })
})

describe('any page', () => {
  it('leaves no word out but headings, rounds and abbreviations', () => {
    const page = `Bell Square\nby Jo Fern\n\nMade for my aunt, 2 of them.\nGauge: 16 dc = 4 in. Go up a hook if it cups.\nMaterials: cotton yarn (50 g/125 m), 4 mm hook, a needle\nSize: 10 cm across, more or less; it grows\nNotes: Read me.${US}`
    const told = readPage(page, 'US')
    const lines = page.slice(0, page.indexOf('\n\nRnd')).split('\n')
    let start = 0
    for (const line of lines) {
      const end = start + line.length
      if (line.trim())
        expect(
          told.some(({ at }) => at.start < end && at.end > start),
          line,
        ).toBe(true)
      start = end + 1
    }
    // A sentence that sets nothing stays with its words.
    expect(
      only(told, 'notes')
        .map(({ text }) => text)
        .join('\n'),
    ).toContain('Go up a hook if it cups.')
  })

  it('never throws, whatever stands there', () => {
    for (const text of [
      'Gauge: = = 4" x',
      'Hook:',
      'Yarn: (A) (B) (',
      'Size: x x x',
      '© ©\n:::\n%%%',
      'Gauge: 0 dc = 0 in',
    ])
      expect(() => readPage(text, 'US')).not.toThrow()
  })
})

describe('colors of yarns by their names', () => {
  it('are told apart: moss, oat, claret, saffron and their like have one each', () => {
    const names = ['moss', 'oat', 'claret', 'saffron', 'sand', 'rust', 'ice', 'stone']
    expect(new Set(names.map(colourNamed)).size).toBe(names.length)
    expect(names.map(colourNamed)).not.toContain(null)
  })
})
