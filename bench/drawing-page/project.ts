/** A throw for the bench: as many eight-petalled motifs as asked, in four colourways. */
import type { Project } from '../../shared-types/project'

export interface BenchProject {
  readonly columns: number
  readonly rows: number
  readonly petals?: number
}

export function benchProject({ columns, rows, petals = 8 }: BenchProject): Project {
  return {
    format: 'petalyard-project',
    version: 1,
    title: 'Drawing bench',
    yarns: [
      { id: 'brick', name: 'Brick', colour: '#c9746a' },
      { id: 'lichen', name: 'Lichen', colour: '#86ab9d' },
      { id: 'oat', name: 'Oat', colour: '#e6cfa5' },
      { id: 'harbour', name: 'Harbour', colour: '#5b7592' },
      { id: 'straw', name: 'Straw', colour: '#e2bb5c' },
      { id: 'snow', name: 'Snow', colour: '#fbfaf6' },
      { id: 'coal', name: 'Coal', colour: '#22262b' },
    ],
    motifs: [
      {
        id: 'daisy',
        kind: 'measured',
        outline: 'petals',
        petals,
        overTips: 78,
        overValleys: 48,
        slots: [{ slot: 'centre' }, { slot: 'petals' }],
      },
    ],
    colourways: [
      { id: 'a', code: 'A', motif: 'daisy', yarns: { centre: 'straw', petals: 'brick' } },
      { id: 'b', code: 'B', motif: 'daisy', yarns: { centre: 'snow', petals: 'lichen' } },
      { id: 'c', code: 'C', motif: 'daisy', yarns: { centre: 'brick', petals: 'oat' } },
      { id: 'd', code: 'D', motif: 'daisy', yarns: { centre: 'straw', petals: 'harbour' } },
      { id: 'e', code: 'E', motif: 'daisy', yarns: { centre: 'straw', petals: 'snow' } },
      { id: 'f', code: 'F', motif: 'daisy', yarns: { centre: 'brick', petals: 'coal' } },
    ],
    layout: {
      kind: 'blanket',
      arrangement: petals === 6 ? 'offset-rows' : 'straight-rows',
      motif: 'daisy',
      columns,
      rows,
      turn: petals === 6 ? 30 : 0,
      cells: { fill: { pattern: 'repeat', colourways: ['a', 'b', 'c', 'd', 'b', 'c', 'a'] } },
    },
    joining: { rule: 'tips' },
  }
}

/** A panel for the bench: flowers and leaves in a wide scatter, each turned its own way. */
export function benchPanel(count: number): Project {
  const across = Math.ceil(Math.sqrt(count))
  const pitch = 52
  const size = (across + 1) * pitch
  const items = Array.from({ length: count }, (_, i) => {
    const isLeaf = i % 3 === 2
    return {
      motif: isLeaf ? 'leaf' : 'daisy',
      colourway: isLeaf ? 'g' : 'abcd'[i % 4]!,
      x: pitch * (1 + (i % across)) + 3 * Math.sin(i * 1.7),
      y: pitch * (1 + Math.floor(i / across)) + 3 * Math.cos(i * 2.3),
      turn: (i * 37) % 360,
    }
  })
  const { motifs, colourways, ...rest } = benchProject({ columns: 1, rows: 1 })
  const leafs = { slots: [{ slot: 'leaf' }], length: 44, width: 20 }
  return {
    ...rest,
    yarns: [...rest.yarns!, { id: 'reed', name: 'Reed', colour: '#7c8f55' }],
    motifs: [
      { ...motifs![0]!, overTips: 42, overValleys: 26 } as NonNullable<Project['motifs']>[number],
      { id: 'leaf', kind: 'measured', outline: 'leaf', ...leafs },
    ],
    colourways: [...colourways!, { id: 'g', code: 'G', motif: 'leaf', yarns: { leaf: 'reed' } }],
    layout: {
      kind: 'applique',
      panel: { shape: 'rectangle', width: size, height: size, allowance: 15 },
      clearance: 4,
      overlaps: 'allowed',
      items,
    },
  }
}
