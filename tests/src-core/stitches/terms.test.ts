import { describe, expect, it } from 'vitest'
import { STITCH_KEYS } from '../../../src-core/stitches/table'
import {
  canonicalStitch,
  chainSpace,
  stitchAbbreviation,
  stitchName,
  termWord,
  translateStitch,
} from '../../../src-core/stitches/terms'

describe('US and UK terms', () => {
  it('pairs the stitches as the published tables do', () => {
    // §us-uk: sl st/ss, sc/dc, hdc/htr, dc/tr, tr/dtr, dtr/trtr; trtr/quad tr,
    // in one word as it is printed here.
    const pairs = STITCH_KEYS.map((key) => [stitchAbbreviation(key, 'US'), stitchAbbreviation(key, 'UK')])
    expect(pairs).toEqual([
      ['ch', 'ch'],
      ['sl st', 'ss'],
      ['sc', 'dc'],
      ['hdc', 'htr'],
      ['dc', 'tr'],
      ['tr', 'dtr'],
      ['dtr', 'trtr'],
      ['trtr', 'qtr'],
    ])
    expect(stitchName('sc', 'UK')).toBe('double crochet')
    expect(stitchName('tr', 'US')).toBe('treble crochet')
  })

  it('reads its own abbreviations and names back, in both terms', () => {
    for (const terms of ['US', 'UK'] as const) {
      for (const key of STITCH_KEYS) {
        expect(canonicalStitch(stitchAbbreviation(key, terms), terms)).toBe(key)
        expect(canonicalStitch(stitchName(key, terms), terms)).toBe(key)
        expect(canonicalStitch(`${stitchName(key, terms).toUpperCase()}S.`, terms)).toBe(
          key === 'sl st' ? null : key,
        )
      }
    }
  })

  it('reads plurals, hyphens and case', () => {
    expect(canonicalStitch(' Double  Crochets ', 'UK')).toBe('sc')
    expect(canonicalStitch('slip stitches', 'US')).toBe('sl st')
    expect(canonicalStitch('sl-st', 'UK')).toBe('sl st')
    expect(canonicalStitch('half-double crochet', 'US')).toBe('hdc')
    expect(canonicalStitch('Half treble', 'UK')).toBe('hdc')
    expect(canonicalStitch('triple crochet', 'US')).toBe('tr')
  })

  it('does not take a stitch of the other terms for its own', () => {
    expect(canonicalStitch('sc', 'UK')).toBeNull()
    expect(canonicalStitch('hdc', 'UK')).toBeNull()
    expect(canonicalStitch('htr', 'US')).toBeNull()
    expect(canonicalStitch('qtr', 'US')).toBeNull()
    expect(canonicalStitch('ttr', 'US')).toBeNull()
    expect(canonicalStitch('', 'US')).toBeNull()
    expect(canonicalStitch('constructor', 'US')).toBeNull()
  })

  it('reads a triple treble by the name that either side has for it', () => {
    expect([canonicalStitch('trtr', 'US'), canonicalStitch('trtr', 'UK')]).toEqual(['trtr', 'dtr'])
    for (const word of ['quad tr', 'quadtr', 'quadruple treble', 'Quad trebles'])
      expect(canonicalStitch(word, 'UK')).toBe('trtr')
  })

  it('translates posts and decreases, there and back', () => {
    expect(translateStitch('FPdc', 'US', 'UK')).toBe('FPtr')
    expect(translateStitch('dc3tog', 'US', 'UK')).toBe('tr3tog')
    expect(translateStitch('BPtr', 'UK', 'US')).toBe('BPdc')
    expect(translateStitch('sl st', 'US', 'UK')).toBe('ss')
    expect(translateStitch('picot', 'US', 'UK')).toBeNull()
    for (const before of ['', 'FP', 'BP', 'e']) {
      for (const after of ['', '2tog', '12tog']) {
        for (const key of ['sc', 'hdc', 'dc', 'tr', 'dtr', 'trtr'] as const) {
          const word = before + key + after
          expect(translateStitch(translateStitch(word, 'US', 'UK') ?? '', 'UK', 'US')).toBe(word)
        }
      }
    }
  })

  it('knows the words that differ', () => {
    expect([termWord('skip', 'US'), termWord('skip', 'UK')]).toEqual(['skip', 'miss'])
    expect([termWord('gauge', 'US'), termWord('gauge', 'UK')]).toEqual(['gauge', 'tension'])
    expect([chainSpace(5, 'US'), chainSpace(5, 'UK')]).toEqual(['ch-5 sp', '5-ch sp'])
  })
})
