/** Words for what a page proposes. */
import type { MotifAccount } from '../../shared-types/plan'
import type { Motif, Project, StitchGauge, Terms, UnitSystem } from '../../shared-types/project'
import { capital, counted, listed, plural } from '../figures/words'
import { leading } from '../motif/ruling'
import { laidBlanketOf } from '../plans/layouts'
import { settled, withGauge } from '../settled'
import { termWord } from '../stitches/terms'
import { formatLength, formatMass, formatNumber, formatYarnLength } from '../units/format'
import type { Millimetres } from '../units/quantity'
import type { PageFact } from './read-page'
import type { SizeOf } from './sizes'
import type { PageYarn } from './yarns'

/** What a fact is about; at most four words. */
export function labelOf(fact: PageFact, terms: Terms): string {
  switch (fact.kind) {
    case 'name':
      return 'Name of the motif'
    case 'designer':
      return 'Designer'
    case 'skill':
      return 'Skill level'
    case 'hook':
      return 'Hook'
    case 'swatch':
      return capital(termWord('gauge', terms))
    case 'rounds-gauge':
      return `${capital(termWord('gauge', terms))} by rounds`
    case 'size':
      return fact.size.of === 'whole' ? 'Target size' : 'Size of the motif'
    case 'yarn':
      return fact.role ? `Yarn ${fact.role}` : 'Yarn'
    case 'notes':
      return 'Instructions'
    case 'piece':
      return 'Motif of its own'
  }
}

/** What undo calls taking it. */
export const changeWords = (fact: PageFact, terms: Terms): string => {
  const label = labelOf(fact, terms)
  const what = fact.kind === 'yarn' && fact.role ? label.replace('Yarn', 'yarn') : label.toLowerCase()
  return `take ${what} from the page`
}

const SIZE_WORDS: Readonly<Record<SizeOf, string>> = {
  ...{ across: 'across', sideToSide: 'side to side', pointToPoint: 'point to point' },
  ...{ length: 'long', width: 'wide' },
}

/** Patterns in metric measures tell them in cm. */
const inCm = (mm: Millimetres): string => `${formatNumber(mm / 10, 2)} cm`
const lengthWords = (mm: Millimetres, units: UnitSystem): string =>
  units === 'metric' ? inCm(mm) : formatLength(mm, units)

function swatchWords(
  { stitch = '', stitches, rows, over = 100 }: StitchGauge,
  units: UnitSystem,
): string | null {
  if (stitches === undefined) return null
  const told = [
    `${formatNumber(stitches, 1)} ${stitch === '' ? 'sts' : stitch}`,
    ...(rows === undefined ? [] : [`${formatNumber(rows, 1)} ${plural(rows, 'row')}`]),
  ]
  return units === 'metric'
    ? `${listed(told)} to ${inCm(over)}`
    : `${listed(told)} in ${formatLength(over, units)}`
}

/** A page says between what its first rounds measure: a swatch of a hexagon by its sides. */
const ACROSS_SIDES = /\b(?:side|edge|flat)s?[ -]to[ -](?:opposite )?(?:side|edge|flat)/i

function roundsWords({ rounds, across }: StitchGauge, units: UnitSystem, how = 'across'): string | null {
  if (rounds === undefined || across === undefined) return null
  return `${rounds === 1 ? 'round 1' : `rounds 1–${rounds}`} measure ${lengthWords(across, units)} ${how}`
}

function ballWords({ ballGrams, ballMetres, fibre }: PageYarn, units: UnitSystem): string[] {
  return [
    ...(ballGrams === undefined ? [] : [formatMass(ballGrams, units)]),
    ...(ballMetres === undefined ? [] : [formatYarnLength(ballMetres, units)]),
    ...(fibre ? [fibre] : []),
  ]
}

/** What it says. */
export function valueWords(fact: PageFact, units: UnitSystem): string {
  switch (fact.kind) {
    case 'name':
      return fact.motif === fact.name ? fact.name : `${fact.motif}, of “${fact.name}”`
    case 'designer':
      return fact.designer
    case 'skill':
    case 'notes':
      return fact.text
    case 'hook':
      return `${formatNumber(fact.hook, 2)} mm`
    case 'swatch':
      return swatchWords(fact.gauge, units) ?? ''
    case 'rounds-gauge':
      return (
        roundsWords(fact.gauge, units, ACROSS_SIDES.test(fact.at.words) ? 'from side to side' : 'across') ??
        ''
      )
    case 'size': {
      const { size } = fact
      if (size.of === 'whole') return `${lengthWords(size.width, units)} × ${lengthWords(size.height, units)}`
      return listed(size.sizes.map(([of, value]) => `${lengthWords(value, units)} ${SIZE_WORDS[of]}`))
    }
    case 'piece':
      return [
        fact.name,
        ...(fact.make === null ? [] : [`make ${fact.make}`]),
        counted(fact.rounds.length, 'round'),
      ].join(', ')
    case 'yarn':
      return [fact.yarn.name ?? '', ...ballWords(fact.yarn, units)].join(', ')
  }
}

/** What the project has where it would go; null where there is nothing. */
export function nowWords(
  fact: PageFact,
  project: Project,
  motif: Motif,
  shape: MotifAccount['shape'] | null,
): string | null {
  const { units } = settled(project)
  const gauge = withGauge(motif, project.gauge).gauge ?? {}
  switch (fact.kind) {
    case 'name':
      return motif.name ?? null
    case 'designer':
      return project.designer || null
    case 'skill':
      if (fact.skill) return project.pattern?.skill ?? null
      return motif.instructions?.trim() ? 'added to the instructions there are' : null
    case 'notes':
      return motif.instructions?.trim() ? 'added to the instructions there are' : null
    case 'hook':
      return gauge.hook === undefined ? null : `${formatNumber(gauge.hook, 2)} mm`
    case 'swatch':
      return swatchWords(gauge, units)
    case 'rounds-gauge':
      return roundsWords(gauge, units) ?? swatchWords(gauge, units)
    case 'size': {
      if (fact.size.of === 'whole') {
        const target = laidBlanketOf(project)?.target
        return target?.width && target.height
          ? `${lengthWords(target.width, units)} × ${lengthWords(target.height, units)}`
          : null
      }
      const key = leading(motif, shape ?? undefined)
      const measured = (motif.kind === 'rounds' ? motif.measured : motif) ?? {}
      const now = key ? measured[key] : undefined
      return now === undefined ? null : lengthWords(now, units)
    }
    case 'piece':
      return `counted with ${motif.name ?? motif.id}, in neither its size nor its yarn`
    case 'yarn': {
      const there = project.yarns?.find(({ name }) => name?.toLowerCase() === fact.yarn.name?.toLowerCase())
      return there ? [there.name ?? there.id, ...ballWords(there, units)].join(', ') : null
    }
  }
}
