import { parse } from 'node:path'
import { Option } from 'commander'
import type { Yarn } from '../../../shared-types/project'
import { measuredFrom } from '../../../src-core/photo/motif'
import type { PhotoAnswer } from '../../../src-core/photo/photo'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { yarnLike } from '../../../src-core/photo/yarns'
import { defaultSettings } from '../../host/settings'
import { CommandEnd, EXIT } from '../exit-codes'
import type { AddCommand } from '../program'
import { complainOf, exitFor, loadProject, printJson, printLines } from '../project-file'
import { findingSection } from '../reports/findings'
import { photoReport } from '../reports/photo'
import { fileBytes } from '../text-file'
import { demandFree, writeNew } from '../write-out'

interface Options {
  readonly sheet?: SheetName
  readonly yarns?: string
  readonly json?: boolean
  readonly out?: string
  readonly force?: boolean
}

/** `petalyard photo`: the measures of a motif from a picture of it on a sheet of paper. */
export const addPhoto: AddCommand = (program, around, end) => {
  program
    .command('photo')
    .summary('measure a motif in a picture')
    .description(
      'Measures a motif in a picture of it on a sheet of paper: petals, sizes, outline, colours. The picture stays where it is, and nothing is sent anywhere.',
    )
    .argument('<picture>', 'a photo of the motif, as JPEG, PNG or WebP')
    .addOption(
      new Option(
        '--sheet <size>',
        'what it lies on (Letter where that is usual, else A4); beside it, for a bank card',
      ).choices(Object.keys(SHEET_SIZES)),
    )
    .option('--yarns <project>', 'name the yarns of that project which the colours are like')
    .option('--json', 'print one JSON document')
    .option('-o, --out <file>', 'write a project with that motif')
    .option('-f, --force', 'replace the project if it is there already')
    .addHelpText('after', '\nExample:\n  petalyard photo rose.jpg --sheet Letter --out rose.petalyard')
    .action(async (file: string, { sheet, yarns: stash, json, out, force = false }: Options) => {
      if (out !== undefined) await demandFree(out, force)
      const stock = stash === undefined ? null : await loadProject(stash)
      if (stock?.project === null) {
        complainOf(around, stock.findings)
        return end(exitFor(stock.findings))
      }
      const yarns = stock?.project.yarns ?? []
      // Loaded only here: few need it.
      const { decodePicture, LARGEST_PICTURE, PictureError } = await import('../../photo/decode')
      const { measurePhoto } = await import('../../../src-core/photo/photo')
      const bytes = await fileBytes(file, LARGEST_PICTURE, 'a photo')
      let answer: PhotoAnswer
      try {
        answer = measurePhoto(await decodePicture(bytes), {
          sheet: sheet ?? defaultSettings(around.locale).paper,
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
        const motif = measuredFrom(measures, parse(file).name)
        const project = {
          format: 'petalyard-project',
          version: 1,
          motifs: [motif],
          layout: { kind: 'blanket', motif: motif.id, rows: 10, columns: 8 },
        }
        await writeNew(out, `${JSON.stringify(project, null, 2)}\n`, force)
        if (!json) around.out(`Wrote ${out}\n`)
      }
      return end(exitFor(findings))
    })
}

const hundredths = (value: number): number => Math.round(value * 100) / 100

/** The answer as the contract has it: millimetres about the middle, y downwards. */
function photoJson({ measures, sheet, findings }: PhotoAnswer, yarns: readonly Yarn[]): object {
  if (!measures) return { petals: null, sheet, findings }
  const { kind, petals, symmetry, overTips, overValleys, unevenness, outline, colours, range } = measures
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
    range: { low: hundredths(range.low), high: hundredths(range.high) },
    findings,
  }
}
