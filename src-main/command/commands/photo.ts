import { parse } from 'node:path'
import { InvalidArgumentError, Option } from 'commander'
import type { Yarn } from '../../../shared-types/project'
import type { PhotoAnswer, PhotoMeasures } from '../../../src-core/photo/photo'
import type { Picture } from '../../../src-core/photo/picture'
import type { Ruler } from '../../../src-core/photo/ruler'
import { SHEET_CHOICES } from '../../../src-core/photo/sheet-sizes'
import type { SheetChoice } from '../../../src-core/photo/sheet-sizes'
import { yarnLike } from '../../../src-core/photo/yarns'
import { CommandEnd, EXIT } from '../exit-codes'
import type { AddCommand } from '../program'
import { complainOf, exitFor, printJson, printLines } from '../prints'
import { findingSection } from '../reports/findings'
import { photoReport } from '../reports/photo'
import { oneOf, readLengthOption } from '../options'
import { fileBytes } from '../text-file'

interface Options {
  readonly sheet?: SheetChoice
  readonly points?: Pick<Ruler, 'from' | 'to'>
  readonly length?: number
  readonly yarns?: string
  readonly json?: boolean
  readonly out?: string
  readonly keep?: boolean
  readonly force?: boolean
}

/** `petalyard photo`: the measures of a motif from a picture of it on a sheet of paper. */
export const addPhoto: AddCommand = (program, around, end) => {
  program
    .command('photo')
    .summary('measure a motif in a picture')
    .description(
      'Measures a motif in a picture of it on a sheet of paper, or beside a bank card or a ruler: petals, sizes, outline, colours. The picture stays where it is, and nothing is sent anywhere.',
    )
    .argument('<picture>', 'a photo of the motif, as JPEG, PNG or WebP')
    .addOption(
      oneOf(
        new Option(
          '--sheet <size>',
          'what it lies on (Letter where that is usual, else A4); beside it, for a bank card or a ruler',
        ),
        SHEET_CHOICES,
      ),
    )
    .option(
      '--points <x,y,x,y>',
      'two points on the ruler, in pixels from the top left of the upright picture',
      readPointsOption,
    )
    .option('--length <length>', 'how far apart they are on the ruler', readLengthOption)
    .option('--yarns <project>', 'name the yarns of that project which the colours are like')
    .option('--json', 'print one JSON document')
    .option('-o, --out <file>', 'write a project with that motif')
    .option(
      '--keep',
      'keep a small copy of the picture in that project, without what the camera wrote into it',
    )
    .option('-f, --force', 'replace the project if it is there already; a copy is kept')
    .addHelpText('after', '\nExample:\n  petalyard photo rose.jpg --sheet Letter --out rose.petalyard')
    .action(async (file: string, options: Options) => {
      const { sheet, yarns: stash, json, out, keep = false, force = false } = options
      if (keep && out === undefined)
        throw new CommandEnd(EXIT.wrongUse, 'Only a project keeps a picture: --keep needs --out.')
      const ruler = rulerOf(options)
      // What only some need is loaded for them alone: a picture is waited for.
      if (out !== undefined) {
        const { demandApart, demandFree } = await import('../write-out')
        await demandApart(out, file, 'picture')
        await demandFree(out, force)
      }
      const stock = stash === undefined ? null : await (await import('../project-file')).loadProject(stash)
      if (stock?.project === null) {
        complainOf(around, stock.findings)
        return end(exitFor(stock.findings))
      }
      const yarns = stock?.project.yarns ?? []
      const { decodePicture, LARGEST_PICTURE, PictureError } = await import('../../photo/decode')
      const { measurePhoto } = await import('../../../src-core/photo/photo')
      const bytes = await fileBytes(file, LARGEST_PICTURE, 'a photo')
      let picture: Picture
      let answer: PhotoAnswer
      try {
        picture = await decodePicture(bytes)
        answer = measurePhoto(picture, {
          sheet: sheet ?? (ruler ? 'ruler' : await usualPaper(around.locale)),
          ruler,
        })
      } catch (error) {
        if (!(error instanceof PictureError)) throw error
        throw new CommandEnd(EXIT.unreadable, `${file} ${error.message}.`)
      }
      const { measures, findings } = answer
      if (json) printJson(around, photoJson(answer, yarns))
      else if (measures)
        printLines(around, [...photoReport(measures, yarns), ...findingSection(findings, around.width)])
      else complainOf(around, findings)
      if (out !== undefined && measures) {
        const { keptPhoto } = await import('../../photo/keep')
        const { measuredFrom } = await import('../../../src-core/photo/motif')
        const { writeNew } = await import('../write-out')
        const photo = keep ? await keptPhoto(picture, answer.sheet) : undefined
        if (photo === null)
          throw new CommandEnd(EXIT.unreadable, `${file} cannot be made small enough to be kept.`)
        const motif = { ...measuredFrom(measures, parse(file).name), ...(photo && { photo }) }
        const { laidFirst } = await import('../../../src-core/layout/first-layout')
        const project = laidFirst(
          { format: 'petalyard-project', version: 1, title: motif.name, motifs: [motif] },
          motif.id,
        )
        await writeNew(out, `${JSON.stringify(project, null, 2)}\n`, force)
        if (!json) around.out(`Wrote ${out}\n`)
      }
      return end(exitFor(findings))
    })
}

