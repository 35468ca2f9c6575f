import type { CatalogueEntry } from './catalogue'

/** Written rounds: what a tech editor would mark before a pattern is printed. */
export const NOTATION_FINDINGS = {
  'rounds/repeat-does-not-fit': {
    severity: 'error',
    message: 'one repeat takes {unit}; {available} = {times} and {over} over.',
    mend: 'Change the repeat, or say what happens with what is over.',
  },
  'rounds/too-many-used': {
    severity: 'error',
    message: '{uses}; there are {available}.',
    mend: 'Work fewer, or check what the round before leaves.',
  },
  'rounds/stitches-left': {
    severity: 'error',
    message: '{used} are used, the round before has {available}: {left} left over.',
    mend: 'Use all of them, or write that the rest are left unworked.',
  },
  'rounds/spaces-left': {
    severity: 'error',
    message: '{used} are worked, the round before has {available}.',
    mend: 'Work into all of them, or write which are left out.',
  },
  'rounds/stitches-passed': {
    severity: 'warning',
    message: 'passed over without "sk": {passed}.',
    mend: 'Write "sk" for stitches that are passed over, so that a count can be checked.',
  },
  'rounds/repeat-off-by-one': {
    severity: 'error',
    message:
      "'rep from * {amount} times' is {times} in all ({uses}); {available} suit 'rep from * {fewer} more times'.",
    mend: 'Count the first time too: n more times after it are n + 1 in all.',
  },
  'rounds/last-repeat-does-not-fit': {
    severity: 'error',
    message:
      'one repeat takes {unit}, the last one as the text ends it {last}; {available} do not come out even.',
    mend: 'Check how the last repeat ends, and what it leaves for the joining.',
  },
  'rounds/last-repeat-not-said': {
    severity: 'warning',
    message: 'the last repeat would end in the first stitch of this round again, where it is joined.',
    mend: 'Write how the last repeat ends: "ending last rep with sl st in first sc".',
  },
  'rounds/group-without-brackets': {
    severity: 'note',
    message: 'this is read as one group: all of it goes into the space that is named last.',
    mend: 'Brackets make it certain: "(sc, hdc, 3 dc, hdc, sc) in next ch-4 sp".',
  },
  'rounds/repeat-stands-still': {
    severity: 'error',
    message: 'this repeat uses nothing of the round before, so going around with it never ends.',
    mend: 'Say how many times it is worked.',
  },
  'rounds/repeat-without-star': {
    severity: 'error',
    message: "nothing is marked with '{mark}' before 'rep from {mark}'.",
    mend: 'Set the asterisk where the repeat begins.',
  },
  'rounds/star-not-repeated': {
    severity: 'warning',
    message: "'*' is set but no 'rep from *' follows.",
    mend: 'Write how often the part after the asterisk is worked, or take the asterisk out.',
  },
  'rounds/unused-double-asterisk': {
    severity: 'warning',
    message: "** is set but no 'ending last rep at **' follows.",
    mend: 'Write where the last repeat ends, or take the ** out.',
  },
  'rounds/double-asterisk-missing': {
    severity: 'error',
    message: 'the last repeat is to end at **, but ** is not set.',
    mend: 'Set ** where the last repeat ends.',
  },
  'rounds/no-such-space': {
    severity: 'error',
    message: 'there are {have}, no {wanted}, in {round}.',
    mend: 'Name the spaces that are there.',
  },
  'rounds/no-such-stitch': {
    severity: 'warning',
    message: 'there are {have}, no {wanted}, in {round}.',
    mend: 'Name the stitches that are there, or write "st".',
  },
  'rounds/group-too-small': {
    severity: 'error',
    message: 'number {nth} of a group is asked for; the groups there have {most} of these at most.',
    mend: 'Check which one is meant, and how many are worked into one place.',
  },
  'rounds/no-such-round': {
    severity: 'error',
    message: 'Rnd {number} is not known here.',
    mend: 'Name a round that comes before this one.',
  },
  'rounds/number-missing': {
    severity: 'warning',
    message: 'the round before is {before}; {missing} {count|is|are} missing.',
    mend: 'Add what is missing, or number the rounds without a gap.',
  },
  'rounds/number-twice': {
    severity: 'warning',
    message: '{round} is there already.',
    mend: 'Number the rounds in turn.',
  },
  'rounds/join-not-in-top': {
    severity: 'error',
    message: 'the ch {chains} counts as one stitch, so its top is ch {top}, not ch {chain}.',
    mend: 'Join in the top of the chain, or say what its last chains stand for.',
  },
  'rounds/join-beyond-chain': {
    severity: 'error',
    message: 'a ch-{chains} has no ch {chain} to join to.',
    mend: 'Join in the top of the chain that the round begins with.',
  },
  'rounds/join-no-such-chain': {
    severity: 'error',
    message: 'the round begins with {begins}, so there is no ch-{chains} to join to.',
    mend: 'Join in the first stitch of the round, or begin it with that chain.',
  },
  'rounds/loop-short': {
    severity: 'warning',
    message: 'a loop of {chains} ch spans {spans} {spans|st|sts}, so it pulls {spans|it|them} together.',
    mend: 'Chain more, or skip fewer.',
  },
  'rounds/empty-round': {
    severity: 'error',
    message: 'nothing is worked in this round.',
    mend: 'Write what is worked in it, or take the heading out.',
  },
  'rounds/earlier-missing': {
    severity: 'note',
    message: 'the rounds before {round} are not in the text, so what it is worked into is not known.',
    mend: 'Add the rounds before, or say what the last of them left.',
  },
  'rounds/no-ring': {
    severity: 'warning',
    message: 'the text does not say what the ring is made of.',
    mend: 'Begin with "ch 6, join with sl st to form ring", or with an adjustable ring.',
  },
  'rounds/no-chain': {
    severity: 'error',
    message: 'there is no chain to work along here; {wanted} is asked for, {available}.',
    mend: 'Chain first, and name no more chains than there are.',
  },
  'rounds/nothing-to-work-in': {
    severity: 'error',
    message: 'there is no round to work in: nothing stands before this one.',
    mend: 'Begin with a ring or a chain, or say what the round before left.',
  },
  'rounds/no-last-stitch': {
    severity: 'error',
    message: "'same' has nothing that it could mean here.",
    mend: 'Name the stitch or the space.',
  },
  'rounds/loop-already-used': {
    severity: 'error',
    message:
      'Rnd {by} was worked in {used} of Rnd {round}; no {loops} are free (should Rnd {by} say {advice}?).',
    mend: 'Work the round between in the other loop only, or work this one somewhere else.',
  },
  'rounds/wrong-end-count': {
    severity: 'error',
    message: 'the text says {said}, the round makes {made}.',
    mend: 'Correct the count at the end, or the round.',
  },
  'rounds/together-over': {
    severity: 'warning',
    message: '{legs} stitches are drawn together over {under}.',
    mend: 'Correct one of the two numbers, or say which stitch is worked twice or skipped.',
  },
  'rounds/ch2-not-stated': {
    severity: 'warning',
    message:
      "say whether the ch {chains} counts as a {stitch}: if it does, the first {stitch} goes in the next st and 'each st around' makes {one} or {other}.",
    mend: 'Write "(counts as a {stitch})" or "(does not count as a st)" after the chains.',
  },
  'rounds/first-group-short': {
    severity: 'warning',
    message: 'the ch {chains} does not count, so the first group is of {first}, the others of {others}.',
    mend: 'Write "(counts as a st)" after the chains, or work one stitch more there.',
  },
  'rounds/chain-forgotten': {
    severity: 'warning',
    message: 'the same stitch twice with nothing between: a chain seems to be missing.',
    mend: 'Write the chain between them, or one number for both.',
  },
  'rounds/yarn-not-joined': {
    severity: 'warning',
    message: 'the yarn was fastened off in the round before and is not joined again.',
    mend: 'Write where the yarn is joined, or leave out "fasten off".',
  },
  'rounds/chain-not-repeated': {
    severity: 'warning',
    message: 'the ch {chains} before it stands nowhere in what is repeated.',
    mend: 'Write the chain into the repeat as well, if it belongs there.',
  },
  'rounds/space-run-over': {
    severity: 'warning',
    message:
      'leads past a {space}, and the next words go into one; only {before} {before|st is|sts are} before it.',
    mend: 'Check how many stitches are worked before the space.',
  },
  'rounds/ring-crowded': {
    severity: 'warning',
    message:
      '{count} {stitch} on {chains} {chains|ch|chs} is {each} to a ch; about {usual} is the most seen in print.',
    mend: 'Chain more for the ring, work fewer into it, or use an adjustable ring.',
  },
  'rounds/no-such-colour': {
    severity: 'error',
    message: 'colour {colour} is not in the materials ({known}).',
    mend: 'Name a colour of the list, or add this one to it.',
  },
  'rounds/unknown-abbreviation': {
    severity: 'error',
    message: "'{word}' is not a known stitch and is not defined under Special stitches.",
    mend: 'Correct the abbreviation, or explain it under Special stitches.',
  },
  'rounds/special-not-explained': {
    severity: 'note',
    message: "'{word}' differs from designer to designer and is not explained; it is taken as {taken}.",
    mend: 'Explain it under Special stitches.',
  },
  'rounds/bracket-open': {
    severity: 'error',
    message: "the bracket {bracket} opened before '{word}' is never closed.",
    mend: 'Close the bracket where the group ends.',
  },
  'rounds/bracket-close': {
    severity: 'error',
    message: '{bracket} closes nothing that was opened with its other half.',
    mend: 'Take it out, or open the bracket where the group begins.',
  },
  'rounds/nested-too-deep': {
    severity: 'error',
    message: 'brackets stand more than {depth} deep in each other.',
    mend: 'Write the round in simpler steps.',
  },
  'rounds/wrong-terms': {
    severity: 'error',
    message: "text is marked {terms} but uses '{word}'.",
    mend: 'Write the round in one set of terms, or choose the other terms: a text with words that only those have stays as it is.',
  },
  'rounds/mixed-terms': {
    severity: 'warning',
    message: "the text mixes US and UK terms: '{us}' is US, '{uk}' is UK.",
    mend: 'Write the rounds in one set of terms.',
  },
  'rounds/terms-unclear': {
    severity: 'warning',
    message:
      "nothing in the text shows whether it is in US or UK terms (there is neither 'sc' nor 'htr'); it is read as {terms}.",
    mend: 'Choose the terms that the text is written in.',
  },
  'rounds/too-long': {
    severity: 'error',
    message: '{received} is more than the {most} that can be read here.',
    mend: 'Correct the number, or split the text.',
  },
  'rounds/none-of-it': {
    severity: 'error',
    message: "'{words}' is none at all.",
    mend: 'Write how many there are, or take it out.',
  },
  'rounds/ends-early': {
    severity: 'warning',
    message: 'chain {count} at the end leads nowhere.',
    mend: 'Join it, or work along it.',
  },
  'rounds/not-countable': {
    severity: 'warning',
    message: '{what} cannot be counted from these words.',
    mend: 'Write how many stitches it takes and makes.',
  },
  'rounds/not-read': {
    severity: 'warning',
    message:
      'these words cannot be read, so the round is not counted; what follows goes on from its stated count.',
    mend: 'Write the round stitch by stitch, or state its count at the end: "(24 dc)".',
  },
  'rounds/taken-as-stated': {
    severity: 'note',
    message: 'these words cannot be read; the round is taken as the text counts it, with {count} in all.',
    mend: 'Check the count, or write the round stitch by stitch; its stitches are missing in the chart.',
  },
  'rounds/part-in-prose': {
    severity: 'note',
    message: "this part is only text and is not counted: '{words}'.",
    mend: 'Write its rounds with their numbers, if they are to be counted.',
  },
  'rounds/words-passed': {
    severity: 'note',
    message: "'{words}' is not an instruction that can be counted; the round is counted without it.",
    mend: 'Nothing, if it only says how to work. Else write it stitch by stitch.',
  },
  'rounds/chains-left': {
    severity: 'error',
    message: '{left} ch of the chain {left|is|are} passed over without "sk".',
    mend: 'Check the chain at the beginning, or what is worked along it.',
  },
  'rounds/chain-worked-twice': {
    severity: 'error',
    message: 'the last ch is worked already; the chain has no more.',
    mend: 'Check the chain at the beginning, or what is worked along it.',
  },
  'rounds/chain-begun-late': {
    severity: 'warning',
    message: 'one chain nearer to the hook is usual for a {stitch}, and would come out even.',
    mend: 'Check the chain that the row begins in, or how long the chain is.',
  },
  'rounds/chain-too-short': {
    severity: 'error',
    message: 'ch {chains} is too short for a {stitch}, which takes ch {usual}.',
    mend: 'Chain more, or correct what the chain counts as.',
  },
  'rounds/count-open': {
    severity: 'note',
    message: 'not counted, since {round} could not be counted.',
    mend: 'Fix the round before first.',
  },
  'rounds/nothing': {
    severity: 'error',
    message: 'there is no round in this text.',
    mend: 'Paste the rounds as they are written: "Rnd 1: Ch 1, 6 sc in ring; join."',
  },
} as const satisfies Record<string, CatalogueEntry>
