/** A logo as the house style keeps it: PNG or SVG drawn anew on a canvas, so that nothing but its looks is kept. */
import { HOUSE_LIMITS, LOGO_PIXELS } from '../../shared-types/house'
import { drawingTrouble } from '../../src-core/geometry/drawing-cost'
import type { DrawingTrouble } from '../../src-core/geometry/drawing-cost'

/** Bytes of a file that is looked at: our own choice. */
const LARGEST = 5 * 2 ** 20
const KINDS = ['image/png', 'image/svg+xml']

/** Why a file is no logo, for people. */
export class LogoProblem extends Error {}

/** What keeps a drawing from being drawn: it would take the window for longer than anybody waits. */
const TROUBLES: Readonly<Record<DrawingTrouble, string>> = {
  'no-xml': 'This picture cannot be read.',
  entities: 'This drawing declares entities, which are not read.',
  attributes: 'An element of this drawing has too many attributes.',
  'web-page': 'This drawing has a web page in it.',
  'drawing-within': 'This drawing has another one in it as a picture.',
  'too-deep': 'The groups of this drawing are too deep in each other.',
  effect:
    'This drawing has an effect that takes too long to draw (noise, thickening or sharpening): save it as a PNG.',
  'too-much': 'This drawing has too many parts, or too many effects, for a logo.',
}

async function drawn(file: Blob): Promise<HTMLImageElement> {
  const address = URL.createObjectURL(file)
  try {
    const image = new Image()
    image.src = address
    await image.decode()
    return image
  } catch {
    throw new LogoProblem('This picture cannot be read.')
  } finally {
    URL.revokeObjectURL(address)
  }
}

/** The drawing as it was read and counted, in this writing alone: a file may say that it is in another one. */
async function countedDrawing(file: File): Promise<Blob> {
  const svg = (await file.text()).replace(/^\s*<\?xml[^>]*\?>/, '')
  const trouble = drawingTrouble(svg)
  if (trouble) throw new LogoProblem(TROUBLES[trouble])
  return new Blob([svg], { type: 'image/svg+xml' })
}

/** The picture as the data URL of a PNG. Throws LogoProblem where it cannot be taken. */
export async function takeLogo(file: File): Promise<string> {
  if (!KINDS.includes(file.type)) throw new LogoProblem('A logo is a PNG or an SVG.')
  if (file.size > LARGEST) throw new LogoProblem('This picture is larger than 5 MB.')
  const image = await drawn(file.type === 'image/png' ? file : await countedDrawing(file))
  const { naturalWidth: width, naturalHeight: height } = image
  if (!(width > 0 && height > 0)) throw new LogoProblem('This picture has no size.')
  const whole = LOGO_PIXELS / Math.max(width, height)
  // Drawings may grow to what paper shows, pixels may not.
  const most = file.type === 'image/png' ? Math.min(1, whole) : whole
  // What is too large in bytes (a photo) gets fewer pixels until it fits.
  for (const share of [1, 0.7, 0.5, 0.35]) {
    const scale = most * share
    const canvas = document.createElement('canvas')
    canvas.width = Math.max(1, Math.round(width * scale))
    canvas.height = Math.max(1, Math.round(height * scale))
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
    const logo = canvas.toDataURL('image/png')
    if (logo.length <= HOUSE_LIMITS.logo) return logo
  }
  throw new LogoProblem('This picture is too large for a logo.')
}
