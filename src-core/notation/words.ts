/**
 * The words of the trade, one a line. Stitches by their names in US and UK terms stand in `src-core/stitches/terms.ts`;
 * everything else that written rounds are made of stands here.
 */

/**
 * Four columns: spellings | what it can stand for | abbreviations = meaning | US word = UK word.
 *
 * The first spelling is the word itself, under which the grammar asks for it; after `+` each one is a word of its own. A
 * form of stitch ("picot", "shell") is a kind like the others. `stop`: older print writes the abbreviation with a stop
 * that ends no sentence; `stop-in`: only where the sentence visibly goes on. `counted`: counted at the end of a round
 * without being a stitch. `short`: printed as its abbreviation in a consistent style. Numbers have their value behind.
 * Abbreviations: CYC master list, "p" for picot the 4-H handbook; the rest common practice.
 */
const TABLE = `
st sts stitch stitches | stitch where short stop-in | st = stitch, sts = stitches
sp sps space spaces | space where short stop-in | sp = space, sps = spaces
lp lps loop loops link links | space ring short stop-in | lp = loop, lps = loops
arch arches arc arcs | space
hole holes | space
gap gaps | space
bar bars | space
window windows | space
opening openings
ch chs chain chains chaining | chain instruction short | ch = chain, chs = chains
ch-sp chsp chsps
ch-lp chlp chlps
ring rings | ring
circle circles | ring motif
center centre middle
corner corners spine cnr cnrs | counted
group groups grp grps | group counted
pair pairs | group counted
petal petals | group counted
leaf leaves | counted
point points | counted landmark
tip tips | landmark
valley valleys | landmark
dip dips | landmark
spoke spokes | counted
scallop scallops | group counted
rnd rnds rd rds tour tours | round short | rnd = round, rnds = rounds
round rounds | round
row rows | round
post posts
stem stems stalk

back | back
front | front
both | both
top tops uppermost topmost | both own
blo bl bls tbl | back | bl = back loop, blo = back loop only
flo fl fls tfl | front | fl = front loop, flo = front loop only
fp front-post
bp back-post
reverse rev
standing st- std- stand-
+ extended linked long spike invisible inv tight loose | manner

picot picots p | picot stop-in | p = picot
puff puffs ps | puff
popcorn popcorns pc pcs pop | popcorn stop-in | pc = popcorn, pop = popcorn
bobble bobbles bo bob bobs | bobble | bo = bobble
cluster clusters cl cls | cluster group short stop-in | cl = cluster, cls = clusters
shell shells sh | shell group stop-in | sh = shell
fan fans | shell group
v-st v-sts v-stitch v-stitches v vs | v-stitch group
inc incs increase increases | increase | inc = increase
dec decs decrease decreases invdec | decrease | dec = decrease
tog together || tog = together

next nxt nx following foll folls flwg | where short stop | foll = following
each ea | where stop
same | where
first | same-as
last final | same-as
prev previous preceding | same-as stop | prev = previous
beg beginning initial | own same-as short stop | beg = beginning
+ base bottom foot starting commencing turning | own
tch t-ch tchs turning-ch turning-chain stch | own-chain | tch = turning chain
rem remaining | short stop | rem = remaining
unworked unused free open leftover left-over untouched
+ successive consecutive | describes
skipped sk'd missed ||| skipped = missed
times time | where
x × ✕ ✖ | times-sign where
more further additional
one | number 1
two | number 2
three | number 3
four | number 4
five | number 5
six | number 6
seven | number 7
eight | number 8
nine | number 9
ten | number 10
eleven | number 11
twelve | number 12
thirteen | number 13
fourteen | number 14
fifteen | number 15
sixteen | number 16
seventeen | number 17
eighteen | number 18
nineteen | number 19
second | ordinal 2
third | ordinal 3
fourth | ordinal 4
fifth | ordinal 5
sixth | ordinal 6
seventh | ordinal 7
eighth | ordinal 8
ninth | ordinal 9
tenth | ordinal 10
once | how-often 1
twice | how-often 2
thrice | how-often 3

+ in into | into place instruction where
around | into place where
between bet betw btw btwn | into place stop | bet = between
+ on upon over through under | into place
across | into where
to | into aside
+ onto along | into
+ corresponding matching adjacent adjoining opposite parallel | elsewhere
motif motifs | motif
square squares | motif
hexagon hexagons | motif
octagon octagons | motif
triangle triangles | motif
flower flowers | motif
granny grannies | motif
piece pieces | motif
block blocks | motif finishing
medallion medallions | motif
snowflake snowflakes | motif
wheel wheels | motif
strip strips | motif
section sections | motif
neighbor neighbors neighbour neighbours | motif

work working works | verb instruction
worked | verb
make making makes raise | verb instruction
put puts putting placing | verb
crochet | verb
+ now then also always | verb
skip sk skips skipping miss missing misses pass passing | skip instruction short stop | sk = skip | sk = miss, skip = miss out, skips = misses out, skipping = missing
leave
leaving | aside
rep reps repeat repeats repeating repeated | instruction counted stop | rep = repeat
join unite jn | instruction
+ sl slip turn fasten finish using do | instruction
and & | instruction
begin begins start starts commence | instruction opening
with | instruction aside
magic adjustable sliding | instruction
continue continuing continues cont | instruction | cont = continue
+ weave cut sew | instruction finishing aside
+ darn tuck secure trim press tie hide | finishing aside
yo yoh yrh woh wrh | step | yo = yarn over, yoh = yarn over hook, yrh = yarn round hook, woh = wool over hook, wrh = wool round hook | yo = yrh
+ insert draw | step
pull pulls pulling | step aside
attach rejoin re-join
change changing switch switching
ending finishing
end ends
omit omitting omits
fasten-off fastened
counts count counted counting | tells
+ totals tally have has got check checkpoint | tells
+ total there will should you we | aside tells
+ are | explains tells
stands stand acts act serves serve equals equal represents represent replaces replace replacing replacement worth
made formed completed complete
not won't wont doesn't doesnt don't dont didn't didnt isn't isnt never
place spot | aside
+ mark marker move tighten keep keeping hold holding fold folding push bring take taking carry bend bending flip flipping lift lifting lay tilt ease | aside
+ being sure careful covering crocheting drop dropping note stuff see this these your if when | aside
+ okay ok yay yeah hooray hurray hurrah phew whew wow oh ah well great perfect almost nearly finally lastly | aside
+ congratulations voila voilà tada ta-da yes please remember enjoy relax breathe | aside
+ while for so at be right wrong facing again instead only too optional | aside
spiral continuous spirals | aside explains
+ is was can may becomes means that's | explains
all | aside
+ the a an of from by
+ established manner way pattern before | pattern

color colour colors colours col
+ white black grey gray silver gold brown beige tan cream ivory ecru natural | colour
+ red pink rose coral peach orange yellow lemon mustard ochre rust copper | colour
+ green lime mint olive sage teal aqua turquoise blue navy denim sky | colour
+ purple lilac lavender violet plum mauve magenta burgundy maroon wine | colour
+ contrast contrasting main | colour
+ light dark pale bright deep soft hot medium off dusty | shade
mc || mc = main colour
cc || cc = contrasting colour
pm | aside | pm = place marker
rs | aside | rs = right side
ws | aside | ws = wrong side
`

