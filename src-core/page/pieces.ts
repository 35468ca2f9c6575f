/** Later pieces of a page ("Leaf (make 2)") that begin on a ring or chain of their own: motifs that they could be. */
import type { Colourway, Project, RoundsMotif, Terms } from '../../shared-types/project'
import { freeLetter } from '../colour/letters'
import { piecesOf } from '../motif/rounds/pieces'
import { readMotif } from '../motif/rounds/read-motif'
import { readRounds } from '../notation/read'
import { takeApart } from '../notation/take-apart'
import { translateText } from '../notation/translate'
import { settled } from '../settled'
import { saying } from '../stitches/spelling'
import { smallNumber } from './quantities'

export interface ToldPiece {
  readonly name: string | null
  /** Its rounds in the terms of the page, as they are taken apart. */
  readonly rounds: readonly string[]
  /** Offset of its first round in the page. */
  readonly start: number
  readonly end: number
}

const MAKE = /[([]\s*(?:make|work)\s+(\w+)[^)\]]*[)\]]/i

/** "Leaf (make 2)": the name alone, and how many. */
export function makeIn(words: string): { name: string; make: number | null } {
  const found = MAKE.exec(words)
  const make = found ? smallNumber(found[1]!) : null
  return { name: make === null ? words : words.replace(MAKE, '').trim(), make }
}

/** What a fact says of such a piece. */
export interface PieceSays {
  readonly kind: 'piece'
  readonly name: string
  /** How many of it, where that is told. */
  readonly make: number | null
  /** How many of it with each motif of the first piece; null where the page leaves that open. */
  readonly each: number | null
  readonly rounds: readonly string[]
}

/** From so many on a page that says of no other piece how many there are of it means the whole work (ours). */
const MOST_WITH_ONE = 8

/** How many of a piece go with each one of the first: "Flower (make 6)" and "Leaf (make 12)" are 2 leaves each. */
export function eachOf(make: number | null, ofFirst: number | null): number | null {
  if (make === null || (ofFirst === null && make > MOST_WITH_ONE)) return null
  const each = make / (ofFirst ?? 1)
  return Number.isInteger(each) && each > 0 ? each : null
}

/** The pieces of a page after the first one; none where all rounds go on from each other. */
export function laterPieces(text: string, terms: Terms): ToldPiece[] {
  const read = readRounds(text, { terms })
  const told = piecesOf(read.worked)
  if (told.length < 2) return []
  const { foundation, special, rounds } = takeApart(text, terms, terms)
  // As the motif reads them that they are pasted into.
  const motif: RoundsMotif = {
    id: 'm',
    kind: 'rounds',
    foundation,
    special,
    rounds: rounds.map(({ work }) => ({ work })),
  }
  const { worked, entries } = readMotif(motif, terms)
  const own = piecesOf(worked)
  if (told.length !== own.length) return []
  return own.slice(1).map((piece, i) => {
    const here = told[i + 1]!
    const spans = here.map((round) => read.rounds[read.worked.indexOf(round)]!.span)
    const works = [...new Set(piece.map((round) => entries[worked.indexOf(round)]!))]
    return {
      name: here[0]!.part ?? null,
      rounds: works.map((entry) => rounds[entry]!.work),
      start: Math.min(...spans.map(({ start }) => start)),
      end: Math.max(...spans.map(({ end }) => end)),
    }
  })
}

/** The first round of a piece has a number in front, which tells it from the rounds before. */
const withoutNumber = (work: string): string => work.replace(/^\s*(?:rnd|round)\s+\d+:\s*/i, '')

function freeName(project: Project, name: string): string {
  const taken = new Set(project.motifs?.map((motif) => motif.name))
  let free = name
  for (let number = 2; taken.has(free); number++) free = `${name} ${number}`
  return free
}

function freeId(project: Project): string {
  const taken = new Set(project.motifs?.map(({ id }) => id))
  let number = taken.size + 1
  while (taken.has(`m${number}`)) number++
  return `m${number}`
}

/** Where the rounds of a piece stand among those of a motif, one behind the other; −1 where they were changed. */
function placeIn(rounds: readonly { readonly work: string }[], works: readonly string[]): number {
  const last = rounds.length - works.length
  for (let at = 1; at <= last; at++) if (works.every((work, i) => rounds[at + i]!.work === work)) return at
  return -1
}

