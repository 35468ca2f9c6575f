/** `npm run docs`: writes the pages of docs/ that follow from the source. */
import { writeFileSync } from 'node:fs'
import { generateDocs, pagePath } from './docs'

for (const [name, text] of Object.entries(await generateDocs())) {
  writeFileSync(pagePath(name), text)
  console.log(`wrote ${name}`)
}
