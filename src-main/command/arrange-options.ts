/** What `petalyard arrange` was asked for, as wishes of the engine. */
import type { Finding } from '../../shared-types/finding'
import type { Point } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { Corner, LaidByTurns, Wish } from '../../src-core/composing/arrange'
import { findingFrom, pathRefusal, refusal, svgRefusal } from '../../src-core/layout/applique/drawing-words'
import type { Refusal } from '../../src-core/layout/applique/drawing-words'
import type { Facing } from '../../src-core/layout/arrangers/arranged'
import { lineOfPath } from '../../src-core/layout/arrangers/row'
import { MOST_FILE_CHARACTERS, pathInMillimetres, readSvgFile } from '../../src-core/geometry/svg-file'
import { CommandEnd, EXIT } from './exit-codes'
import { fileBytes, textOf } from './text-file'

export interface ArrangeOptions {
  readonly out: string
  readonly force?: boolean
  readonly panel?: string
  readonly line?: string
  readonly unit?: number
  readonly wreath?: boolean
  readonly row?: string
  readonly spray?: Corner
  readonly scatter?: boolean
  readonly motifs?: string
  readonly replace?: boolean
  readonly count?: number
  readonly width?: number
  readonly height?: number
  readonly centre?: Point
  readonly start?: number
  readonly facing?: Facing
  readonly turn?: number
  readonly first?: number
  readonly step?: number
  readonly opening?: number
  readonly distance?: number
  readonly seed?: number
}

const wrongUse = (message: string) => new CommandEnd(EXIT.wrongUse, message)

/** Options that say how to lay, and which arrangers know them. */
const KNOWN: Readonly<Partial<Record<keyof ArrangeOptions, readonly Wish['how'][]>>> = {
  count: ['wreath', 'row', 'spray', 'scatter'],
  width: ['wreath'],
  height: ['wreath'],
  centre: ['wreath'],
  start: ['wreath'],
  facing: ['wreath', 'row'],
  turn: ['wreath', 'row', 'spray', 'scatter'],
  first: ['spray'],
  step: ['spray'],
  opening: ['spray'],
  distance: ['scatter'],
  seed: ['scatter'],
  motifs: ['wreath', 'row', 'spray', 'scatter'],
  replace: ['wreath', 'row', 'spray', 'scatter'],
}

const HOWS = ['wreath', 'row', 'spray', 'scatter'] as const

/** The wish of the options, or null where they ask for none; ends the command where they do not go together. */
export async function readWish(options: ArrangeOptions): Promise<Wish | null> {
  const asked = HOWS.filter((how) => options[how] !== undefined)
  const [how] = asked
  if (asked.length > 1)
    throw wrongUse(
      `one at a time: --${asked.join(' or --')}. Place the second on what the first has written.`,
    )
  for (const [option, arrangers] of Object.entries(KNOWN))
    if (options[option as keyof ArrangeOptions] !== undefined && !(how && arrangers.includes(how)))
      throw wrongUse(
        how
          ? `--${option} says nothing to --${how}.`
          : `--${option} needs ${arrangers.map((each) => `--${each}`).join(' or ')}.`,
      )
  const { count, turn, facing } = options
  const common = { ...(count !== undefined && { count }), ...(turn !== undefined && { turn }) }
  const faced = facing !== undefined && { facing }
  switch (how) {
    case 'wreath': {
      const { width, height, centre, start } = options
      return {
        how,
        ...common,
        ...faced,
        ...(width !== undefined && { radiusX: width / 2 }),
        ...(height !== undefined && { radiusY: height / 2 }),
        ...(centre && { centre }),
        ...(start !== undefined && { start }),
      }
    }
    case 'row':
      return { how, ...common, ...faced, ...(await readLine(options.row!, options)) }
    case 'spray': {
      const { first, step, opening } = options
      return {
        how,
        corner: options.spray!,
        ...common,
        ...(first !== undefined && { first }),
        ...(step !== undefined && { step }),
        ...(opening !== undefined && { opening }),
      }
    }
    case 'scatter': {
      const { distance, seed = 1 } = options
      return {
        how,
        seed,
        ...(distance !== undefined && { distance }),
        ...(count !== undefined && { most: count }),
        ...(turn !== undefined && { turn }),
      }
    }
    default:
      return null
  }
}

/** The motifs to lay by turns: "star:a,leaf"; without it every motif with its first colourway. */
export function readTurns(text: string | undefined, project: Project): LaidByTurns[] {
  const motifs = project.motifs ?? []
  const ways = project.colourways ?? []
  const firstOf = (motif: string) => ways.find((way) => way.motif === undefined || way.motif === motif)?.id
  const laid = (motif: string, colourway = firstOf(motif)): LaidByTurns => ({
    motif,
    ...(colourway !== undefined && { colourway }),
  })
  if (text === undefined) return motifs.map(({ id }) => laid(id))
  return text.split(',').map((part) => {
    const [motif = '', colourway] = part.split(':').map((word) => word.trim())
    if (!motifs.some(({ id }) => id === motif))
      throw wrongUse(`there is no motif '${motif}'; there are ${listed(motifs.map(({ id }) => id))}.`)
    if (colourway !== undefined && !ways.some(({ id }) => id === colourway))
      throw wrongUse(`there is no colourway '${colourway}'; there are ${listed(ways.map(({ id }) => id))}.`)
    return laid(motif, colourway)
  })
}

const listed = (names: readonly string[]): string => names.join(', ') || 'none'

type SvgOptions = Pick<ArrangeOptions, 'line' | 'unit'>

/** The outline for a panel out of an SVG file, as path data in mm. */
export const readPanelFile = (file: string, options: SvgOptions): Promise<string> => pathOfFile(file, options)

/** The line of a row: path data as typed, or out of an SVG file. */
async function readLine(
  text: string,
  options: SvgOptions,
): Promise<{ points: readonly Point[]; closed: boolean }> {
  const isFile = /\.svg$/i.test(text.trim())
  const read = lineOfPath(isFile ? await pathOfFile(text, options) : text)
  if ('points' in read) return read
  const refused =
    'pieces' in read ? refusal('applique/line-pieces', { pieces: read.pieces }) : pathRefusal(read.trouble)
  throw wrongUse(`--row: ${inWords(refused)}`)
}

async function pathOfFile(file: string, { line, unit }: SvgOptions): Promise<string> {
  const text = textOf(file, await fileBytes(file, 4 * MOST_FILE_CHARACTERS, 'a drawing'))
  const read = readSvgFile(text)
  if ('trouble' in read) throw refusedFile(file, svgRefusal(read.trouble))
  const { lines, unit: own } = read.drawing
  const chosen = line === undefined ? lines[0] : lines.find(({ name }) => name === line)
  if (!chosen)
    throw wrongUse(`${file} has no line '${line}'; it has ${listed(lines.map(({ name }) => name))}.`)
  const scale = unit ?? own
  if (scale === null)
    throw refusedFile(file, refusal('applique/svg-no-size', {}), ' Add --unit MM (0.2646 for pixels).')
  return pathInMillimetres(chosen, scale)
}

/** A refused file, in one line. */
const refusedFile = (file: string, refused: Refusal, more = ''): CommandEnd =>
  new CommandEnd(EXIT.unreadable, `${file}: ${inWords(refused)}${more}`)

function inWords(refused: Refusal): string {
  const { message, mend }: Finding = findingFrom(refused, '')
  return `${message} ${mend}`
}
