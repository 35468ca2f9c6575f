/** Questions of how to do something, with short answers. */
import type { Terms } from '../../shared-types/project'
import { saying } from '../../src-core/stitches/spelling'
import { termWord } from '../../src-core/stitches/terms'

export interface HowTo {
  readonly ask: string
  readonly answer: string
}

/** All of them, in the terms of who reads. */
export function howTos(terms: Terms): readonly HowTo[] {
  const say = saying(terms)
  return [
    {
      ask: 'Start from a finished motif',
      answer:
        'New, then “your own motif”: count its petals, measure it tip to tip and dip to dip. Everything else can come later.',
    },
    {
      ask: 'Measure an odd number of petals',
      answer: say`A dip lies opposite every tip. Measure from a tip over the centre to the opposite dip, and from the centre to a dip.`,
    },
    {
      ask: 'Measure again',
      answer:
        'Enter the new numbers under Motif: size, yarn and fits follow, and Progress says what changed. Undo takes them back.',
    },
    {
      ask: 'Block a motif',
      answer:
        'Under Motif tick “Measured after blocking” if it was. “Wider by” and “Longer by” under Arrangement say how much the whole blanket grows when it is blocked.',
    },
    {
      ask: 'My flower became a hexagon',
      answer:
        'A round over petals keeps them or pulls them straight. Make one and look at it; then say what it is under Motif, Kind, Shape.',
    },
    {
      ask: 'I changed the hook',
      answer: say`Enter it under Motif, and count the ${termWord('gauge', terms)} again with it: a swatch of the old hook says nothing of the new one.`,
    },
    {
      ask: 'Get a size',
      answer:
        'Type the width or height on the drawing’s dimension lines, drag its frame, or enter a target size under Arrangement and choose from what fits.',
    },
    {
      ask: say`How much yarn, and how many ${termWord('balls', terms)}`,
      answer: say`Yarn says how much of each you need, what is on hand and what to buy. Enter the grams and metres of each band there. Weigh ten finished motifs together and enter that under Motif: the ranges, which say how sure the numbers are, become narrower.`,
    },
    {
      ask: 'Join, rotate',
      answer:
        'Under Joins choose how motifs are joined. Under Arrangement “Best rotation” rotates them so that the blanket holds together with as many join points as it can have.',
    },
    { ask: say`What a colourway is`, answer: 'A combination of yarns for one motif, known by its letter.' },
    {
      ask: say`Place colours`,
      answer: say`Under Colours choose a pattern, or the tool Paint; on the map the letters of the colourways paint what is selected.`,
    },
    {
      ask: say`Only 3 ${termWord('balls', terms)} of one colour`,
      answer: say`Under Yarn enter what is on hand. Under Colours tick “Stay within the yarn on hand”: the colours are placed so that it lasts.`,
    },
    {
      ask: 'Make a garland, an appliqué',
      answer:
        'Choose what the motifs become under Arrangement. On a cord they hang in a sequence that repeats; on a panel each lies where you put it.',
    },
    {
      ask: 'Make a shawl',
      answer:
        'Under Arrangement open “Shawl, bag, second motif” and cut it out as a triangle; its width, height and where it points are entered below.',
    },
    {
      ask: 'Make a bag or a cowl',
      answer:
        'At the start choose “bag, cowl, cushion”, and which of its ends are closed. Or, in the same place as a shawl, tick “Joined in the round”: the last motif of each row is joined to the first. Choose below it which of its ends are closed: of a bag the bottom, of a cushion both. It says how, and counts the seams.',
    },
    {
      ask: 'Add a border',
      answer:
        'At the border or edging of Arrangement choose a picture, or write its rounds; stitches, corners and yarn are counted.',
    },
    {
      ask: 'Mark what is made',
      answer:
        'Choose Mark made over the map and click motifs, or select one and press 1. Progress says what is left, and how far yarn goes that is weighed again.',
    },
    {
      ask: 'Mark at the hook, on a phone',
      answer:
        'Paper exports a page for a phone, on which motifs are ticked; copy its marks there and paste them at Progress.',
    },
    {
      ask: 'Sell kits',
      answer:
        'Under Kit say how many: what goes into each, what to buy and what to ask for one follow. Paper has the card, the packing list and the labels.',
    },
    {
      ask: 'Change a word of the sentence',
      answer:
        'Click it. With the keyboard, arrow keys change it at once and the ledger shows what would follow.',
    },
    {
      ask: 'Work away from the screen',
      answer: 'Paper shows the pages, prints them, and writes them as a PDF: print at 100 %.',
    },
  ]
}

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)

/** Words of a question that say nothing of what is sought. */
const ASKING = new Set(
  'how to do does i we you my me the a an is are what which when where why can if it of for in on with much'.split(
    ' ',
  ),
)

/**
 * Those that have every word of what is sought, or begin a word with it; all of them while nothing is. Words of the
 * other terms find them too: who reads "tension" may have learned from a book that says "gauge".
 */
export function howTosFor(terms: Terms, sought: string): readonly HowTo[] {
  const all = wordsOf(sought)
  const telling = all.filter((word) => !ASKING.has(word))
  const asked = telling.length > 0 ? telling : all
  const [uk, us] = [howTos('UK'), howTos('US')]
  return howTos(terms).filter((_, at) => {
    const words = [uk[at], us[at]].flatMap((each) => (each ? wordsOf(`${each.ask} ${each.answer}`) : []))
    return asked.every((each) => words.some((word) => word.startsWith(each)))
  })
}
