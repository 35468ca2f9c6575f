/** Every motif in written rounds that the tree has: examples, whole patterns, and those of the chart's own tests. */
import { readdirSync, readFileSync } from 'node:fs'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { takeApart } from '../../../src-core/notation/take-apart'
import { loadPatterns } from '../../outside/whole-patterns'
import { CHARTED, SAMPLER } from './chart-motifs'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }

/** Every motif in written rounds of the examples, with its project's gauge. */
export function examplesInRounds(): RoundsMotif[] {
  const folder = new URL('../../../examples/', import.meta.url)
  return readdirSync(folder)
    .filter((name) => name.endsWith('.petalyard'))
    .flatMap((name) => {
      const project = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Project
      return (project.motifs ?? []).flatMap((motif) =>
        motif.kind === 'rounds'
          ? [{ ...motif, id: `${name.split('.')[0]} ${motif.id}`, gauge: motif.gauge ?? project.gauge }]
          : [],
      )
    })
}

/** Whole patterns as a project takes them in. Those with a slip are there to be told, not drawn. */
const patterns = (name: string): RoundsMotif[] =>
  loadPatterns(name)
    .filter(({ kind }) => kind !== 'mistake')
    .map(({ id, text, terms }) => {
      const { rounds, foundation, special } = takeApart(text, 'US', terms)
      return {
        id: `${name} ${id}`,
        kind: 'rounds',
        gauge: GAUGE,
        ...(foundation && { foundation }),
        ...(special && { special }),
        rounds: rounds.map(({ work }) => ({ work })),
      }
    })

export const corpus = (): RoundsMotif[] => [
  ...CHARTED,
  SAMPLER,
  ...examplesInRounds(),
  ...['patterns', 'patterns-own'].flatMap(patterns),
]
