/**
 * `npm run bench`: how fast we are against a baseline in the same run, and how cost grows with size.
 * Ratios carry over to other machines, milliseconds do not. Ends with 1 when a wanted ratio is missed.
 */
import { benchGrowth, benchJoins, benchTouching } from './engine'
import { table } from './measure'
import type { Row } from './measure'

const rows: Row[] = []
rows.push(benchTouching())
rows.push(benchJoins())
rows.push(...benchGrowth())
console.log(table(rows))
if (rows.some((row) => !row.met)) process.exitCode = 1
