/** Switches the terms of a project: every stitch name in it is brought over, so that it means the same work. */
import type { Project, StitchGauge, Terms } from '../../../shared-types/project'
import { termWord, translateStitch } from '../../../src-core/stitches/terms'

const gaugeIn = <Gauge extends StitchGauge | undefined>(gauge: Gauge, from: Terms, to: Terms): Gauge => {
  if (!gauge) return gauge
  const heights = gauge.heights
  return {
    ...gauge,
    ...(gauge.stitch ? { stitch: translateStitch(gauge.stitch, from, to) ?? gauge.stitch } : {}),
    ...(heights
      ? {
          heights: Object.fromEntries(
            Object.entries(heights).map(([stitch, mm]) => [translateStitch(stitch, from, to) ?? stitch, mm]),
          ),
        }
      : {}),
  }
}

/** "sl st", "ch-5 sp", "5-ch sp", or a word that may be a stitch. */
const WORDS = /\bch-(\d+)(?= sps?\b)|\b(\d+)-ch(?= sps?\b)|\bsl sts?\b|[A-Za-z]+(?:\d+tog)?/g

/** A written round in other terms; what is no stitch stays as it is written. */
export function roundIn(text: string, from: Terms, to: Terms): string {
  if (from === to) return text
  return text.replace(WORDS, (word, us?: string, uk?: string) => {
    const chains = us ?? uk
    if (chains) return to === 'UK' ? `${chains}-ch` : `ch-${chains}`
    if (/^(sk|skip|miss)$/i.test(word)) return termWord('skipShort', to)
    if (/^(sl sts?|ss)$/i.test(word)) return termWord('slipStitch', to)
    return translateStitch(word, from, to) ?? word
  })
}

/** The project in other terms. */
export function setTerms(project: Project, to: Terms): Project {
  const from = project.terms ?? 'US'
  if (from === to) return project
  const layout = project.layout
  const edging = layout?.kind === 'blanket' ? layout.edging : undefined
  return {
    ...project,
    terms: to,
    ...(project.gauge ? { gauge: gaugeIn(project.gauge, from, to) } : {}),
    ...(project.motifs
      ? {
          motifs: project.motifs.map((motif) => ({
            ...motif,
            ...(motif.gauge ? { gauge: gaugeIn(motif.gauge, from, to) } : {}),
            ...(motif.kind === 'rounds' && motif.rounds
              ? { rounds: motif.rounds.map((round) => ({ ...round, work: roundIn(round.work, from, to) })) }
              : {}),
          })),
        }
      : {}),
    ...(layout?.kind === 'blanket' && edging?.rounds
      ? {
          layout: {
            ...layout,
            edging: {
              ...edging,
              rounds: edging.rounds.map((stitch) => translateStitch(stitch, from, to) ?? stitch),
            },
          },
        }
      : {}),
  }
}
