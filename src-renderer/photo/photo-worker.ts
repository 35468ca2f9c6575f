/** The worker that reads and measures pictures. The platform decodes them, upright, in its own sandbox. */
import { KEPT_PIXELS, KEPT_QUALITY, photoOf } from '../../src-core/photo/kept'
import { measurePhoto } from '../../src-core/photo/photo'
import type { Picture } from '../../src-core/photo/picture'
import { damaged, demandReadable, demandSize, PictureError } from '../../src-core/photo/picture-file'
import type { SheetChoice } from '../../src-core/photo/sheet-sizes'
import type { PhotoQuestion, PhotoReply } from './finder'

/** Pixels along the longer side of what is shown: as many as a large window has room for. */
const SHOWN = 1600

let picture: Picture | null = null

async function open(file: Blob): Promise<PhotoReply> {
  picture = null
  const bytes = new Uint8Array(await file.arrayBuffer())
  demandReadable(bytes)
  let decoded: ImageBitmap
  try {
    decoded = await createImageBitmap(new Blob([bytes]))
  } catch {
    throw damaged()
  }
  const { width, height } = decoded
  demandSize(width, height)
  const canvas = new OffscreenCanvas(width, height)
  const pen = canvas.getContext('2d', { willReadFrequently: true })
  if (!pen) throw damaged()
  // What shines through lies on white.
  pen.fillStyle = '#ffffff'
  pen.fillRect(0, 0, width, height)
  pen.drawImage(decoded, 0, 0)
  picture = { width, height, data: pen.getImageData(0, 0, width, height).data }
  const by = Math.min(1, SHOWN / Math.max(width, height))
  const shown = await createImageBitmap(decoded, {
    resizeWidth: Math.max(1, Math.round(width * by)),
    resizeHeight: Math.max(1, Math.round(height * by)),
    resizeQuality: 'medium',
  })
  decoded.close()
  return { opened: { width, height, shown } }
}

/** The picture drawn anew, so that nothing of its file is kept but its looks, in ever fewer pixels until it is small enough. */
async function keep(sheet: SheetChoice): Promise<PhotoReply> {
  if (!picture) throw damaged()
  const { width, height, data } = picture
  const whole = await createImageBitmap(new ImageData(new Uint8ClampedArray(data), width, height))
  try {
    for (const most of KEPT_PIXELS) {
      const by = Math.min(1, most / Math.max(width, height))
      const [wide, tall] = [width, height].map((side) => Math.max(1, Math.round(side * by))) as [
        number,
        number,
      ]
      const small = await createImageBitmap(whole, {
        ...{ resizeWidth: wide, resizeHeight: tall, resizeQuality: 'high' },
      })
      const canvas = new OffscreenCanvas(wide, tall)
      canvas.getContext('2d')?.drawImage(small, 0, 0)
      small.close()
      const jpeg = await canvas.convertToBlob({ type: 'image/jpeg', quality: KEPT_QUALITY / 100 })
      const kept = photoOf(new Uint8Array(await jpeg.arrayBuffer()), sheet)
      if (kept) return { kept }
    }
    return { kept: null }
  } finally {
    whole.close()
  }
}

async function replyTo(question: PhotoQuestion, come: (share: number) => void): Promise<PhotoReply> {
  try {
    if ('open' in question) return await open(question.open)
    if ('keep' in question) return await keep(question.keep)
    if (!picture) throw damaged()
    return { answer: measurePhoto(picture, { ...question.measure, progress: (_, share) => come(share) }) }
  } catch (error) {
    return error instanceof PictureError ? { refused: error.message } : { failed: String(error) }
  }
}

/** One after the other: a question about a picture waits until it was read. */
let before: Promise<void> = Promise.resolve()
addEventListener('message', ({ data }: MessageEvent<{ id: number; question: PhotoQuestion }>) => {
  before = before.then(async () => {
    const come = (share: number) => postMessage({ id: data.id, reply: { come: share } })
    const reply = await replyTo(data.question, come)
    const transfer = 'opened' in reply ? [reply.opened.shown] : []
    postMessage({ id: data.id, reply }, { transfer })
  })
})
