/** Headings of a printed page that hold no rounds, by what stands under them. One line adds one. */
import { SIZED } from './sized'
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
  designer: [
    'designer',
    'design',
    'designed by',
    'design by',
    'pattern by',
    'author',
    'written by',
    'created by',
    'designer name',
  ],
  skill: [
    'skill level',
    'skill',
    'difficulty',
    'experience level',
    'level',
    'level of difficulty',
    'difficulty level',
    'project level',
    'experience',
  ],
  size: [
    'finished size',
    'finished measurements',
    'finished measurement',
    'finished dimensions',
    'size',
    'measurements',
    'measurement',
    'approximate measurements',
    'approximate measurement',
    'measures',
    'dimensions',
    'finished size approx',
    'approximate size',
    'approx size',
    'final size',
    'motif size',
    'size of motif',
    'finished diameter',
    'finished width',
    'finished length',
    'finished height',
    'width',
    'diameter',
    'motif measures',
    'finished motif',
    'completed size',
    ...SIZED,
  ],
  materials: [
    'materials',
    ...['in your', 'in this', 'in the', 'the', 'this', 'your'].map((which) => `${which} kit`),
    'kit contents',
    'kit',
    'contents',
    'kit includes',
    'your kit contains',
    'the kit contains',
    'this kit contains',
    'needed',
    'things you need',
    'what to get',
    'shopping list',
    'you will need',
    'notions',
    'supplies',
    'what you need',
    "what you'll need",
    "you'll need",
    'you need',
    'material',
    'materials needed',
    'materials used',
    'tools',
    'tools and materials',
    'materials and tools',
    'equipment',
    'requirements',
    'items needed',
    'supplies needed',
    'other supplies',
    'other materials',
    'also needed',
    'you will also need',
    'extras',
    'accessories',
  ],
  yarn: [
    'yarn',
    'yarns',
    'thread',
    'yarn weight',
    'wool',
    'yarn used',
    'sample yarn',
    'yarn shown',
    'suggested yarn',
    'yarn requirements',
    'yarn amount',
    'yarn amounts',
    'yardage',
    'fibre',
    'fiber',
  ],
  colours: [
    'colours',
    'colors',
    'yarn colours',
    'yarn colors',
    'shades',
    'colour key',
    'color key',
    'colours used',
    'colors used',
    'palette',
    'colour',
    'color',
  ],
  hook: [
    'hook',
    'crochet hook',
    'hook size',
    'hooks',
    'hook used',
    'suggested hook',
    'recommended hook',
    'hook required',
  ],
  gauge: [
    'gauge',
    'tension',
    'stitch gauge',
    'gauge swatch',
    'checking gauge',
    'check your gauge',
    'tension check',
    'check your tension',
  ],
  notes: [
    'before you start',
    'before you begin',
    ...['all', 'every', 'each'].flatMap((all) => ['rnd', 'round', 'row'].map((round) => `${all} ${round}`)),
    'good to know',
    'notes',
    'note',
    'pattern notes',
    'pattern note',
    'tips',
    'tip',
    'general notes',
    'please note',
    'nb',
    'hint',
    'hints',
    'remember',
    'reminder',
    'special notes',
    'general instructions',
    'general information',
    'pattern information',
    'about this pattern',
    'about the pattern',
    'about',
    'introduction',
    'intro',
    'copyright',
    'legal',
    'licence',
    'license',
    'care',
    'washing',
    'errata',
    'variation',
    'variations',
    'skills',
    'skills used',
    'skills needed',
    'techniques',
    'techniques used',
    'technique',
    'version',
    'time',
    'time needed',
    'tester notes',
    'notes for testers',
    'inspiration',
    'how to use this pattern',
    'how to read this pattern',
  ],
  finishing: [
    'finishing',
    'to make up',
    'to finish',
    'to finish off',
    'making up',
    'assembly',
    'to complete',
    'finishing touches',
    'final steps',
    'blocking',
    'sewing up',
    'to assemble',
    'assembling',
    'aftercare',
    'finish',
    'finish off',
    'finishing off',
    'fastening off',
    'casting off',
    'ending off',
    'the end',
  ],
  explained: [
    'special stitches',
    'special stitch',
    'special stitches used',
    'special terms',
    'special abbreviations',
    'stitch guide',
    'stitch explanations',
    'stitches explained',
    'stitch definitions',
    'stitch glossary',
    'special techniques',
    'stitch notes',
    'stitch instructions',
    'special stitch instructions',
    'special stitches and techniques',
    ...['you may not know', 'you might not know', 'you may need', 'that may be new', 'explained here'].map(
      (how) => `stitches ${how}`,
    ),
    ...['less common', 'unusual', 'new', 'unfamiliar', 'particular', 'feature', 'fancy'].map(
      (which) => `${which} stitches`,
    ),
  ],
  abbreviations: [
    'abbreviations',
    'abbreviation',
    'abbrev',
    'abbrevs',
    'abbreviations used',
    'stitches used',
    'basic stitches used',
    'basic stitches',
    'standard abbreviations',
    'common abbreviations',
    'basic abbreviations',
    'terms',
    'terms used',
    'terms key',
    'stitch key',
    'stitches',
    'key',
    'abbreviations key',
    'abbreviations in this pattern',
    'abbreviation list',
    'list of abbreviations',
    'abbreviations and terms',
    'abbreviations and stitches',
    'stitches and abbreviations',
    'stitch abbreviations',
    'glossary',
    'stitch list',
    'legend',
    'abbreviations and symbols',
    ...[
      'you will need to know',
      "you'll need to know",
      'you need to know',
      'you should know',
      'you must know',
    ],
    ...['stitches', 'sts', 'abbreviations'].flatMap((what) =>
      ['to know', 'you will need', "you'll need", 'you need', 'needed', 'required', 'you should know'].map(
        (how) => `${what} ${how}`,
      ),
    ),
  ],
  opening: [
    'pattern',
    'instructions',
    'directions',
    'method',
    'to make',
    'to work',
    'work',
    'the work',
    'to begin',
    'begin here',
    'start here',
    'the pattern',
    'pattern instructions',
    'written instructions',
    'written pattern',
    'crochet pattern',
    'crochet instructions',
    'how to',
    'how to make it',
    'how to make',
    'how it is made',
    'procedure',
    "let's begin",
    "let's start",
    "let's crochet",
  ],
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
    .replace(/ as (uk|us)( terms)?$/, '')

