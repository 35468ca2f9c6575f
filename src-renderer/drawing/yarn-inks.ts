/** From colourways and yarns to the colours in which a motif's layers are filled, lined and lettered. */
import { formatHex, interpolate, parse, wcagContrast, wcagLuminance } from 'culori'
import type { MotifAccount } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'

export interface LayerInk {
  readonly fill: string
  /** Contours and lines on it: darker than the yarn, or lighter where the yarn is nearly black. */
  readonly line: string
  /** Letters on it: black or white, whichever reads better. */
  readonly text: string
}

export interface ColourwayInk {
  readonly letter: string
  /** One for each layer of the motif, the outermost first. */
  readonly layers: readonly LayerInk[]
}

export type Inks = ReadonlyMap<string, ColourwayInk>

/** Under this relative luminance a yarn takes light lines (chosen by eye on both grounds). */
const DARK_YARN = 0.06
/** How far a line's colour lies from the yarn's towards black or white. */
const LINE_SHARE = 0.32

const inkCache = new Map<string, LayerInk>()

/** Fill, line and letter colours for one yarn; one that cannot be read, or is missing, takes `bare`. */
export function layerInk(colour: string | undefined, bare: string): LayerInk {
  const key = `${colour ?? ''} ${bare}`
  const known = inkCache.get(key)
  if (known) return known
  const fill = formatHex(parse(colour ?? '')) ?? formatHex(parse(bare)) ?? '#cccccc'
  const towards = wcagLuminance(fill) < DARK_YARN ? '#ffffff' : '#000000'
  const ink: LayerInk = {
    fill,
    line: formatHex(interpolate([fill, towards], 'oklab')(LINE_SHARE)),
    text: wcagContrast(fill, '#ffffff') >= wcagContrast(fill, '#141210') ? '#ffffff' : '#141210',
  }
  inkCache.set(key, ink)
  return ink
}

/**
 * Inks by colourway id; '' stands for motifs without one. A slot without a yarn of its own is drawn bare.
 */
export function inksOf(
  colourways: Project['colourways'],
  yarns: Project['yarns'],
  account: MotifAccount | null,
  bare: string,
): Inks {
  const colourOf = new Map((yarns ?? []).map((yarn) => [yarn.id, yarn.colour]))
  const layers = account?.layers ?? []
  const inks = new Map<string, ColourwayInk>()
  inks.set('', { letter: '', layers: layers.map(() => layerInk(undefined, bare)) })
  for (const way of colourways ?? []) {
    const own = layers.map(({ slot }) => layerInk(colourOf.get(way.yarns?.[slot] ?? ''), bare))
    inks.set(way.id, { letter: way.code ?? '', layers: own })
  }
  return inks
}
