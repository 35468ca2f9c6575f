/** Pictures of the printed map for the README: `npm run pictures`. Needs pdftoppm. */
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const PICTURES = [
  { name: 'map-overview', example: 'hedgerow-baby-throw', page: 1, style: 'colour' },
  { name: 'map-joins', example: 'hedgerow-baby-throw', page: 2, style: 'ink' },
  { name: 'kit-card', example: 'orchard-gate-garland', page: 1, style: 'colour', sheets: 'card' },
  { name: 'kit-labels', example: 'orchard-gate-garland', page: 1, style: 'colour', sheets: 'labels' },
  { name: 'template-first', example: 'quince-wreath-cushion', page: 1, style: 'ink' },
  { name: 'template-sheet', example: 'quince-wreath-cushion', page: 3, style: 'ink' },
]

const folder = mkdtempSync(join(tmpdir(), 'petalyard-pictures-'))
try {
  mkdirSync(join(root, 'docs', 'pictures'), { recursive: true })
  for (const { name, example, page, style, sheets } of PICTURES) {
    const pdf = join(folder, `${name}.pdf`)
    const project = join(root, 'examples', `${example}.petalyard`)
    const words = ['map', project, '--out', pdf, '--style', style, '--pages', String(page)]
    if (sheets) words.push('--sheets', sheets)
    execFileSync(process.execPath, [join(root, 'scripts', 'petalyard.mjs'), ...words], { stdio: 'inherit' })
    const picture = join(root, 'docs', 'pictures', name)
    execFileSync('pdftoppm', ['-r', '80', '-png', '-singlefile', pdf, picture])
    console.log(`wrote docs/pictures/${name}.png`)
  }
} finally {
  rmSync(folder, { recursive: true, force: true })
}
