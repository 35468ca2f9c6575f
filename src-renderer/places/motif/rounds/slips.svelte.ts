/** Numbers of a motif's rounds that would work out if they were others: asked for beside the window, when the hand rests. */
import type { Project, RoundsMotif } from '../../../../shared-types/project'
import type { RoundSlip } from '../../../../src-core/motif/rounds/read-motif'
import type { Background } from '../../../state/background'
import type { RoundsReading } from './reading'

interface Asked {
  readonly rounds: RoundsMotif['rounds']
  readonly slips: readonly RoundSlip[]
}

/** `of` gives the slips of one entry, none while the rounds are others than those that were asked for. */
export function watchSlips(
  background: Background,
  now: () => { readonly project: Project; readonly motif: RoundsMotif; readonly stood: RoundsReading },
): { of(entry: number): readonly RoundSlip[] } {
  let known = $state.raw<Asked | null>(null)
  $effect(() => {
    const { project, motif, stood } = now()
    const isWrong = stood.entries.some(({ findings }) =>
      findings.some(({ finding }) => finding.severity === 'error'),
    )
    if (!isWrong || known?.rounds === motif.rounds) return
    // An offer beside what is told already: where it finds no answer, the rest stands as it is.
    background.slips(project, motif.id).then(
      (slips) => {
        if (slips) known = { rounds: motif.rounds, slips }
      },
      () => undefined,
    )
  })
  return {
    of: (entry) =>
      known !== null && known.rounds === now().motif.rounds
        ? known.slips.filter((slip) => slip.entry === entry)
        : [],
  }
}
