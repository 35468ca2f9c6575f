import { basename, extname } from 'node:path'
import { Option } from 'commander'
import { PICTURE_SUBJECTS, PICTURE_WIDTH } from '../../../shared-types/pictures'
import type { PictureFormat, PictureSubject } from '../../../shared-types/pictures'
import { PAPER } from '../../../src-core/figures/figure'
import { formatNumber } from '../../../src-core/units/format'
import { withIsolatedNames } from '../../../src-core/letters/isolated'
import { planProject } from '../../../src-core/plan'
import { nameOfFile } from '../../documents/session/keeping-words'
import { CommandEnd, EXIT } from '../exit-codes'
import { readFonts, withFontOption } from '../font-files'
import { oneOf, readGroundOption, readPixelsOption } from '../options'
import type { AddCommand } from '../program'
import { exitFor, planToDraw } from '../project-file'
import { demandAlike, writeOut } from '../write-out'

interface Options {
  readonly out: string
  readonly of?: PictureSubject
  readonly motif?: string
  readonly colourway?: string
  readonly width: number
  readonly transparent?: boolean
  readonly ground?: string
  readonly font?: readonly string[]
}

/** `petalyard picture`: the whole, a motif, a chart or the key as PNG or SVG. */
export const addPicture: AddCommand = (program, around, end) => {
  withFontOption(program.command('picture'))
    .summary('write a picture as PNG or SVG')
    .description(
      'Writes a picture of the project at a chosen size: the whole as it looks, the map with its numbers, one motif, its symbol chart, or the key of letters and yarns.',
    )
    .argument('<file>', 'project file')
    .requiredOption('-o, --out <picture>', 'the .png or .svg to write; one that is there is replaced')
    .addOption(
      oneOf(new Option('--of <what>', 'what it shows (else the whole, with --motif that motif)'), [
        ...PICTURE_SUBJECTS,
      ]),
    )
    .option('--motif <id>', 'which motif, for a picture or a chart of one')
    .option('--colourway <id>', 'which colourway the motif is shown in (else its first)')
    .option('--width <pixels>', 'pixels across; the height follows', readPixelsOption, PICTURE_WIDTH.usual)
    .option('--transparent', 'nothing behind it (else white)')
    .option('--ground <colour>', 'a colour behind it: "#f4efe6"', readGroundOption)
    .addHelpText(
      'after',
      '\nExamples:\n  petalyard picture throw.petalyard --out throw.png --width 2400\n  petalyard picture throw.petalyard --of chart --motif flower --out chart.svg --transparent',
    )
    .action(async (file: string, options: Options) => {
      const { out, motif, colourway, width, transparent, ground } = options
      const format = formatOf(out)
      if (transparent && ground !== undefined)
        throw new CommandEnd(EXIT.wrongUse, '--transparent leaves no ground: leave --ground out.')
      const of = options.of ?? ((motif ?? colourway) ? 'motif' : 'whole')
      const fonts = await readFonts(options.font ?? [])
      const covers = fonts.map((font) => font.covers)
      const made = await planToDraw(file, out, 'picture', around, undefined, covers)
      if (made.ended !== undefined) return end(made.ended)
      await demandAlike(out, format === 'png' ? 'PNG' : 'SVG')
      const { plan, project } = made
      const printed = fonts.length > 0 ? withIsolatedNames(project) : project
      const drawn = printed === project ? plan : planProject(printed, covers)
      // Loaded only here: the text face and what draws pixels are a large part of the program.
      const { NoSuchPictureError, renderPicture } = await import('../../paper/picture')
      // What has no title is called by its file.
      const title = drawn.settled.title || nameOfFile(basename(file))
      const choice = { of, format, width, ground: transparent ? null : (ground ?? PAPER), motif, colourway }
      const drawing = renderPicture({ ...drawn, settled: { ...drawn.settled, title } }, choice, fonts)
      const picture = await drawing.catch((error: unknown) => {
        throw error instanceof NoSuchPictureError ? new CommandEnd(EXIT.wrongUse, `${error.message}.`) : error
      })
      await writeOut(out, picture.bytes)
      const size = `${picture.width} × ${picture.height} pixels`
      around.out(`Wrote ${out}: ${size}, ${formatNumber(picture.bytes.length / 1000)} kB\n`)
      return end(exitFor(plan.findings))
    })
}

/** What the name of the file asks for. */
function formatOf(out: string): PictureFormat {
  const ending = extname(out).toLowerCase()
  if (ending === '.png') return 'png'
  if (ending === '.svg') return 'svg'
  throw new CommandEnd(EXIT.wrongUse, `--out ${out} must end in .png or .svg.`)
}
