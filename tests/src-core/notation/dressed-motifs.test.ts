/**
 * Motifs of other kinds in the dresses that patterns wear: petals in layers, shells, popcorns, post stitches, an oval around a chain, turned rows, a UK
 * granny square, rounds worked between stitches. Each dress alone, and mixtures: never a finding, always the same
 * stitches. (Common practice, no source.)
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { MOTIFS } from './motif-dresses'
import type { Complete, Motif, Worn } from './motif-dresses'
import { runs } from '../../runs'

function expectPlain(motif: Motif, worn: Worn): void {
  const text = motif.write(worn as Complete)
  const { findings, rounds } = readRounds(text, { terms: motif.terms })
  const told = findings
    .filter(({ severity }) => severity !== 'note')
    .map(({ code, message }) => `${code} ${message}`)
  expect({ text, told, made: rounds.map(({ made }) => made) }).toEqual({ text, told: [], made: motif.made })
}

describe.each(MOTIFS)('$name', (motif) => {
  const plain = Object.fromEntries(Object.entries(motif.slots).map(([slot, [first]]) => [slot, first!]))
  const dresses = Object.entries(motif.slots).flatMap(([slot, all]) => all.map((dress) => [slot, dress]))

  it.each(dresses)('%s: %j', (slot, dress) => {
    expectPlain(motif, { ...plain, [slot!]: dress! })
  })

  it('agrees in pairs of dresses', () => {
    const pair = fc.tuple(fc.constantFrom(...dresses), fc.constantFrom(...dresses))
    fc.assert(
      fc.property(pair, ([[a, one], [b, other]]) => {
        expectPlain(motif, { ...plain, [a!]: one!, [b!]: other! })
      }),
      { numRuns: runs(150) },
    )
  })
})

it('post stitches are held apart from stitches alike in all else', () => {
  const { rounds } = readRounds(
    `Magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join in top of ch-3. (12 dc)
Rnd 2: Ch 2 (does not count), *FPdc around next dc, dc in same dc; rep from * around; join. (24 sts)
Rnd 3: Ch 2 (does not count), FPdc around each FPdc and 2 dc in each dc around; join. (36 sts)`,
    { terms: 'US' },
  )
  expect(rounds.map(({ made }) => made)).toEqual([12, 24, 36])
})