export interface Word {
  /** The spelling under which the grammar asks for it. */
  readonly is: string
  readonly kinds: ReadonlySet<string>
  /** Stands in the table. */
  readonly known: boolean
  /** Of numbers. */
  readonly value: number
}

const pairsOf = (column: string): (readonly [string, string])[] =>
  column.split(',').flatMap((pair) => {
    const [word, other] = pair.split('=').map((side) => side.trim())
    return word && other ? [[word, other] as const] : []
  })

const spelled = new Map<string, Word>()
const meanings = new Map<string, string>()
const inUK: (readonly [string, string])[] = []
const shortened = new Map<string, string>()
const stops: Record<'stop' | 'stop-in', string[]> = { stop: ['ea'], 'stop-in': [] }

for (const line of TABLE.split('\n')) {
  if (line === '') continue
  const [spellings = '', kinds = '', means = '', uk = ''] = line.split('|').map((column) => column.trim())
  const [first = '', ...others] = spellings.split(/\s+/)
  const all = kinds.split(/\s+/)
  const value = Number(all.find((kind) => /^\d+$/.test(kind)) ?? 0)
  const make = (is: string): Word => ({ is, kinds: new Set(all), known: true, value })
  if (first === '+') for (const each of others) spelled.set(each, make(each))
  else {
    const entry = make(first)
    for (const spelling of [first, ...others]) spelled.set(spelling, entry)
  }
  for (const [abbreviation, meaning] of pairsOf(means)) {
    meanings.set(abbreviation, meaning)
    if (all.includes('short')) shortened.set(meaning, abbreviation)
    if (all.includes('stop')) stops.stop.push(abbreviation)
    if (all.includes('stop-in')) stops['stop-in'].push(abbreviation)
  }
  inUK.push(...pairsOf(uk))
}