const BY_WORDS = new Map([...SECTIONS].map(([label, kind]) => [plain(label.split(' ')), kind]))

/** Words before which a yarn is taken up: "With main yarn: …" is worked. */
const TAKES = new Set(['with', 'using', 'in', 'join', 'change', 'attach'])

/** "Fingering weight yarn", "steel hook": what is needed, with words of its own before it. */
function neededKind(words: readonly string[]): SectionKind | null {
  if (words.length < 2 || TAKES.has(words[0]!)) return null
  const kind = BY_WORDS.get(plain(words.slice(-1))) ?? null
  return kind === 'yarn' || kind === 'hook' ? kind : null
}

/** The same in any spelling: "special st" and "special stitches"; null where no section is named. */
export const sectionOf = (words: readonly string[]): SectionKind | null =>
  BY_WORDS.get(plain(words)) ??
  ofSomething(words) ??
  (isRemark(words) ? 'notes' : null) ??
  (words[0] === 'to' && MAKES_UP.test(words[1] ?? '') ? 'finishing' : neededKind(words))

/** "A note on the join", "Quick tip for beginners": said of the rounds, and none of them. */
function isRemark(words: readonly string[]): boolean {
  const label = words.join(' ')
  if (words.length < 2 || /\b(rnds?|rounds?|rows?)\b/.test(label)) return false
  return (
    /\b(notes?|hints?|reminders?)\b/.test(label) ||
    /^(an?|one|my|quick|handy|top|useful|helpful) .*\btips?\b|\btips? (for|from|about)\b/.test(label)
  )
}

/** Whether a verb behind "to" tells what becomes of a motif. */
export const makesUp = (verb: string): boolean => MAKES_UP.test(verb)

/** "Abbreviations as UK", "Materials for one block": a section whatever it is of. */
function ofSomething(words: readonly string[]): SectionKind | null {
  if (!/^(as|for|of|in|on|used|needed|with)$/.test(words[1] ?? '') || words.length < 3) return null
  const kind = BY_WORDS.get(plain(words.slice(0, 1))) ?? null
  return kind === 'opening' || kind === 'finishing' || kind === 'colours' ? null : kind
}

/** "To make up", "To string up", "To hang": what becomes of the motifs. */
const MAKES_UP =
  /^(string|assemble|hang|attach|sew|block|stuff|line|mount|fold|felt|press|arrange|display|wear|stiffen|starch)$/
