/** A font file as the host takes it. */
import { FONT_LIMITS } from '../../shared-types/fonts'

/** Why a file is no font, for people. */
export class FontFileProblem extends Error {}

/** Its bytes in base64. Throws FontFileProblem where it cannot be read, or is too large. */
export async function fontData(file: File): Promise<string> {
  if (file.size > FONT_LIMITS.bytes)
    throw new FontFileProblem(`This font is larger than ${FONT_LIMITS.bytes / 1e6} MB.`)
  return new Promise((resolve, reject) => {
    const reader = new FileReader()
    const fail = () => reject(new FontFileProblem('This file cannot be read.'))
    reader.onerror = fail
    reader.onload = () =>
      typeof reader.result === 'string' ? resolve(reader.result.replace(/^[^,]*,/, '')) : fail()
    reader.readAsDataURL(file)
  })
}
