/**
 * `npm run photos -- 300`: draws so many photos of motifs, measures them, and prints how right the finder is.
 * `npm run photos -- 300 5000 rough` begins with picture 5000, taken without care: fresh pictures to judge by what was
 * mended with others; with `kitchen`, `porch`, `attic`, `desk`, `mat`, `sill`, `pantry`, `hall` or `garden` instead of
 * `rough` another renderer draws them.
 */
import { measurePhoto } from '../src-core/photo/photo'
import { ratesOf, trialOf } from '../tests/src-core/photo/rates'
import type { Trial } from '../tests/src-core/photo/rates'
import { attic } from '../tests/src-core/photo/attic'
import { desk } from '../tests/src-core/photo/desk'
import { garden } from '../tests/src-core/photo/garden'
import { hall } from '../tests/src-core/photo/hall'
import { kitchen } from '../tests/src-core/photo/kitchen'
import { mat } from '../tests/src-core/photo/mat'
import { pantry } from '../tests/src-core/photo/pantry'
import { porch } from '../tests/src-core/photo/porch'
import { sill } from '../tests/src-core/photo/sill'
import { studio } from '../tests/src-core/photo/studio'

const [count, first] = [Number(process.argv[2] ?? 300), Number(process.argv[3] ?? 0)]
const renderer = process.argv[4]
const RENDERERS = {
  kitchen,
  porch,
  attic,
  desk,
  mat,
  sill,
  pantry,
  hall,
  garden,
  rough: (number: number) => studio(number, { rough: true }),
} as const
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`
const trials: Trial[] = []
let time = 0
for (let number = first; number < first + count; number++) {
  const taken = await (RENDERERS[renderer as keyof typeof RENDERERS] ?? studio)(number)
  const before = process.cpuUsage().user
  const answer = measurePhoto(taken.picture, { sheet: taken.sheet })
  time += (process.cpuUsage().user - before) / 1000
  const trial = trialOf(taken, answer)
  trials.push(trial)
  const codes = answer.findings.map(({ code }) => code).join(' ')
  console.log(
    `${trial.name}: ${trial.petalsRight ? '' : 'petals wrong, '}tips ${percent(trial.tips)}, dips ${percent(trial.dips)} ${codes}`,
  )
}
const rates = ratesOf(trials)
console.log(`petals right in ${percent(rates.petals)}; sure of ${percent(rates.sure)}`)
console.log(`where sure: tip to tip ${percent(rates.tips.rms)} rms, ${percent(rates.tips.most)} at most`)
console.log(`            dip to dip ${percent(rates.dips.rms)} rms, ${percent(rates.dips.most)} at most`)
for (const { name } of rates.wrongAndSure) console.log(`wrong, and sure of it: ${name}`)
console.log(`wrong beyond the bounds: ${rates.wrong}, of them said to be unsure: ${rates.wrongAndUnsure}`)
console.log(`${Math.round(time / count)} ms of processor time for a picture`)
