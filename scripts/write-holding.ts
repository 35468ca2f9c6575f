/** `npm run docs:holding`: writes docs/holding.md. It takes minutes, so `npm run docs` leaves it alone. */
import { writeFileSync } from 'node:fs'
import { pagePath } from './docs'
import { holdingPage } from './holding-table'

const text = holdingPage((done, all) => {
  if (done % 10 === 0) console.error(`${done} of ${all} motifs`)
})
writeFileSync(pagePath('docs/holding.md'), text)
console.log('wrote docs/holding.md')
