/** Headings of a printed page that hold no rounds, by what stands under them. One line adds one. */
import { wordOf } from './words'

export type SectionKind =
  | 'title'
  | 'designer'
  | 'skill'
  | 'size'
  | 'materials'
  | 'yarn'
  | 'colours'
  | 'hook'
  | 'gauge'
  | 'notes'
  | 'finishing'
  /** Read with the rounds. */
  | 'explained'
  /** Printed from the rounds themselves. */
  | 'abbreviations'
  /** "Instructions:": nothing of its own. */
  | 'opening'

const LABELS: Readonly<Record<SectionKind, readonly string[]>> = {
  title: ['title'],
  designer: ['designer', 'design', 'designed by', 'design by', 'pattern by'],
  skill: ['skill level', 'skill', 'difficulty', 'experience level'],
  size: [
    'finished size',
    'finished measurements',
    'finished measurement',
    'finished dimensions',
    'size',
    'measurements',
    'dimensions',
  ],
  materials: [
    'materials',
    'you will need',
    'notions',
    'supplies',
    'what you need',
    "what you'll need",
    "you'll need",
    'you need',
  ],
  yarn: ['yarn', 'yarns', 'thread', 'yarn weight'],
  colours: ['colours', 'colors', 'yarn colours', 'yarn colors'],
  hook: ['hook', 'crochet hook', 'hook size', 'hooks'],
  gauge: ['gauge', 'tension'],
  notes: [
    'before you start',
    'before you begin',
    'good to know',
    'notes',
    'note',
    'pattern notes',
    'pattern note',
    'tips',
    'tip',
  ],
  finishing: ['finishing', 'to make up', 'making up', 'assembly', 'to complete'],
  explained: [
    'special stitches',
    'special stitch',
    'special stitches used',
    'special terms',
    'special abbreviations',
    'stitch guide',
  ],
  abbreviations: [
    'abbreviations',
    'abbreviation',
    'abbrev',
    'abbrevs',
    'abbreviations used',
    'stitches used',
    'terms',
    'terms used',
    'terms key',
    'stitch key',
    'stitches',
    'key',
    'abbreviations key',
    'abbreviations in this pattern',
  ],
  opening: ['pattern', 'instructions', 'directions', 'method', 'to make', 'to work'],
}

/** What a heading stands over, by its words in lower case. */
export const SECTIONS: ReadonlyMap<string, SectionKind> = new Map(
  Object.entries(LABELS).flatMap(([kind, labels]) =>
    labels.map((label) => [label, kind as SectionKind] as const),
  ),
)

/** "UK abbreviations": whose terms they are in adds nothing. */
const TERMS = /^(uk|us) (?=.)/

const plain = (words: readonly string[]): string =>
  words
    .map((word) => wordOf(word).is)
    .join(' ')
    .replace(TERMS, '')

const BY_WORDS = new Map([...SECTIONS].map(([label, kind]) => [plain(label.split(' ')), kind]))

/** The same in any spelling: "special st" and "special stitches"; null where no section is named. */
export const sectionOf = (words: readonly string[]): SectionKind | null =>
  BY_WORDS.get(plain(words)) ?? (words[0] === 'to' && MAKES_UP.test(words[1] ?? '') ? 'finishing' : null)

/** "To make up", "To string up", "To hang": what becomes of the motifs. */
const MAKES_UP =
  /^(string|assemble|hang|attach|sew|block|stuff|line|mount|fold|felt|press|arrange|display|wear|stiffen|starch)$/