/** "Twenty", "twenty-four", … "ninety-nine". */
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ')
const numbers = [...spelled].filter(([, { kinds, value }]) => kinds.has('number') && value < 10)
TENS.forEach((ten, at) => {
  const make = (is: string, value: number): Word => ({ is, kinds: new Set(['number']), known: true, value })
  spelled.set(ten, make(ten, 10 * (at + 2)))
  for (const [unit, { value }] of numbers)
    spelled.set(`${ten}-${unit}`, make(`${ten}-${unit}`, 10 * (at + 2) + value))
})

/** A number in words, "four" or "fourth"; null where it has none. */
export function numberWord(value: number, kind: 'number' | 'ordinal'): string | null {
  if (kind === 'ordinal' && value === 1) return 'first'
  for (const [word, { kinds, value: of }] of spelled) if (of === value && kinds.has(kind)) return word
  return null
}

/** What an abbreviation means: "sp" → "space". */
export const MEANINGS: ReadonlyMap<string, string> = meanings
/** US words and what the UK says for them, besides stitches. */
export const UK_WORDS: readonly (readonly [string, string])[] = inUK
/** Long words and what is usual for them: "spaces" → "sps". */
export const SHORTENED: ReadonlyMap<string, string> = shortened
/** Abbreviations that older print writes with a stop. */
export const STOPS: Readonly<Record<'stop' | 'stop-in', readonly string[]>> = stops

/** Whether one letter was left out, put in, put wrong or exchanged with its neighbour. */
function oneSlip(a: string, b: string): boolean {
  let from = 0
  while (from < a.length && a[from] === b[from]) from++
  const restA = a.slice(from)
  const restB = b.slice(from)
  return (
    restA.slice(1) === restB ||
    restA === restB.slice(1) ||
    restA.slice(1) === restB.slice(1) ||
    (restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2))
  )
}

/** Shorter words are too much like each other to be taken for one another. */
const LEAST_LETTERS = 3

/** Whether an unknown word is a slip of the keys for one that is known: "nexy" for "next". */
export const isSlipOfKeys = (key: string): boolean =>
  key.length >= LEAST_LETTERS &&
  !spelled.has(key) &&
  !spelled.has(key.replace(/s$/, '')) &&
  [...spelled.keys()].some((word) => word.length > LEAST_LETTERS && oneSlip(key, word))

const UNKNOWN: Omit<Word, 'is'> = { kinds: new Set(), known: false, value: 0 }

/** "chain-loops" → "ch-lp": both sides of a hyphen are words. */
const joined = (key: string): string =>
  key
    .split('-')
    .map((part) => spelled.get(part)?.is ?? part)
    .join('-')

/** The word that a spelling (in lower case) stands for; what is not in the table stands for itself. */
export const wordOf = (key: string): Word =>
  spelled.get(key) ?? { is: key.includes('-') ? joined(key) : key, ...UNKNOWN }
