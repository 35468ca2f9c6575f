/** Fonts for other scripts, named on the command line or by a house style. */
import { basename } from 'node:path'
import type { Command } from 'commander'
import { FONT_LIMITS } from '../../shared-types/fonts'
import type { ChosenFont } from '../paper/pdf/fonts/chosen'
import { CommandEnd, EXIT } from './exit-codes'
import { fileBytes } from './text-file'

const gather = (file: string, before: readonly string[] = []): string[] => [...before, file]

/** Adds `--font FILE`, which may be given several times. */
export const withFontOption = (command: Command): Command =>
  command.option(
    '--font <file>',
    `a font for other scripts (.ttf, .otf; of a .ttc FILE#2 is its second); up to ${FONT_LIMITS.count}, each with a --font of its own`,
    gather,
  )

/** "fonts.ttc#2" as file and number; without a number where none is given. */
function placeOf(text: string): { readonly path: string; readonly face: number | null } {
  const found = /^(.+)#(\d{1,4})$/.exec(text)
  return found ? { path: found[1]!, face: Number(found[2]) } : { path: text, face: null }
}

/** Reads them in their order; ends the command where one cannot or may not be used. */
export async function readFonts(files: readonly string[]): Promise<readonly ChosenFont[]> {
  if (files.length === 0) return []
  if (files.length > FONT_LIMITS.count)
    throw new CommandEnd(
      EXIT.wrongUse,
      `${files.length} fonts are too many: ${FONT_LIMITS.count} can be used at once.`,
    )
  // Loaded only here: most sheets need no other font.
  const { ChosenFont, FontRefused } = await import('../paper/pdf/fonts/chosen')
  const fonts: ChosenFont[] = []
  for (const file of files) {
    const { path, face } = placeOf(file)
    const bytes = await fileBytes(path, FONT_LIMITS.bytes, `a font (${FONT_LIMITS.bytes / 1e6} MB at most)`)
    try {
      fonts.push(ChosenFont.read(bytes, face))
    } catch (error) {
      if (!(error instanceof FontRefused)) throw error
      throw new CommandEnd(EXIT.unreadable, `${basename(path)} cannot be used: ${error.message}.`)
    }
  }
  return fonts
}
