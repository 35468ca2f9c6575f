/** The picture that a project keeps with a motif, without the window: drawn anew from its pixels, and small. */
import type { KeptPhoto } from '../../shared-types/project'
import { KEPT_PIXELS, KEPT_QUALITY, photoOf } from '../../src-core/photo/kept'
import { reducedBy } from '../../src-core/photo/picture'
import type { Picture } from '../../src-core/photo/picture'
import type { SheetChoice } from '../../src-core/photo/sheet-sizes'
import { encodeJpeg } from './codecs'

/** In ever fewer pixels until the file takes it; null where it never does. */
export async function keptPhoto(picture: Picture, sheet: SheetChoice): Promise<KeptPhoto | null> {
  let last = 0
  for (const most of KEPT_PIXELS) {
    const step = Math.max(1, Math.ceil(Math.max(picture.width, picture.height) / most))
    if (step === last) continue
    last = step
    const kept = photoOf(await encodeJpeg(reducedBy(picture, step), KEPT_QUALITY), sheet)
    if (kept) return kept
  }
  return null
}
