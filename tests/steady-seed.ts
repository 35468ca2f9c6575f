/**
 * Property tests draw the same examples in every run, so that a change is judged by what it changes, not by luck.
 * `PETALYARD_SEED=fresh` draws others; a number draws those of the seed that a failure named.
 */
import { configureGlobal } from 'fast-check'

const SEED = 20_261_125
const wished = process.env.PETALYARD_SEED
if (wished !== 'fresh') configureGlobal({ seed: Number(wished ?? SEED) })
