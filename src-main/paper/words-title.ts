/** Words of the title page. */
import type { Skill } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { capital } from '../../src-core/figures/words'

/** The four project levels as they are printed (§project-levels). */
export const SKILL_WORDS: Readonly<Record<Skill, string>> = {
  basic: 'Basic',
  easy: 'Easy',
  intermediate: 'Intermediate',
  complex: 'Complex',
}

export const TITLE_WORDS = {
  skill: 'Skill level',
  size: 'Finished size',
  yarn: 'Yarn',
  hook: 'Hook',
  written: 'Written in',
  inside: 'Inside',
  /** Of a fibre that every yarn is of. */
  allOf: (fibre: string): string => `all ${unbroken(fibre)}`,
  /** Of balls that are all of one size. */
  eachBall: (ball: string, size: string): string => `one ${ball} is ${size}`,
  /** Behind the number of balls, or where none is known: " of 100 g (3.5 oz), 200 m (219 yd)". */
  ballOf: (ball: string, size: string): string => (ball === '' ? ` of ${size}` : `, one ${ball} is ${size}`),
  more: (count: number): string => `and ${count} more`,
  by: (designer: string): string => `Designed by ${designer}`,
} as const

/** "US terms, right-handed". */
export const writtenWords = ({ hand }: Settled, terms: string): string => `${terms} terms, ${hand}-handed`

/** "75 % wool, 25 % nylon", broken between fibres only. */
const unbroken = (fibre: string): string => fibre.replace(/(\d) ?% ?/g, '$1\u00a0%\u00a0')

/** What a yarn is, behind its name: "285 to 300 g, cotton". */
export const yarnWords = (name: string, amount: string, fibre: string): string =>
  [`${capital(name)}: ${amount}`, unbroken(fibre)].filter(Boolean).join(', ')
