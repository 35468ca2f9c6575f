/** Yarns as pages list them: names, what a ball weighs and runs to, fibre, and colours with their letters. */
import type { Yarn } from '../../shared-types/project'
import { capital } from '../figures/words'
import { colourNamed } from './colour-names'
import { shadeNamed } from './shade-names'
import { massesIn, rounded, yarnLengthsIn } from './quantities'

/** What a page can say of a yarn. */
export type PageYarn = Pick<Yarn, 'name' | 'colour' | 'fibre' | 'ballGrams' | 'ballMetres'>

export interface ToldYarn {
  readonly yarn: PageYarn
  /** The letter that the pattern calls it by ("A", "MC"), or null. */
  readonly role: string | null
  /** Its name, or that of its colour, as the page writes it. */
  readonly written: string
  /** Offsets in the words that were searched. */
  readonly start: number
  readonly end: number
}

const FIBRES =
  'cotton|wool|acrylic|merino|linen|alpaca|silk|bamboo|nylon|polyamide|polyester|viscose|cashmere|mohair|hemp|jute|rayon'
const SHARES = new RegExp(`\\d{1,3}\\s*%\\s*[\\p{L} ]+?(?=[,/;()\\]]|\\d|$|\\s(?:and|yarn)\\b)`, 'giu')
const FIBRE = new RegExp(`\\b(${FIBRES})\\b`, 'i')

/** Words that tell a yarn from scissors. */
const IS_YARN = new RegExp(
  `\\b(yarns?|threads?|floss|\\d{1,2}[ -]?ply|dk|double knitting|aran|worsted|chunky|bulky|fingering|sport|lace(?: |-)?weight|skeins?|balls?|hanks?|${FIBRES}|yds?|yards?|MC|CC\\d?|colou?rs?)\\b`,
  'i',
)
const NO_YARN = /\bhooks?\b|\bneedles?\b|\bscissors\b|\bmarkers?\b|\b(fiberfill|stuffing|buttons?|beads?)\b/i

