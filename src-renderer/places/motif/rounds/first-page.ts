/** The first pattern that is read into a project with nothing in it: the project takes its terms and its units. */
import type { Project } from '../../../../shared-types/project'
import { isBlank } from '../../../../src-core/motif/rounds/account'
import type { TakenApart } from '../../../../src-core/notation/take-apart'
import { takeApart } from '../../../../src-core/notation/take-apart'
import { readPage } from '../../../../src-core/page/read-page'
import { unitsOf } from '../../../../src-core/page/units-of-page'
import { blanketOf } from '../../../../src-core/plans/layouts'
import { settled } from '../../../../src-core/settled'
import { setUnits } from '../../../state/edits/motif'
import { setTerms } from '../../../state/edits/terms'

/** Whether nothing in a project is in words of any terms yet: its one motif is still to be written. */
export function isUntouched(project: Project): boolean {
  const { motifs = [], gauge, notes = '' } = project
  const [motif, ...others] = motifs
  const edging = blanketOf(project)?.edging?.rounds ?? []
  return (
    others.length === 0 &&
    motif?.kind === 'rounds' &&
    isBlank(motif) &&
    (motif.special ?? '').trim() === '' &&
    (motif.instructions ?? '').trim() === '' &&
    motif.gauge?.stitch === undefined &&
    gauge?.stitch === undefined &&
    notes.trim() === '' &&
    edging.length === 0
  )
}

/** An untouched project in the terms and units of the pattern that is read into it, and the rounds in these; others stay. */
export function inTermsOf(project: Project, taken: TakenApart): { project: Project; taken: TakenApart } {
  if (!isUntouched(project) || taken.termsUnclear) return { project, taken }
  const before = settled(project)
  const units = unitsOf(readPage(taken.text, taken.terms)) ?? before.units
  const inTerms = setTerms(project, taken.terms)
  return {
    project: units === before.units ? inTerms : setUnits(inTerms, units),
    taken: before.terms === taken.terms ? taken : takeApart(taken.text, taken.terms, taken.terms),
  }
}

/** " The project is in UK terms and in cm now, as the pattern is."; of another one that its rounds were put into its terms. */
export function termsWords(before: Project, after: Project, { terms, termsUnclear }: TakenApart): string {
  const [from, to] = [settled(before), settled(after)]
  const changed = [
    ...(from.terms === to.terms ? [] : [`in ${to.terms} terms`]),
    ...(from.units === to.units ? [] : [to.units === 'metric' ? 'metric' : 'in inches']),
  ]
  if (changed.length > 0) return ` The project is ${changed.join(' and ')} now, as the pattern is.`
  return terms === to.terms || termsUnclear
    ? ''
    : ` Written in ${terms} terms; they stand here in ${to.terms} terms, which this project uses.`
}