/** The special stitches that these rounds name: a leaf has no back post stitches because its flower has some. */
function specialIn(special: string | undefined, rounds: readonly string[]): Pick<RoundsMotif, 'special'> {
  const said = ` ${rounds.join(' ').toLowerCase()} `
  const isNamed = (line: string): boolean => {
    const head = line.slice(0, Math.max(0, line.indexOf(':'))).toLowerCase()
    const names = head
      .split(/[()[\],]|\bor\b/)
      .map((name) => name.trim())
      .filter((name) => name !== '')
    return names.length === 0 || names.some((name) => said.includes(name))
  }
  const lines = (special ?? '').split('\n').filter((line) => line.trim() !== '' && isNamed(line))
  return lines.length > 0 ? { special: lines.join('\n') } : {}
}

/**
 * The project with a piece as a motif of its own, worked by the same gauge, and taken out of the motif that it stood
 * in. Where its rounds were changed since they were pasted, they stay there as well.
 */
export function withPiece(
  project: Project,
  motifId: string,
  { name, make, each, rounds }: Omit<PieceSays, 'kind'>,
): Project {
  const from = project.motifs?.find(
    (motif): motif is RoundsMotif => motif.id === motifId && motif.kind === 'rounds',
  )
  if (!from) return project
  const own = from.rounds ?? []
  const at = placeIn(own, rounds)
  const slots = at < 0 ? [] : own.slice(at, at + rounds.length).map(({ slot }) => slot)
  const made: RoundsMotif = {
    id: freeId(project),
    name: freeName(project, name),
    kind: 'rounds',
    ...(from.gauge && { gauge: from.gauge }),
    ...specialIn(from.special, rounds),
    // How many are made in all then follows from how many there are of the other.
    ...(make === null || each !== null ? {} : { instructions: makeWords(make) }),
    goesWith: { motif: motifId, ...(each !== null && { each }) },
    rounds: rounds.map((work, i) => ({
      slot: slots[i] ?? own[0]?.slot ?? 'main',
      work: i === 0 ? withoutNumber(work) : work,
    })),
  }
  const motifs = project.motifs!.map((motif) =>
    motif === from && at >= 0
      ? { ...from, rounds: own.filter((_, i) => i < at || i >= at + rounds.length) }
      : motif,
  )
  const next = { ...project, motifs: [...motifs, made] }
  const ways = project.colourways ?? []
  const way = ways.find(({ motif }) => motif === motifId)
  if (!way) return next
  // Colours that only the piece was worked in go with it.
  const left = own.flatMap(({ slot }, i) =>
    at >= 0 && i >= at && i < at + rounds.length ? [] : (slot ?? []),
  )
  const kept = ways.map((each) =>
    each.motif === motifId ? { ...each, yarns: yarnsFor(each, slots, left) } : each,
  )
  return { ...next, colourways: [...kept, wayOf(project, made, way)] }
}

/** The yarns of a colourway without those of `gone` colours that no round is left in. */
const yarnsFor = (
  { yarns = {} }: Colourway,
  gone: readonly (string | undefined)[],
  left: readonly string[],
) => Object.fromEntries(Object.entries(yarns).filter(([slot]) => left.includes(slot) || !gone.includes(slot)))

/** A piece is worked in the yarns that its colours had in the motif that it stood in, until others are chosen. */
function wayOf(project: Project, piece: RoundsMotif, { yarns = {} }: Colourway): Colourway {
  const ways = project.colourways ?? []
  const code = freeLetter(ways)
  const slots = [...new Set((piece.rounds ?? []).flatMap(({ slot }) => slot ?? []))]
  const [any] = Object.values(yarns)
  return {
    id: freeColourwayId(ways),
    code,
    name: saying(settled(project).terms)`Colourway ${code}`,
    motif: piece.id,
    yarns: Object.fromEntries(
      slots.flatMap((slot) => {
        const yarn = yarns[slot] ?? any
        return yarn === undefined ? [] : [[slot, yarn]]
      }),
    ),
  }
}

function freeColourwayId(ways: readonly Colourway[]): string {
  const known = new Set(ways.map(({ id }) => id))
  let number = ways.length + 1
  while (known.has(`c${number}`)) number++
  return `c${number}`
}

export const makeWords = (make: number): string => `Make ${make}.`

export const piecesInto = (rounds: readonly string[], from: Terms, into: Terms): string[] =>
  rounds.map((work) => translateText(work, from, into))