const ROLE = '([A-H]|MC|CC ?\\d?|C[1-9])'
const CALLED = '(?:(?:colou?r|yarn|shade|contrast)\\s+)?'
const NAMED = String.raw`(?<name>\p{Lu}[\p{L}'’-]*(?: (?:\p{Lu}[\p{L}'’-]*|(?!and\b|or\b)\p{Ll}+))?)`
/** "A (yellow)", "Yellow (A)", "MC: cream", "Color B = white", "B – white". */
const ROLES: readonly RegExp[] = [
  new RegExp(`(?<name>\\p{L}[\\p{L} '’-]*?)\\s*[(\\[]${CALLED}${ROLE.replace('(', '(?<role>')}[)\\]]`, 'gu'),
  new RegExp(
    `(?<![\\p{L}\\d])${CALLED}${ROLE.replace('(', '(?<role>')}\\s*[(\\[](?<name>\\p{L}[\\p{L} '’-]*)`,
    'gu',
  ),
  new RegExp(
    `(?<![\\p{L}\\d])${CALLED}${ROLE.replace('(', '(?<role>')}\\s*[:=–—-]\\s*(?<name>\\p{L}[\\p{L} '’-]*)`,
    'gu',
  ),
  // "Color A Slate and Color B Chalk".
  new RegExp(
    `(?<!\\p{L})(?:[Cc]olou?r|[Yy]arn|[Ss]hade)\\s+${ROLE.replace('(', '(?<role>')}\\s+${NAMED}`,
    'gu',
  ),
  // "Moss (M)": other letters are the first of the name.
  /(?<name>\p{L}[\p{L} '’-]*?)\s*[([](?<role>[I-Z])[)\]]/gu,
]

/** Whether a letter may stand for a name: those from A on for any, the others for what begins with them. */
const standsFor = (role: string, name: string): boolean =>
  !/^[I-Z]$/.test(role) ||
  (name.split(' ').some((word) => word[0]?.toUpperCase() === role) &&
    (/^\p{Lu}/u.test(name) || colourNamed(name) !== null))

/** "1 ball of 175 yds": of old threads the length alone is told. */
const BALL_OF =
  /\b(?:\d+|one|two|three)\s+(?:balls?|skeins?|spools?)\s*(?:of|,)\s*\d[\d.,]*\s*(?:yds?|yards?)\b/i

/** "50 g / 125 m", "100g/220yds", "1.75 oz/50 g, 137 yd/125 m per skein": what a ball weighs and runs to. */
function ballIn(text: string): Pick<Yarn, 'ballGrams' | 'ballMetres'> {
  const masses = massesIn(text)
  const lengths = yarnLengthsIn(text)
  const near = (from: number, to: number) =>
    /^(?:[\s/(),;:=[\]–-]|per|ball|skein|hank|balls|is|to|approx\.?|about|ca\.?|each|a|[\d.,]+\s*(?:g|oz|yds?|yards?|m|grams|ounces|met(?:re|er)s)\b)*$/i.test(
      text.slice(from, to),
    )
  for (const mass of masses)
    for (const length of lengths) {
      const isNext = mass.end <= length.start ? near(mass.end, length.start) : near(length.end, mass.start)
      if (!isNext) continue
      const metric = masses.find(({ start, end }) => /\dg|\bg|gram/i.test(text.slice(start, end))) ?? mass
      const metres = lengths.find(({ start, end }) => /\dm|\bm/i.test(text.slice(start, end))) ?? length
      return { ballGrams: rounded(metric.value), ballMetres: rounded(metres.value) }
    }
  const ball = BALL_OF.exec(text)
  const [length] = ball ? yarnLengthsIn(ball[0]) : []
  return length ? { ballMetres: rounded(length.value) } : {}
}

function fibreIn(text: string): string | undefined {
  const shares = text.match(SHARES)?.map((share) => share.trim().toLowerCase())
  if (shares) return shares.join(', ')
  return FIBRE.exec(text)?.[1]?.toLowerCase()
}

/** The words for the yarn itself: no amounts, no brackets, no colours. */
function nameIn(text: string): string {
  const head = text.split(
    /\bin (?:the )?(?:\d+|two|three|four|five|six|following)? ?colou?rs?\b|\bin:|:/i,
  )[0]!
  const plain = head
    // "(100 g / 200 m [219 yds])" is one bracket.
    .replace(/\([^()]*\)/g, (all) => all.replace(/[[\]]/g, ' '))
    // "50g ball/120m"
    .replace(/,?\s*\d[\d.,]*\s*(?:g|oz)\s*(?:balls?|skeins?|hanks?)\s*[/=]\s*\d[\d.,]*\s*(?:m|yds?)\b/gi, ' ')
    // "1 ball of 175 yds."
    .replace(new RegExp(`,?\\s*${BALL_OF.source}\\.?`, 'gi'), ' ')
    .replace(/[([](?![\p{L} -]+[)\]])[^)\]]*[)\]]/gu, ' ')
    .replace(/^\W+/, '')
    .replace(/\b(?:approx(?:imately)?\.?|about|less than|small amounts? of|scraps of|any)\b/gi, ' ')
    .replace(
      /\d[\d.,/½¼¾]*\s*(?:yards|yds?|met(?:re|er)s|m|grams|g|oz|ounces)\b\.?(?:\s*(?:each|of|per \p{L}+))*/giu,
      ' ',
    )
    .replace(
      /^\s*(?:\d+|one|two|three|four|five)\s*(?:x\s*)?(?:balls?|skeins?|hanks?)\s*(?:each )?(?:of )?/i,
      '',
    )
    .replace(/\d{1,3}\s*%/g, ' ')
    .replace(/[,;]?\s*(?:\d+ )?\b(?:each|of|balls?|skeins?|hanks?)\s*$/i, '')
    .replace(/\s+([,;])/g, '$1')
    .replace(/[\s,;./–-]+$/g, '')
    .replace(/\s+/g, ' ')
    .trim()
  return /\p{L}{2}/u.test(plain) ? capital(plain) : ''
}

/** Names before a bracket carry what stands before them: "DK cotton in yellow" is yellow. */
const colourOf = (name: string): string =>
  name
    .replace(/^.*\b(?:in|of|and|each|yarn|cotton|wool|acrylic)\s+/i, '')
    // "Oatmeal x 1 ball"
    .replace(/\s+x\s*$/i, '')
    .trim()

/** A name that stands for itself begins with a capital; behind that of its yarn it stays as the page has it. */
const asWritten = (name: string, written: string): string =>
  /^\p{Ll}/u.test(written) ? name.charAt(0).toLowerCase() + name.slice(1) : name

/**
 * One list of yarns: where it names one yarn and then its colours by letter, each colour is that yarn, and what a ball
 * weighs holds for all of them.
 */
