/** M18: how much a motif that was measured before blocking grows. */
import type { Colourway, Motif, Yarn } from '../../shared-types/project'
import { THREAD_LACE_GROWTH, THREAD_METRES_PER_100_G } from './constants'

/** Growth as a share: cotton thread opens up in blocking, everything else is taken to keep its size. */
export function blockingGrowth(
  motif: Motif,
  colourways: readonly Colourway[],
  yarns: readonly Yarn[],
): number {
  const used = new Set(
    colourways.filter((way) => way.motif === motif.id).flatMap((way) => Object.values(way.yarns ?? {})),
  )
  const own = yarns.filter((yarn) => used.has(yarn.id))
  return own.length > 0 && own.every(isCottonThread) ? THREAD_LACE_GROWTH : 0
}

function isCottonThread(yarn: Yarn): boolean {
  const cotton = /cotton/i.test(yarn.fibre ?? '')
  const metres = yarn.ballGrams && yarn.ballMetres ? (100 * yarn.ballMetres) / yarn.ballGrams : 0
  return cotton && metres >= THREAD_METRES_PER_100_G
}