const usualPaper = async (locale: string) =>
  (await import('../../host/settings')).defaultSettings(locale).paper

/** "812,1440,2210,1452": two points in pixels. */
function readPointsOption(text: string): Pick<Ruler, 'from' | 'to'> {
  const parts = text.split(',').map((part) => (part.trim() === '' ? NaN : Number(part)))
  const [x1, y1, x2, y2] = parts
  if (parts.length !== 4 || !parts.every(Number.isFinite))
    throw new InvalidArgumentError(
      'Four numbers with commas between are expected, such as "812,1440,2210,1452".',
    )
  return { from: { x: x1!, y: y1! }, to: { x: x2!, y: y2! } }
}

/** The ruler that was asked for; only all three together make sense. */
function rulerOf({ sheet, points, length }: Options): Ruler | undefined {
  const byRuler = sheet === 'ruler' || (sheet === undefined && (points ?? length) !== undefined)
  if (!byRuler && (points ?? length) === undefined) return undefined
  if (!byRuler) throw new CommandEnd(EXIT.wrongUse, `--points and --length are those of --sheet ruler.`)
  if (!points || length === undefined)
    throw new CommandEnd(EXIT.wrongUse, 'A ruler needs both: --points, and --length between them.')
  return { ...points, length }
}

const hundredths = (value: number): number => Math.round(value * 100) / 100

const rounded = ({ low, high }: PhotoMeasures['range']) => ({ low: hundredths(low), high: hundredths(high) })

/** The answer as the contract has it: millimetres about the middle, y downwards. */
function photoJson({ measures, sheet, findings }: PhotoAnswer, yarns: readonly Yarn[]): object {
  if (!measures) return { petals: null, sheet, findings }
  const { kind, petals, symmetry, overTips, overValleys, unevenness, outline, colours } = measures
  return {
    petals,
    overTips: hundredths(overTips),
    overValleys: hundredths(overValleys),
    kind,
    outline: outline.map(([x, y]) => [hundredths(x), hundredths(y)]),
    symmetry,
    unevenness: Math.round(unevenness * 1e4) / 1e4,
    colours: colours.map(({ colour, share }) => {
      const like = yarnLike(colour, yarns)
      return {
        ...{ colour, share: hundredths(share) },
        ...(like && { yarn: like.yarn.id, difference: hundredths(like.difference) }),
      }
    }),
    sheet,
    range: rounded(measures.range),
    rangeOverValleys: rounded(measures.rangeOverValleys),
    findings,
  }
}
