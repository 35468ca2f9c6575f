/**
 * The house style as a file: JSON with `name`, `address`, `accent`, `logo` (a PNG or SVG beside it), `titlePage`, pages
 * to `leaveOut`, and `fonts` for other scripts (files beside it).
 */
import { basename, dirname, join, resolve } from 'node:path'
import { z } from 'zod'
import { houseSchema, NO_HOUSE } from '../../shared-types/house'
import type { House } from '../../shared-types/house'
import { OPTIONAL_PAGES } from '../../shared-types/sheets'
import { CommandEnd, EXIT } from './exit-codes'
import { fileBytes, textOf } from './text-file'

/** Bytes of a logo file and of the house file itself: our own choice. */
const LARGEST = { logo: 2 ** 21, file: 2 ** 16 } as const

const pathSchema = z.string().min(1).max(4_096)
const fileSchema = houseSchema.extend({ logo: z.string().max(4_096), fonts: z.array(pathSchema) }).partial()

/** What a house file says. */
export interface HouseFile {
  readonly house: House
  /** Files of fonts for other scripts. */
  readonly fonts: readonly string[]
}

const wrong = (file: string, why: string) => new CommandEnd(EXIT.unreadable, `${basename(file)}: ${why}`)

/** Reads the file and the logo that it names, which is looked for beside it. Ends the command where either is bad. */
export async function readHouse(file: string): Promise<HouseFile> {
  const text = textOf(file, await fileBytes(file, LARGEST.file, 'a house style'))
  let given: unknown
  try {
    given = JSON.parse(text)
  } catch {
    throw wrong(file, 'this is no JSON.')
  }
  const read = fileSchema.safeParse(given)
  if (!read.success) throw wrong(file, whyNot(read.error))
  const { logo, fonts = [], ...house } = read.data
  const beside = dirname(file)
  return {
    house: { ...NO_HOUSE, ...house, logo: logo ? await readLogo(join(beside, logo), logo) : '' },
    fonts: fonts.map((font) => resolve(beside, font)),
  }
}

async function readLogo(path: string, name: string): Promise<string> {
  const bytes = await fileBytes(path, LARGEST.logo, 'a logo')
  // Loaded only here: drawing takes a large module, and most sheets have no logo.
  const { normalLogo } = await import('../paper/logo')
  try {
    return await normalLogo(bytes)
  } catch (error) {
    throw wrong(name, `the logo cannot be used: ${error instanceof Error ? error.message : String(error)}.`)
  }
}

/** The first thing that is wrong, by its name. */
function whyNot({ issues }: z.ZodError): string {
  const [first] = issues
  const name = first?.path.join('.') ?? ''
  if (first?.code === 'unrecognized_keys')
    return `"${first.keys[0]}" is none of name, address, accent, logo, titlePage, leaveOut, fonts.`
  if (name.startsWith('fonts')) return '"fonts" is a list of font files, as ["hebrew.ttf"].'
  if (name.startsWith('leaveOut'))
    return `"leaveOut" is a list of ${OPTIONAL_PAGES.join(', ')}, as ["progress"].`
  if (name === 'accent') return 'the accent is six digits behind a #, as "#2f5d50".'
  return name === '' ? 'this is no house style.' : `"${name}" is not as it has to be (${first!.message}).`
}
