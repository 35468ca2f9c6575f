/** Pictures of a project at a chosen size: PNG and SVG from the draw lists that paper and window show. */
import type { Plan } from '../../shared-types/plan'
import type { MotifAccount } from '../../shared-types/plan'
import type { PictureChoice } from '../../shared-types/pictures'
import type { Figure } from '../../src-core/figures/figure'
import {
  keyPicture,
  motifPicture,
  pictureColourways,
  pictureMotif,
} from '../../src-core/figures/motif-picture'
import { framedPicture } from '../../src-core/figures/picture-frame'
import { projectSentence, sentenceText } from '../../src-core/figures/sentence'
import { wholePicture } from '../../src-core/figures/whole-picture'
import { formatNumber } from '../../src-core/units/format'
import { chartPicture } from './chart'
import type { ChosenFont } from './pdf/fonts/chosen'
import type { Faces } from './pdf/faces'
import { measureWith, readFaces } from './pdf/faces'
import { svgToPng } from './png'
import { figureToSvg } from './svg'

/** What was asked for cannot be drawn; the message says why. */
export class NoSuchPictureError extends Error {}

/** Pixels of the largest picture: about 160 MB while it is drawn (our own choice). */
const PIXELS_AT_MOST = 40e6

interface Drawn {
  readonly figure: Figure
  readonly title: string
}

export interface Picture {
  readonly bytes: Uint8Array
  /** Pixels. */
  readonly width: number
  readonly height: number
}

/** Draws the picture; throws NoSuchPictureError where the plan has no such thing, or it is too large. */
export async function renderPicture(
  plan: Plan,
  choice: PictureChoice,
  fonts: readonly ChosenFont[] = [],
): Promise<Picture> {
  const faces = readFaces(fonts)
  const { figure, title } = drawn(plan, choice, faces)
  if (!(figure.width > 0 && figure.height > 0)) throw new NoSuchPictureError('there is nothing to draw yet')
  const frame = framedPicture(figure, choice.width, choice.ground)
  const { width, height } = frame
  if (width * height > PIXELS_AT_MOST) {
    const most = Math.floor(Math.sqrt((PIXELS_AT_MOST * width) / height))
    throw new NoSuchPictureError(
      `${formatNumber(width)} × ${formatNumber(height)} pixels are too many; it can be ${formatNumber(most)} pixels wide`,
    )
  }
  const svg = figureToSvg(frame.figure, title, faces, '', { width, height })
  const bytes = choice.format === 'svg' ? new TextEncoder().encode(svg) : await svgToPng(svg, width)
  return { bytes, width, height }
}

function drawn(plan: Plan, choice: PictureChoice, faces: Faces): Drawn {
  const whole = sentenceText(projectSentence(plan))
  switch (choice.of) {
    case 'whole':
      return { figure: wholePicture(plan, { look: 'colour', plain: true }), title: whole }
    case 'map':
      return { figure: wholePicture(plan, { look: 'colour', numbered: true }), title: whole }
    case 'key':
      return { figure: keyPicture(plan, measureWith(faces)), title: `${whole}: key` }
    case 'motif':
      return motifDrawn(plan, choice)
    case 'chart':
      return chartDrawn(plan, choice, faces)
  }
}

const listed = (ids: readonly string[]): string => ids.join(', ') || 'none'

function wantedMotif(plan: Plan, id: string | undefined): MotifAccount {
  const found = pictureMotif(plan, id)
  if (found) return found
  const ids = [...new Set(pictureColourways(plan).map(({ motif }) => motif.id))]
  throw new NoSuchPictureError(`no motif ${id ?? ''} is placed; there are: ${listed(ids)}`)
}

function motifDrawn(plan: Plan, { motif, colourway }: PictureChoice): Drawn {
  const of = pictureColourways(plan).find(({ mark }) => mark.id === colourway)
  if (colourway !== undefined && !of) {
    const ids = pictureColourways(plan).map(({ mark }) => mark.id)
    throw new NoSuchPictureError(`there is no colourway ${colourway} here; there are: ${listed(ids)}`)
  }
  const account = wantedMotif(plan, motif ?? of?.motif.id)
  if (of && of.motif.id !== account.id)
    throw new NoSuchPictureError(`colourway ${of.mark.id} is of motif ${of.motif.id}, not of ${account.id}`)
  const mark = of?.mark ?? pictureColourways(plan).find((each) => each.motif.id === account.id)?.mark ?? null
  return { figure: motifPicture(account, mark), title: nameOf(plan, account.id) }
}

function chartDrawn(plan: Plan, { motif }: PictureChoice, faces: Faces): Drawn {
  const { settled } = plan
  const id = motif ?? wantedMotif(plan, undefined).id
  const found = settled.motifs.find((each) => each.id === id)
  if (!found)
    throw new NoSuchPictureError(
      `there is no motif ${id}; there are: ${listed(settled.motifs.map((each) => each.id))}`,
    )
  if (found.kind !== 'rounds')
    throw new NoSuchPictureError(`motif ${id} is measured; a chart needs written rounds`)
  const figure = chartPicture({ settled, motif: found }, measureWith(faces))
  if (!figure) throw new NoSuchPictureError(`the rounds of ${id} could not be placed, so there is no chart`)
  return { figure, title: `${nameOf(plan, id)}: symbol chart` }
}

const nameOf = ({ settled }: Plan, id: string): string =>
  settled.motifs.find((motif) => motif.id === id)?.name?.trim() || id