export function withCommon<Entry extends Pick<ToldYarn, 'yarn' | 'role'>>(
  list: readonly Entry[],
  writtenOf: (entry: Entry) => string,
): Entry[] {
  const [base, ...others] = list.filter(({ role }) => role === null)
  const roles = list.filter(({ role }) => role !== null)
  if (!base || others.length > 0 || roles.length === 0) return [...list]
  const { name, ...common } = base.yarn
  return roles.map((entry) => ({
    ...entry,
    yarn: {
      ...common,
      ...entry.yarn,
      name: `${name}, ${asWritten(entry.yarn.name ?? '', writtenOf(entry))}`,
    },
  }))
}

const LETTERED = new RegExp(`^[\\s*•·–-]*${CALLED}${ROLE}\\s*[:=–—-]\\s*\\p{L}{2}`, 'iu')

/** "A: cream", "Color MC = sunflower": a line that says which colour a letter of the pattern is. */
export const isLettered = (text: string): boolean => LETTERED.test(text) && !NO_YARN.test(text)

/** Whether an item of a list of materials is yarn. */
export const isYarn = (text: string): boolean => IS_YARN.test(text) && !NO_YARN.test(text)

const LISTED = String.raw`\p{L}+(?:[ -](?!and\b)\p{L}+)?`
const AND = String.raw`\s*(?:,\s*(?:and\s+)?|\band\s+|&\s*)`
const LIST = `(?<list>${LISTED}(?:${AND}${LISTED})+)`
/** "DK cotton in white and yellow", "1 ball each of pink, red and green 4 ply cotton". */
const SEVERAL: readonly RegExp[] = [
  new RegExp(`\\bin ${LIST}\\s*\\.?$`, 'iu'),
  new RegExp(`\\beach (?:of )?${LIST}(?=\\s)`, 'iu'),
]

/** Colours that are named one beside the other, and the words without them; null where there is one or none. */
function coloursIn(text: string) {
  for (const sign of SEVERAL) {
    const match = sign.exec(text)
    const list = match?.groups?.list
    if (!match || list === undefined) continue
    const from = match.index + match[0].indexOf(list)
    let at = 0
    const parts = list.split(new RegExp(AND, 'iu')).map((part) => {
      const start = list.indexOf(part, at)
      at = start + part.length
      // "Pink and green cotton": the last one has what the yarn is behind it.
      const words = part.replace(/\s+\p{L}+$/u, (last) => (colourNamed(last) ? last : ''))
      return { words, colour: colourNamed(words), start: from + start }
    })
    const colours = parts.flatMap(({ colour, ...rest }) => (colour ? [{ ...rest, colour }] : []))
    const last = parts.at(-1)!
    const rest = `${text.slice(0, from).replace(/\b(?:in|each(?: of)?|of)\s*$/i, '')} ${text.slice(last.start + last.words.length)}`
    if (colours.length === parts.length) return { colours, rest }
  }
  return null
}

/** The yarns that some words list: one for each colour with a letter, else one for all. */
export function yarnsIn(text: string): ToldYarn[] {
  const fibre = fibreIn(text)
  const common = { ...ballIn(text), ...(fibre && { fibre }) }
  const byRole = new Map<string, ToldYarn>()
  for (const sign of ROLES)
    for (const match of text.matchAll(sign)) {
      const role = match.groups!.role!.replace(' ', '')
      const name = colourOf(match.groups!.name!)
      if (byRole.has(role) || !/\p{L}{3}/u.test(name) || !standsFor(role, name)) continue
      const colour = shadeNamed(name)
      const yarn = { name: capital(name), ...(colour && { colour }), ...common }
      const end = match.index + match[0].length
      byRole.set(role, {
        yarn,
        role,
        written: name,
        start: match.index + Math.max(0, match[0].indexOf(name)),
        end,
      })
    }
  if (byRole.size > 0) return [...byRole.values()].sort((one, other) => one.start - other.start)
  const several = coloursIn(text)
  const name = nameIn(several ? several.rest : text)
  if (name === '') return []
  if (several)
    return several.colours.map(({ words, colour, start: at }) => ({
      yarn: { name: `${name}, ${words.toLowerCase()}`, colour, ...common },
      role: null,
      written: words,
      start: at,
      end: at + words.length,
    }))
  const colour = colourNamed(text) ?? shadeNamed(name)
  const start = text.search(/\S/)
  return [
    {
      yarn: { name, ...(colour && { colour }), ...common },
      role: null,
      written: name,
      start,
      end: text.trimEnd().length,
    },
  ]
}
