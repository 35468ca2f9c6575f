/** A project of our own for the tests of the command line, and a way to run a command inside the test. */
import { mkdtemp, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Project } from '../../../shared-types/project'
import { run } from '../../../src-main/command/program'

export const SAMPLE: Project = {
  format: 'petalyard-project',
  version: 1,
  title: 'Harbour window throw',
  notes: 'Two colourways by turns.',
  units: 'metric',
  terms: 'US',
  currency: 'EUR',
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 },
  yarns: [
    { id: 'y1', name: 'Sea glass', ballGrams: 50, ballMetres: 125, price: 3.9, onHandGrams: 120 },
    { id: 'y2', name: 'Sand', ballGrams: 50, ballMetres: 125, price: 4.2 },
  ],
  motifs: [
    {
      id: 'm1',
      name: 'Six-petal flower',
      kind: 'measured',
      outline: 'petals',
      petals: 6,
      overTips: 78,
      overValleys: 52,
      slots: [
        { slot: 'centre', grams: 0.8 },
        { slot: 'petals', grams: 3.4 },
      ],
      weighed: { motifs: 10, resolution: 1 },
      minutes: 18,
    },
  ],
  colourways: [
    { id: 'c1', code: 'A', name: 'Dawn', motif: 'm1', yarns: { centre: 'y2', petals: 'y1' } },
    { id: 'c2', code: 'B', name: 'Dusk', motif: 'm1', yarns: { centre: 'y1', petals: 'y2' } },
  ],
  layout: {
    kind: 'blanket',
    arrangement: 'offset-rows',
    motif: 'm1',
    columns: 6,
    rows: 5,
    turn: 30,
    cells: { fill: { pattern: 'repeat', colourways: ['c1', 'c2'] } },
    edging: { style: 'bridge', rounds: ['sc', 'dc'], yarn: 'y1' },
  },
  joining: { rule: 'tips', yarn: 'y1', minutes: 1 },
  allowance: { wastePercent: 10, tail: 150 },
}

export interface Ran {
  readonly code: number
  readonly out: string
  readonly err: string
}

/** Runs a command line in this process. */
export const petalyard = (...args: string[]): Promise<Ran> => petalyardIn('en-GB', ...args)

/** The same where people live who speak so. */
export async function petalyardIn(locale: string, ...args: string[]): Promise<Ran> {
  let out = ''
  let err = ''
  const code = await run(args, {
    out: (text) => void (out += text),
    err: (text) => void (err += text),
    width: 80,
    now: () => new Date('2025-03-01T12:00:00Z'),
    locale,
  })
  return { code, out, err }
}

/** A folder of its own for a test. */
export const newFolder = (): Promise<string> => mkdtemp(join(tmpdir(), 'petalyard-command-'))

/** Writes a project file and gives its path. */
export async function writeProject(project: object, name = 'throw.petalyard'): Promise<string> {
  const path = join(await newFolder(), name)
  await writeFile(path, JSON.stringify(project, null, 2))
  return path
}
