/** Motifs written in slots, each slot in the wordings that patterns have for it. (Common practice, no source.) */

export type Worn = Record<string, string>

/** A dress for every slot of the motif. */
export type Complete = {
  readonly [
    slot in
      | 'ring'
      | 'chain'
      | 'label'
      | 'turn'
      | 'one'
      | 'oneC'
      | 'two'
      | 'twoC'
      | 'three'
      | 'threeC'
      | 'four'
      | 'fourC'
      | 'five'
      | 'fiveC'
      | 'end'
      | 'special'
      | 'six'
      | 'sixC'
      | 'def'
  ]: string
}

export interface Motif {
  readonly name: string
  readonly terms: 'US' | 'UK'
  readonly made: readonly number[]
  /** The first of each is what the others are tried with. */
  readonly slots: Readonly<Record<string, readonly string[]>>
  readonly write: (worn: Complete) => string
}

/** A count behind a sentence. */
const C = (count: string) => (count === '' ? '.' : `. ${count}`)

export const MOTIFS: readonly Motif[] = [
  {
    name: 'a flower in layers',
    terms: 'US',
    made: [10, 0, 35, 0, 45],
    slots: {
      ring: [
        'Ch 5, join with sl st to form a ring.',
        'Magic ring.',
        'Chain 4, sl st in first chain to make a ring.',
      ],
      one: [
        'Ch 1, 10 sc in ring; join with sl st to first sc',
        '10 sc in ring, sl st in first sc',
        'Work 10 sc into the ring and join',
        'Ch 1, work 10 single crochets into ring, join with a slip stitch in the first sc',
      ],
      oneC: ['(10 sc)', '10 sc.', '[10]', ''],
      two: [
        '*Ch 3, sk next sc, sl st in next sc; rep from * 4 more times',
        '(Ch 3, skip 1 sc, sl st in next sc) 5 times',
        'Sl st in first sc, *ch 3, sk 1, sl st in next; rep from * around, ending last repeat with sl st in first sl st',
        '*Ch 3, skip one stitch, slip stitch in next stitch; repeat from * around',
        '[Ch 3, miss 1 st, sl st in next st] 5 times',
      ],
      twoC: ['(5 ch-3 lps)', '5 ch-3 loops.', '(5 loops)', '5 petals loops made.', '(5 ch-3 sps)', ''],
      three: [
        '*(Sc, hdc, 3 dc, hdc, sc) in next ch-3 lp; rep from * around; join with sl st to first sc',
        '(Sc, hdc, 3 dc, hdc, sc) in each lp around, join',
        'In each ch-3 loop work sc, hdc, 3 dc, hdc, sc; join with sl st in first sc',
        'In each loop around work: 1 sc, 1 hdc, 3 dc, 1 hdc, 1 sc. Join with a sl st',
        'Work [1 sc, 1 hdc, 3 dc, 1 hdc, 1 sc] in each of the 5 loops, sl st to join',
        '*1 sc, 1 hdc, 3 dc, 1 hdc, 1 sc in next loop; repeat from * 4 more times',
        'Into each ch-3 space: sc, hdc, dc, dc, dc, hdc, sc (petal made); join in first sc',
        'Sl st in first lp, (ch 1, sc, hdc, 3 dc, hdc, sc) in same lp, *(sc, hdc, 3 dc, hdc, sc) in next lp; rep from * 3 times more; join',
      ],
      threeC: ['(5 petals)', '5 petals made.', '(35 sts)', '(5 petals of 7 sts)', '[5 petals]', ''],
      four: [
        'Working behind petals, *ch 4, sl st in next sl st of Rnd 2; rep from * around',
        'Working behind petals of Rnd 3, sl st in first skipped sc of Rnd 1, *ch 4, sl st in next skipped sc of Rnd 1; rep from * 3 more times, ch 4, join with sl st to first sl st',
        '*Ch 4, keeping ch behind petals, sl st between next 2 petals; rep from * around',
        'Bring yarn to back. *Ch 4, working behind the petal sl st between 2 petals, rep from * 4 more times',
      ],
      fourC: ['(5 ch-4 lps)', '5 ch-4 loops.', '(5 loops behind petals)', ''],
      five: [
        '(Sc, hdc, 5 dc, hdc, sc) in each ch-4 lp around; join. Fasten off',
        '*In next ch-4 loop work (sc, hdc, 5 dc, hdc, sc); rep from * around; join with sl st in first sc; fasten off',
        'Work 1 sc, 1 hdc, 5 dc, 1 hdc and 1 sc in each loop. Join and fasten off',
        'In each ch-4 lp: (sc, hdc, 5 dc, hdc, sc). Sl st to first sc, cut yarn and weave in ends',
      ],
      fiveC: ['(5 petals)', '(45 sts)', ''],
    },
    write: (w) =>
      `${w.ring}\nRnd 1: ${w.one}${C(w.oneC)}\nRnd 2: ${w.two}${C(w.twoC)}\nRnd 3: ${w.three}${C(w.threeC)}\nRnd 4: ${w.four}${C(w.fourC)}\nRnd 5: ${w.five}${C(w.fiveC)}`,
  },
  {
    name: 'an oval',
    terms: 'US',
    made: [16, 22, 28],
    slots: {
      chain: ['Ch 8.', 'Chain 8.', 'Foundation: Ch 8.', 'Begin with a chain of 8.', 'With A, ch 8.'],
      one: [
        'Sc in 2nd ch from hook, sc in next 5 ch, 3 sc in last ch; working along opposite side of foundation ch, sc in next 5 ch, 2 sc in last ch; join with sl st in first sc',
        'Starting in 2nd ch from hook, sc in each of the next 6 ch, 3 sc in last ch. Working on the other side of the chain, sc in next 5 ch, 2 sc in the last ch, join',

        '1 sc in 2nd ch from hook, 1 sc in each of next 5 ch, 3 sc in last ch. Do not turn; continue along underside of ch: 1 sc in each of next 5 ch, 2 sc in last ch. Join with sl st',

        'Sc in 2nd ch from hook, sc in each ch across to last ch, 3 sc in last ch, on other side of ch: sc in each ch to last ch, 2 sc in last ch. Join with sl st to first sc',
      ],
      oneC: ['(16 sc)', '16 sc.', '(16 sts)', '{16}', ''],
      two: [
        'Ch 1, 2 sc in first sc, sc in next 5 sc, 2 sc in each of next 3 sc, sc in next 5 sc, 2 sc in each of last 2 sc; join',
        'Ch 1, 2 sc in same st, sc in next 5, 2 sc in next 3 sts, sc in next 5, 2 sc in last 2 sts, sl st in first sc',
        'Ch 1, inc in first st, sc in next 5 sts, inc in next 3 sts, sc in next 5 sts, inc in last 2 sts, join',
        'Inc, sc 5, inc x3, sc 5, inc x2, join',
        'Ch 1, 2 sc in first st, 1 sc in each of next 5 sts, 2 sc in each of next 3 sts, 1 sc in each of next 5 sts, 2 sc in each of next 2 sts. Join with sl st in first st',
      ],
      twoC: ['(22 sc)', '22 sc.', '(22)', '[22 sts]', ''],
      three: [
        'Ch 1, sc in first sc, 2 sc in next sc, sc in next 5 sc, (sc in next sc, 2 sc in next sc) 3 times, sc in next 5 sc, (sc in next sc, 2 sc in next sc) twice; join. Fasten off',
        'Sc 1, inc, sc 5, (sc 1, inc) x 3, sc 5, (sc 1, inc) x 2, sl st to join',
        'Ch 1, 1 sc in next st, inc in next st, 1 sc in next 5 sts, [1 sc in next st, inc in next st] 3 times, 1 sc in next 5 sts, [1 sc in next st, inc in next st] 2 times. Sl st to first st',
      ],
      threeC: ['(28 sc)', '28 sc.', '(28)', ''],
    },
    write: (w) =>
      `${w.chain}\nRnd 1: ${w.one}${C(w.oneC)}\nRnd 2: ${w.two}${C(w.twoC)}\nRnd 3: ${w.three}${C(w.threeC)}`,
  },
  {
    name: 'turned rows',
    terms: 'US',
    made: [8, 10, 12, 12],
    slots: {
      chain: ['Ch 10.', 'Chain 10.', 'Foundation chain: Ch 10.', 'Make 10 ch.'],
      label: ['Row #: ', 'Row # (RS): ', 'Row #. ', 'R#: ', 'ROW # – '],
      one: [
        'Dc in 4th ch from hook (3 skipped chs count as first dc), dc in each of next 6 ch',
        'Dc in 4th ch from hook and in each ch across',
        '1 dc into fourth chain from hook, 1 dc into each chain to end',
        'Dc in 4th ch from hook (beg 3 ch count as dc), dc in next 6 ch',
        'Skip first 3 ch (count as dc), dc in each of the next 7 ch',
      ],
      turn: ['; turn', '. Turn.', ', ch 3, turn', ': turn', ' Turn'],
      oneC: ['(8 dc)', '8 dc.', '[8]', '(8 sts)', ''],
      two: [
        'Ch 3 (counts as dc), dc in first dc, dc in each dc across to turning ch, 2 dc in top of turning ch',
        'Ch 3 (counts as dc), dc in first dc, dc in next 6 dc, 2 dc in top of turning ch',
        'Ch 3 (counts as dc), dc in first dc, dc in each dc across, 2 dc in top of turning ch',
        'Ch 3, dc in same st, dc in each st to last st, 2 dc in last st',
        'Ch 3 (counts as first dc here and throughout), dc in base of ch, dc across to turning ch, 2 dc in 3rd ch of turning ch',
        'Ch 3 (= 1 dc), 1 dc in the first st, 1 dc in each of the next 6 sts, 2 dc in the top of the t-ch',
        'Ch 3, dc in first st (inc made), dc in next 6 sts, 2 dc in tch',
      ],
      twoC: ['(10 dc)', '10 dc.', '(10)', ''],
      three: [
        'Rep Row 2',
        'As Row 2',
        'Ch 3, dc in first dc, dc in next 8 dc, 2 dc in top of turning ch',
        'Repeat row 2 once more',
        'Same as Row 2',
        'Work as for Row 2',
      ],
      threeC: ['(12 dc)', '12 dc.', ''],
      four: [
        'Ch 3, sk first dc, dc in each dc across, ending with dc in top of turning ch',
        'Ch 3 (counts as dc), dc in next dc and in each dc across, dc in top of t-ch',
        'Ch 3, dc in each st across',
        'Ch 3 (counts as dc), skip first st, dc in next 10 sts, dc in top of turning chain',
        'Ch 3, miss the st at the base, 1 dc in each st to end, working the last dc in the top of the turning chain',
      ],
      fourC: ['(12 dc)', '12 sts.', ''],
    },
    write: (w) => {
      const n = (k: number) => w.label.replace('#', String(k))
      const ch = w.turn.includes('ch 3')
      const t = (s: string) =>
        ch ? s.replace(/^Ch 3 ?(\([^)]*\))?, /, '').replace(/^./, (c) => c.toUpperCase()) : s
      const four = w.four
      const three =
        w.two.includes('6') && !w.three.startsWith('Ch')
          ? 'Ch 3, dc in first dc, dc in next 8 dc, 2 dc in top of turning ch'
          : w.three
      const { turn } = w
      return `${w.chain}\n${n(1)}${w.one}${turn}${C(w.oneC)
        .replace(/^\.\. /, '. ')
        .replace(
          /^\. /,
          ' ',
        )}\n${n(2)}${t(w.two)}${turn}${C(w.twoC).replace(/^\. /, ' ')}\n${n(3)}${three.startsWith('Ch 3') ? t(three) : three}${three.startsWith('Ch') ? turn : ''}${C(w.threeC)}\n${n(4)}${four.startsWith('Ch 3') ? t(four) : four}. ${w.fourC}`
    },
  },
  {
    name: 'a granny square in UK terms',
    terms: 'UK',
    made: [12, 24, 36],
    slots: {
      ring: [
        '6 ch, join with ss to form a ring.',
        'Make 6 ch and join into a ring with a ss into first ch.',
        'Using A, ch6 and join with a slip stitch to form a ring.',
        'Foundation ring: 4ch, ss in first ch.',
        'Wind yarn round finger to form a ring.',
        'Start with a magic loop.',
      ],
      label: ['Round #: ', 'Rnd #: ', '#st: ', '#st round: ', 'Round # ', 'R#: ', 'Rnd #. '],
      one: [
        '3 ch (counts as 1 tr), 2 tr into ring, 2 ch, *3 tr into ring, 2 ch; rep from * twice more, ss to top of 3 ch',
        '3ch, 2tr in ring, 2ch, (3tr in ring, 2ch) 3 times, ss to top of 3ch',
        'Ch3 (counts as first tr), 2tr, 2ch, [3tr, 2ch] three times into ring, ss into 3rd of 3ch',
        '3 ch, work 2 tr, (2 ch, 3 tr) 3 times into ring, 2 ch, join with ss to 3rd of 3 ch',
        '3ch (= 1tr), 2tr into ring, *2ch, 3tr into ring, rep from * 2 more times, 2ch, ss to top of first 3ch',
        'Into ring work 3 ch, 2 tr, 2 ch, *3 tr, 2 ch, rep from * 2 more times, sl st in top of 3 ch',
      ],
      oneC: ['(12 tr)', '12 tr, 4 2-ch sps.', '[12 tr, 4 2ch-sp]', '(4 groups of 3 tr)', ''],
      two: [
        'Ss into next 2 tr and 2-ch sp, 3 ch, (2 tr, 2 ch, 3 tr) in same sp, *1 ch, (3 tr, 2 ch, 3 tr) in next 2-ch sp; rep from * twice more, 1 ch, ss to top of 3 ch',
        'Ss along to corner sp, 3ch, [2tr, 2ch, 3tr] in same sp, 1ch, *[3tr, 2ch, 3tr] in next 2ch-sp, 1ch; rep from * to end, ss to top of 3ch',
        'Join B in any corner sp with ss. 3ch (counts as 1tr), 2tr, 2ch, 3tr in same sp, *1ch, 3tr, 2ch, 3tr in next sp, rep from * twice more, 1ch, ss in 3rd of 3ch',
        'Rejoin yarn to any 2 ch sp, 3 ch, 2 tr, 2 ch, 3 tr all into same sp, *1 ch, 3 tr, 2 ch, 3 tr all in next 2 ch sp; rep from * 2 times, 1 ch, ss to 3rd ch',
        'In B, attach with ss to any corner; (3 ch, 2 tr, 2 ch, 3 tr) in corner, *1 ch, (3 tr, 2 ch, 3 tr) in next corner; rep from * 2 more times; 1 ch; ss to join',
      ],
      twoC: ['(24 tr)', '24 tr, 4 corner sps, 4 1-ch sps.', '[24 tr, 4 x 2-ch sps, 4 x 1-ch sps]', ''],
      three: [
        'Ss to corner sp, 3 ch, (2 tr, 2 ch, 3 tr) in same sp, *1 ch, 3 tr in next 1-ch sp, 1 ch, (3 tr, 2 ch, 3 tr) in next 2-ch sp; rep from * twice more, 1 ch, 3 tr in next 1-ch sp, 1 ch, ss to top of 3 ch',
        'Ss to corner sp, 3ch, [2tr, 2ch, 3tr] in same sp, 1ch, 3tr in 1ch-sp, 1ch, *[3tr, 2ch, 3tr] in corner sp, 1ch, 3tr in 1ch-sp, 1ch; rep from * to end, ss to top of 3ch',
        'Join C to any 2-ch sp, (3ch, 2tr, 2ch, 3tr) in same sp, *1ch, 3tr in next 1-ch sp, 1ch, ** (3tr, 2ch, 3tr) in next corner sp; rep from * ending last rep at **, ss to 3rd of 3ch',
      ],
      threeC: ['(36 tr)', '36 tr.', ''],
      end: ['', 'Fasten off.', 'Break off yarn.', 'Cut yarn and sew in ends.', 'Finish off.'],
    },
    write: (w) => {
      const n = (k: number) =>
        w.label.replace('#st', k === 1 ? '1st' : k === 2 ? '2nd' : '3rd').replace('#', String(k))
      return `${w.ring}\n${n(1)}${w.one}${C(w.oneC)}\n${n(2)}${w.two}${C(w.twoC)}\n${n(3)}${w.three}${C(w.threeC)} ${w.end}`
    },
  },
  {
    name: 'rounds between stitches',
    terms: 'US',
    made: [12, 24, 36, 48],
    slots: {
      ring: ['Magic ring.', 'Ch 4, join to form ring.'],
      one: ['Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3'],
      two: [
        'Ch 3 (counts as dc), dc in same sp, *2 dc in next sp between dc; rep from * around; join with sl st in top of ch-3',
        'Sl st in sp between first 2 dc, ch 3, dc in same sp, *2 dc in next sp between 2 dc; rep from * around; join',
        'Sl st between ch-3 and first dc, ch 3 (counts as dc), dc in same place, (2 dc between next 2 dc) 11 times, join in top of ch-3',
        'Join B between any 2 dc, ch 3, dc in same sp, 2 dc in each sp between dc around; join',
        'Work in the spaces between the stitches: ch 3, dc in same space, 2 dc in each space around, join with sl st',
        'Join new color in any gap between sts, ch 3 (counts as dc), dc in same gap, 2 dc in each gap around, sl st in top of ch-3',
        'With B, join with sl st between any two dc; ch 3, 1 dc in same sp, *2 dc between next two dc; repeat from * to end of rnd, join',
      ],
      twoC: ['(24 dc)', '(12 groups of 2 dc)', '12 pairs.', ''],
      three: [
        'Sl st in next dc and in sp before next group, ch 3 (counts as dc), 2 dc in same sp, *3 dc in sp between next 2 groups; rep from * around; join',
        'Join C between any two 2-dc groups; ch 3, 2 dc in same sp, 3 dc in each sp between groups around, join',
        'Join C in any sp between pairs, ch 3, 2 dc in same sp, *3 dc in next sp between pairs; rep from * 10 more times, join',
        'Sl st to next sp between 2-dc groups, ch 3, 2 dc in same sp, (3 dc in next sp between groups) 11 times; join in top of beg ch-3',
      ],
      threeC: ['(36 dc)', '(12 groups of 3 dc)', '(12 3-dc groups)', '12 groups.', ''],
      four: [
        'Sl st in next 2 dc and in sp between groups, ch 3, 3 dc in same sp, *4 dc in next sp between 3-dc groups; rep from * around, join',
        'Join D in any sp between 3-dc groups, ch 3 (counts as dc), 3 dc in same sp, 4 dc in each sp around; join',
        'Join D between any 2 groups: ch 3, 3 dc in same place, 4 dc in each gap between groups around; join',
        'Sl st to gap between 3 dc groups, ch 3, 3 dc in same gap, 4 dc in every gap around, join',
      ],
      fourC: ['(48 dc)', '(12 groups of 4)', ''],
    },
    write: (w) =>
      `${w.ring}\nRnd 1: ${w.one}. (12 dc)\nRnd 2: ${w.two}${C(w.twoC)}\nRnd 3: ${w.three}${C(w.threeC)}\nRnd 4: ${w.four}${C(w.fourC)}`,
  },
  {
    name: 'a doily of shells',
    terms: 'US',
    made: [24, 12, 48, 48, 48, 108],
    slots: {
      special: [
        'Shell: (2 dc, ch 1, 2 dc) in same sp.\nBeg shell: Ch 3, (dc, ch 1, 2 dc) in same sp.\n',
        'SPECIAL STITCHES\nShell (sh): 2 dc, ch 1, 2 dc all in the space indicated.\nBeginning shell (beg sh): ch 3, dc, ch 1, 2 dc in same space.\n',
        'Shell = 2 dc, ch 1, 2 dc in same space. Beginning shell = ch 3 (counts as dc), dc, ch 1, 2 dc in same space.\n',
      ],
      one: [
        'Ch 6, join to form ring.\nRnd 1: Ch 3 (counts as dc), 23 dc in ring; join with sl st in top of beg ch-3. (24 dc)',
      ],
      two: [
        'Ch 4 (counts as dc and ch 1), sk next dc, *dc in next dc, ch 1, sk next dc; rep from * around; join with sl st in 3rd ch of beg ch-4',
        'Ch 4 (counts as dc, ch 1), *sk 1 dc, dc in next dc, ch 1; rep from * to last st, sk last st; sl st in 3rd ch of ch-4',
      ],
      twoC: ['(12 dc, 12 ch-1 sps)', '12 dc and 12 spaces.', '(12 ch-1 sps)', '12 ch-1 sps.', ''],
      three: [
        'Sl st in first ch-1 sp, beg shell in same sp, shell in each ch-1 sp around; join with sl st in top of beg ch-3',
        'Sl st to next ch-1 sp, beg shell in same sp, *shell in next ch-1 sp; rep from * around; join',
        'Sl st in ch-1 sp, work beg shell, work shell in every ch-1 sp around, join',
        'Sl st into first space, beg shell in same space, (shell in next space) 11 times, join with sl st',
        'Join in any ch-1 sp, beg shell in that sp, shell in each sp around, join',
      ],
      threeC: ['(12 shells)', '12 shells.', '(48 dc, 12 ch-1 sps)', '12 shells made.', ''],
      four: [
        'Sl st in next dc and in ch-1 sp, beg shell in same sp, *shell in ch-1 sp of next shell; rep from * around; join',
        'Sl st to ch-1 sp of first shell, beg shell in same sp, shell in ch-1 sp of each shell around; join',
        'Sl st to center of shell, beg shell in same sp, *shell in next shell; rep from * around; join',
        'Sl st in next dc and into ch-1 sp, beg shell, shell in each shell around, join',
        'Sl st across to ch-1 sp, beg shell in same sp, *shell in shell; repeat from * around, join',
      ],
      fourC: ['(12 shells)', ''],
      five: [
        'Sl st in next dc and in ch-1 sp, beg shell in same sp, ch 2, *shell in ch-1 sp of next shell, ch 2; rep from * around; join',
        'Sl st to ch-1 sp, beg shell in same sp, *ch 2, shell in next shell; rep from * around, ch 2; join',
        'Sl st to ch-1 sp of shell, beg shell in same sp, ch 2, (shell in ch-1 sp of next shell, ch 2) around, join',
        'Sl st to center of next shell, beg shell in shell, ch 2, *shell in shell, ch 2; rep from * 10 times more, join',
      ],
      fiveC: ['(12 shells, 12 ch-2 sps)', '12 shells and 12 ch-2 spaces.', ''],
      six: [
        'Sl st in next dc and in ch-1 sp, ch 3, 7 dc in same sp, *sc in next ch-2 sp, 8 dc in ch-1 sp of next shell; rep from * around, ending sc in last ch-2 sp; join',
        'Sl st to ch-1 sp, ch 3 (counts as dc), 7 dc in same sp, sc in next ch-2 sp, *8 dc in next shell, sc in next ch-2 sp; rep from * around; join',
        'Sl st to ch-1 sp of shell, ch 3, 7 dc in same sp, sc in ch-2 sp, *8 dc in ch-1 sp of next shell, sc in next ch-2 sp, rep from * 10 more times, join',
        'Sl st to center of shell, (ch 3, 7 dc) in same sp, sc in ch-2 sp, *8 dc in center of next shell, sc in next sp; rep from * around, join. Fasten off',
      ],
      sixC: ['(96 dc, 12 sc)', '12 scallops.', '(108 sts)', ''],
    },
    write: (w) =>
      `${w.special}\n${w.one}\nRnd 2: ${w.two}${C(w.twoC)}\nRnd 3: ${w.three}${C(w.threeC)}\nRnd 4: ${w.four}${C(w.fourC)}\nRnd 5: ${w.five}${C(w.fiveC)}\nRnd 6: ${w.six}${C(w.sixC)}`,
  },
  {
    name: 'popcorns',
    terms: 'US',
    made: [8, 16, 24, 40],
    slots: {
      def: [
        'Popcorn (pc): 4 dc in same st, drop loop, insert hook in first dc, pull loop through.\n',
        'Special stitches:\nPopcorn (PC) – Work 4 dc in st indicated, remove hook from lp, insert in first dc of group, pick up dropped lp and draw through, ch 1 to close.\n',
        'PC (popcorn): work 4 dc into next st, take out hook, insert in top of first of these dc, catch the dropped loop and draw it through.\n',
      ],
      one: ['Magic ring.\nRnd 1: Ch 1, 8 sc in ring; join with sl st in first sc. (8 sc)'],
      two: [
        'Ch 1, *pc in next sc, sc in same sc; rep from * around; join',
        'Ch 1, (pc, sc) in each sc around; join with sl st in first pc',
        '*Pc in next st, sc in same st; rep from * 7 more times; join',
        'Ch 1, (pc in next sc, sc in same sc) 8 times, join in top of first pc',
        'Ch 1, in each sc work pc and sc; join',
      ],
      twoC: ['(8 pc, 8 sc)', '8 popcorns, 8 sc.', '(16 sts)', '8 pc and 8 sc.', ''],
      three: [
        'Ch 1, *sc in pc, 2 sc in next sc; rep from * around; join',
        'Ch 1, *sc in top of next pc, 2 sc in next sc; rep from * 7 more times; join',
        'Ch 1, sc in each pc and 2 sc in each sc around; join',
        'Ch 1, 1 sc in each pc, 2 sc in each sc; join',
      ],
      threeC: ['(24 sc)', '24 sc.', ''],
      four: [
        'Ch 1, *sc in next 2 sc, (sc, ch 1, 2 sc) in next sc; rep from * around; join',
        'Ch 1, *sc in each of next 2 sts, 3 sc in next st; rep from * 7 more times; join',
      ],
      fourC: ['(40 sc)', ''],
    },
    write: (w) =>
      `${w.def}\n${w.one}\nRnd 2: ${w.two}${C(w.twoC)}\nRnd 3: ${w.three}${C(w.threeC)}\nRnd 4: ${w.four}${C(w.fourC)}`,
  },
  {
    name: 'post stitches',
    terms: 'US',
    made: [12, 24, 36, 48],
    slots: {
      one: ['Magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join in top of ch-3. (12 dc)'],
      two: [
        'Ch 2 (does not count), *FPdc around next dc, dc in same dc; rep from * around; join',
        'Ch 2 (not counted as a st), (FPdc around next st, dc in same st) around; join with sl st in first FPdc',
        'Ch 2 (does not count as st), *FPdc around the post of next dc, dc in top of same dc; rep from * 11 more times; join',
        'Ch 2 (does not count as a st), *front post dc around next st, dc in the same st; repeat from * around, join',
        'Ch 2 – does not count – *fpdc around dc, dc in top of that same dc, rep from * around, sl st to first fpdc',
      ],
      twoC: ['(12 FPdc, 12 dc)', '24 sts.', '(12 fpdc, 12 dc)', '12 FPdc, 12 dc.', ''],
      three: [
        'Ch 2 (does not count), *FPdc around next FPdc, 2 dc in next dc; rep from * around; join',
        'Ch 2 (does not count as st), *FPdc around FPdc, 2 dc in dc; rep from * around; join',
        'Ch 2 (does not count), (FPdc around next post st, 2 dc in next st) 12 times; join',
        'Ch 2 (does not count), *fpdc around next fpdc, 2 dc in next st; rep from * to end; join',
      ],
      threeC: ['(12 FPdc, 24 dc)', '36 sts.', ''],
      four: [
        'Ch 2 (does not count), *FPdc around next FPdc, dc in next dc, 2 dc in next dc; rep from * around; join',
        'Ch 2 (does not count), *FPdc around next FPdc, dc in next st, 2 dc in next st; rep from * around; join. Fasten off',
        'Ch 2 (does not count), (FPdc, dc, 2 dc in next st) 12 times; join',
      ],
      fourC: ['(12 FPdc, 36 dc)', '48 sts.', ''],
    },
    write: (w) =>
      `${w.one}\nRnd 2: ${w.two}${C(w.twoC)}\nRnd 3: ${w.three}${C(w.threeC)}\nRnd 4: ${w.four}${C(w.fourC)}`,
  },
]
