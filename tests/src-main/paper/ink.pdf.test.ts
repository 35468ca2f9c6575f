/** What the tools of others say about the file: qpdf, and poppler's fonts, text and pixels. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { renderMap } from '../../../src-main/paper/index'
import { DATE, flowers, planned, VERSION } from './projects'

const RESOLUTION = 60

interface Picture {
  readonly width: number
  readonly height: number
  readonly grey: Uint8Array
}

/** A portable greymap (netpbm, "P5"). */
function readGreymap(path: string): Picture {
  const bytes = readFileSync(path)
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'))!
  return { width: Number(header[1]), height: Number(header[2]), grey: bytes.subarray(header[0].length) }
}

/** Distance in mm of the outermost ink from the nearest edge, and the share of the sheet that is inked. */
function ink({ width, height, grey }: Picture): { margin: number; share: number } {
  let margin = Infinity
  let inked = 0
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (grey[y * width + x]! > 200) continue
      inked++
      margin = Math.min(margin, x, y, width - 1 - x, height - 1 - y)
    }
  }
  return { margin: (margin * 25.4) / RESOLUTION, share: inked / (width * height) }
}

const CASES = [
  [
    'a throw in ink on A4',
    flowers({ edging: { rounds: ['sc'], yarn: 'y1' } }, { forChild: true }),
    'ink',
    'A4',
  ],
  ['a throw in colour on Letter', flowers({ columns: 9, rows: 9 }), 'colour', 'Letter'],
  ['a map in sheets', flowers({ columns: 32, rows: 26 }), 'ink', 'A4'],
  ['rings', flowers({ arrangement: 'rings', rings: 4 }, { order: 'centre' }), 'ink', 'Letter'],
] as const

describe.each(CASES)('%s', (_, project, style, paper) => {
  const folder = mkdtempSync(join(tmpdir(), 'petalyard-paper-'))
  const file = join(folder, 'map.pdf')
  beforeAll(async () => {
    const { plan } = planned(project)
    writeFileSync(file, await renderMap(plan, { style, paper, date: DATE, version: VERSION }))
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  it('is a sound file', () => {
    expect(execFileSync('qpdf', ['--check', file], { encoding: 'utf8' })).toContain(
      'No syntax or stream encoding errors',
    )
  })

  it('embeds every font as a subset that can be searched', () => {
    const lines = execFileSync('pdffonts', [file], { encoding: 'utf8' }).trim().split('\n').slice(2)
    expect(lines).toHaveLength(2)
    for (const line of lines)
      expect(line).toMatch(/^[A-Z]{6}\+SourceSans3-\w+\s+CID TrueType\s+Identity-H\s+yes yes yes/)
    expect(execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' })).toContain('Harbour window throw')
  })

  it('has ink on every page and none within 12 mm of the edge', () => {
    execFileSync('pdftoppm', ['-r', String(RESOLUTION), '-gray', file, join(folder, 'page')])
    const pictures = readdirSync(folder).filter((name) => name.endsWith('.pgm'))
    expect(pictures.length).toBeGreaterThan(4)
    for (const name of pictures) {
      const { margin, share } = ink(readGreymap(join(folder, name)))
      // A pixel is 0.42 mm wide at this resolution and may be touched at its very edge.
      expect(margin, name).toBeGreaterThanOrEqual(12 - 0.45)
      expect(share, name).toBeGreaterThan(0.004)
    }
  })
})
