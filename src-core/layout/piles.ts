/** Piles of motifs that are made already, by colourway: an arrangement of them keeps to how many there are of each. */
import type { FitArrangement } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { finding } from '../findings/finding'
import type { Finding } from '../../shared-types/finding'
import { blanketOf } from '../plans/layouts'
import type { Planner } from '../plans/planner'
import { isAddition } from './addresses'
import { layoutOfFit } from './taken'

/** How many motifs there are of each colourway, by its id. */
export type Piles = Readonly<Record<string, number>>

/** How many motifs there are in all. */
export const motifsIn = (piles: Piles): number => Object.values(piles).reduce((sum, many) => sum + many, 0)

/**
 * The project with its colours chosen from the piles, and from nothing else: no more of a colourway than there are. What
 * was painted or kept where motifs stood before is free again; fillers and half motifs stay as they are.
 */
export function withPiles(project: Project, piles: Piles): Project {
  const layout = blanketOf(project)
  if (!layout) return project
  const { fill, painted, held, ...cells } = layout.cells ?? {}
  const there = Object.keys(piles).filter((id) => piles[id]! > 0)
  const before = (fill?.colourways ?? []).filter((id) => there.includes(id))
  const colourways = [...before, ...there.filter((id) => !before.includes(id))]
  // One colourway in all of them, or none yet, is no way to lay several piles.
  const isPlain = fill?.pattern === undefined || fill.pattern === 'one'
  const pattern = isPlain && there.length > 1 ? 'scatter' : (fill?.pattern ?? 'one')
  const { withinStash: _, mostGrams: __, ...kept } = fill ?? {}
  return {
    ...project,
    layout: {
      ...layout,
      cells: {
        ...cells,
        ...additionsOf('painted', painted),
        ...additionsOf('held', held),
        fill: { ...kept, pattern, colourways, most: { ...piles } },
      },
    },
  }
}

type ByAddress = Readonly<Record<string, string>> | undefined

function additionsOf(name: 'painted' | 'held', of: ByAddress) {
  const own = Object.entries(of ?? {}).filter(([id]) => isAddition(id))
  return own.length > 0 ? { [name]: Object.fromEntries(own) } : {}
}

/** Motifs of a colourway beyond those that there are, all colourways together. */
export const beyondPiles = (byColourway: Readonly<Record<string, number>>, piles: Piles): number =>
  Object.entries(byColourway).reduce((sum, [id, many]) => sum + Math.max(0, many - (piles[id] ?? 0)), 0)

/** Arrangements told with the colourways that they take, those that keep to the piles first. */
export function byPiles(
  project: Project,
  fits: readonly FitArrangement[],
  piles: Piles,
  planner: Planner,
): { readonly arrangements: FitArrangement[]; readonly findings: readonly Finding[] } {
  const layout = blanketOf(project)
  if (!layout) return { arrangements: [...fits], findings: [] }
  const told = fits.map((fit): FitArrangement => {
    const laid = { ...project, layout: { ...layout, ...layoutOfFit(project, fit), target: undefined } }
    const { byColourway } = (planner.numbers(laid) ?? planner.plan(laid)).counts
    const beyond = beyondPiles(byColourway, piles)
    return { ...fit, byColourway, ...(beyond > 0 && { beyond }) }
  })
  const kept = told.filter(({ beyond }) => beyond === undefined)
  const others = told.filter(({ beyond }) => beyond !== undefined).sort((a, b) => a.beyond! - b.beyond!)
  const least = others[0]?.beyond
  const isNone = kept.length === 0 && least !== undefined
  return {
    arrangements: [...kept, ...others],
    findings: isNone ? [finding('layout/fit-piles', 'layout.cells.fill', { count: least })] : [],
  }
}
