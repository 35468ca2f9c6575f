/** Pictures of printed pages for README and guides: `npm run pictures`. Needs pdftoppm; ImageMagick makes them small. */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const PICTURES = [
  { name: 'map-overview', project: 'docs/projects/harbour-lap-blanket', page: 1, style: 'colour' },
  {
    name: 'kit-card',
    project: 'docs/projects/lemon-grove-garland',
    page: 1,
    style: 'colour',
    sheets: 'card',
  },
  { name: 'motif-page', project: 'docs/projects/quay-side-runner', page: 6, style: 'ink' },
  { name: 'chart-layered', project: 'examples/orchard-wall-throw', chart: true },
  { name: 'template-first', project: 'examples/quince-wreath-cushion', page: 1, style: 'ink' },
]

const folder = mkdtempSync(join(tmpdir(), 'petalyard-pictures-'))
try {
  mkdirSync(join(root, 'docs', 'pictures'), { recursive: true })
  for (const { name, project, page, style, sheets, chart } of PICTURES) {
    const pdf = join(folder, `${name}.pdf`)
    const words = [chart ? 'chart' : 'map', join(root, `${project}.petalyard`), '--out', pdf]
    if (page) words.push('--style', style, '--pages', String(page))
    if (sheets) words.push('--sheets', sheets)
    execFileSync(process.execPath, [join(root, 'scripts', 'petalyard.mjs'), ...words], { stdio: 'inherit' })
    const picture = join(root, 'docs', 'pictures', name)
    execFileSync('pdftoppm', ['-r', '80', '-png', '-singlefile', pdf, picture])
    spawnSync('convert', [`${picture}.png`, '+dither', '-colors', '64', `PNG8:${picture}.png`], {
      stdio: 'ignore',
    })
    console.log(`wrote docs/pictures/${name}.png`)
  }
} finally {
  rmSync(folder, { recursive: true, force: true })
}
