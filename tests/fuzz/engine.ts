/** What the engine is given: projects, written rounds, path data, drawings, numbers. */
import { readSvgFile } from '../../src-core/geometry/svg-file'
import { readPath } from '../../src-core/geometry/svg-path'
import { measureProject } from '../../src-core/accounts'
import { roundsAccount } from '../../src-core/motif/rounds/account'
import { printRounds } from '../../src-core/notation/print'
import { readRounds } from '../../src-core/notation/read'
import { checkProject, createPlanner, planProject } from '../../src-core/plan'
import { readQuantity } from '../../src-core/units/read'
import type { QuantityKind } from '../../src-core/units/read'
import type { Random } from '../../src-core/units/random'
import { planReport } from '../../src-main/command/reports/plan'
import { readProjectText } from '../../src-main/documents/read'
import { must, notFinite } from './asserts'
import { EXAMPLES, roundTexts } from './corpus'
import { changedText, mutated, NUMBERS, oneOf, TEXTS } from './mutate'
import type { Target } from './target'

const finite = (value: unknown, of: string): void => {
  const found = notFinite(value)
  must(found === null, () => `${of}: ${found}`)
}

/** Motifs of the largest plan that is made a second and a third time. */
const MADE_AGAIN = 10_000

const projects: Target = {
  name: 'projects',
  perRound: 4,
  draw: (random) => JSON.stringify(mutated(EXAMPLES, random)),
  run(text) {
    const outcome = readProjectText(text)
    if (outcome.kind !== 'opened') return
    const { project } = outcome
    const before = JSON.stringify(project)
    const plan = planProject(project)
    finite(plan, 'a number of the plan')
    finite(measureProject(project), 'a measure')
    // Thirty thousand motifs are planned once: whether it is the same again is asked of fewer.
    if (plan.motifs.length <= MADE_AGAIN) {
      const again = createPlanner().plan(JSON.parse(before) as typeof project)
      must(JSON.stringify(plan) === JSON.stringify(again), () => 'the plan differs the second time')
      must(
        checkProject(project).every(({ where }) => where !== ''),
        () => 'a finding without a place',
      )
    }
    planReport(project, plan, 80, true)
    must(JSON.stringify(project) === before, () => 'the project was changed by planning it')
  },
}

const rounds: Target = {
  name: 'rounds',
  perRound: 30,
  draw(random) {
    let text = oneOf(roundTexts, random)
    if (random.below(3) === 0) text = `${text}\n${oneOf(roundTexts, random)}`
    for (let changes = 1 + random.below(6); changes > 0; changes--) text = changedText(text, random)
    return text
  },
  run(text) {
    const read = readRounds(text)
    finite(read.rounds, 'a count')
    must(read.tree.text === text, () => 'the text was changed by reading it')
    const again = readRounds(text)
    must(
      JSON.stringify(read.findings) === JSON.stringify(again.findings),
      () => 'other findings the second time',
    )
    printRounds(read.tree)
    const work = { id: 'm', kind: 'rounds' as const, rounds: [{ work: text }] }
    const told = roundsAccount(work, { hand: 'right', terms: read.terms, growth: 1 })
    finite(told.account, 'a measure')
  },
}

const PATHS = [
  'M 0 0 H 300 V 200 A 150 60 0 0 1 0 200 Z',
  'M10,10 C 20,20 40,20 50,10 S 80,0 90,10 T 120 40 Q 95 10 180 80 l-5-5 a25,25 -30 0,1 50,-25 z',
  'm 0 0 h 1e2 v .5 -1.5 1.5 z M 4 4 L 8 8',
]
const SIGNS = 'MmZzLlHhVvCcSsQqTtAaEe0123456789+-., \n'

/** Changes single signs of a text. */
function changedSigns(text: string, signs: string, random: Random): string {
  for (let changes = 1 + random.below(5); changes > 0; changes--) {
    const at = random.below(text.length + 1)
    const many = oneOf([1, 1, 1, 3, 400], random)
    const put = random.below(3) === 0 ? String(oneOf(NUMBERS, random)) : signs[random.below(signs.length)]!
    text = text.slice(0, at) + put.repeat(many) + text.slice(at + random.below(3))
  }
  return text
}

const paths: Target = {
  name: 'paths',
  perRound: 60,
  draw: (random) => changedSigns(oneOf(PATHS, random), SIGNS, random),
  run: (text) => finite(readPath(text), 'a point'),
}

const DRAWING = (path: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200"><g id="g" transform="translate(3 4) rotate(30)"><path id="p" d="${path}"/><rect x="1" y="2" width="30" height="40" rx="5"/><circle cx="50" cy="50" r="20"/><ellipse cx="5" cy="6" rx="7" ry="8"/><polygon points="0,0 10,0 5,9"/></g></svg>`

const drawings: Target = {
  name: 'drawings',
  perRound: 30,
  draw: (random) =>
    changedSigns(DRAWING(oneOf(PATHS, random)), `${SIGNS}<>/="&;#xgpathsvgtransform()%`, random),
  run: (text) => finite(readSvgFile(text), 'a point'),
}

const QUANTITIES = [
  '12',
  '9.5 cm',
  '9,5cm',
  '12 1/2"',
  '12*9.5',
  '(3 + 4) / 2 in',
  '€ 3,90',
  '1 lb 3 oz',
  '1½ yd',
]
const KINDS: readonly QuantityKind[] = [
  ...(['length', 'mass', 'yarnLength', 'money', 'count', 'angle', 'time', 'percent'] as const),
]

const numbers: Target = {
  name: 'numbers',
  perRound: 60,
  draw(random) {
    const text = random.below(6) === 0 ? oneOf(TEXTS, random) : oneOf(QUANTITIES, random)
    return `${oneOf(KINDS, random)} ${changedSigns(text, '0123456789.,/*+-() cmin"½€$%eE\'′″', random)}`
  },
  run(text) {
    const [kind = '', ...rest] = text.split(' ')
    const field = { kind: kind as QuantityKind, units: 'imperial' as const, least: -1e6, most: 1e6 }
    const read = readQuantity(rest.join(' '), field)
    finite(read, 'what was read')
    if (read.ok) must(Math.abs(read.value) <= 1e6, () => `${read.value} is out of bounds`)
    else must(read.message.length > 0 && read.message.length < 2000, () => 'a refusal without words')
  },
}

export const ENGINE: readonly Target[] = [projects, rounds, paths, drawings, numbers]
