/** Projects for tests of the window. */
import { readFileSync } from 'node:fs'
import type { Project } from '../../shared-types/project'

/** An example project by name. */
export const example = (name: string): Project =>
  JSON.parse(readFileSync(`examples/${name}.petalyard`, 'utf8')) as Project

/** A small blanket of six-petal flowers in two colourways; every number in it is made up. */
export const SMALL: Project = {
  format: 'petalyard-project',
  version: 1,
  title: 'Window seat',
  units: 'metric',
  terms: 'US',
  hand: 'right',
  currency: 'EUR',
  yarns: [
    { id: 'y1', name: 'Brick', colour: '#b3583f', ballGrams: 50, ballMetres: 125, price: 4, onHandGrams: 20 },
    { id: 'y2', name: 'Straw', colour: '#e3c188', ballGrams: 50, ballMetres: 125, price: 4 },
  ],
  motifs: [
    {
      id: 'm1',
      name: 'Flower',
      kind: 'measured',
      outline: 'petals',
      petals: 6,
      overTips: 80,
      overValleys: 56,
      blocked: true,
      slots: [
        { slot: 'centre', grams: 1 },
        { slot: 'petals', grams: 3 },
      ],
      minutes: 15,
    },
  ],
  colourways: [
    { id: 'c1', code: 'A', name: 'Dawn', motif: 'm1', yarns: { centre: 'y2', petals: 'y1' } },
    { id: 'c2', code: 'B', name: 'Noon', motif: 'm1', yarns: { centre: 'y1', petals: 'y2' } },
  ],
  layout: {
    kind: 'blanket',
    arrangement: 'offset-rows',
    motif: 'm1',
    columns: 5,
    rows: 4,
    alternateRows: 'same',
    cells: { fill: { pattern: 'repeat', colourways: ['c1', 'c2'], seed: 1 } },
  },
  joining: { rule: 'tips' },
}
