/** `petalyard read`: the account of pasted rounds, for people and for programs. */
import { mkdtemp, readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { spawnSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'
import { petalyard } from './sample'

const FLOWER = `Rnd 1: Ch 4, join with sl st to form ring, ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, sc in same st as joining, *ch 4, sk next st, sc in next st; rep from * 4 more times, ch 4, sk last st; join with sl st in first sc. (6 ch-4 sps)
Rnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-4 sp around; join with sl st in first sc. (6 petals)
`

async function writeText(text: string | Uint8Array): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'petalyard-read-'))
  const file = join(folder, 'rounds.txt')
  await writeFile(file, text)
  return file
}

describe('read', () => {
  it('gives the rounds with the fields of the contract', async () => {
    const ran = await petalyard('read', await writeText(FLOWER), '--json')
    expect(ran).toMatchObject({ code: 0, err: '' })
    const { rounds, findings } = JSON.parse(ran.out) as { rounds: object[]; findings: object[] }
    expect(findings).toEqual([])
    expect(rounds).toMatchObject([
      { number: 1, made: 12, consumed: { stitches: 0, spaces: 0 }, spaces: {} },
      { number: 2, made: 6, consumed: { stitches: 12, spaces: 0 }, spaces: { 'ch-4': 6 } },
      { number: 3, made: 42, consumed: { stitches: 0, spaces: 6 }, spaces: {} },
    ])
  })

  it('shows people a table and totals, in the terms of the text', async () => {
    const ran = await petalyard('read', await writeText(FLOWER))
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/^Round +Makes +Uses +Spaces left +Passed over$/m)
    expect(ran.out).toMatch(/^2 +6 +12 sts +6 ch-4 +–$/m)
    expect(ran.out).toMatch(/^3 +42 +6 sps +– +6 sts$/m)
    expect(ran.out).toMatch(/^hdc +12$/m)
  })

  it('says which number would let a round work out, and where', async () => {
    const file = await writeText(FLOWER.replace('4 more times', '5 more times'))
    const told = await petalyard('read', file)
    expect(told.code).toBe(1)
    expect(told.out).toMatch(
      /^It would work out with\nRound 2: 4 in place of 5 +"rep from \* 4 more times" \(line 2, column 85\)$/m,
    )
    const { suggestions } = JSON.parse((await petalyard('read', file, '--json')).out) as object & {
      suggestions: object[]
    }
    const words = 'rep from * 4 more times'
    expect(suggestions).toEqual([{ round: 2, line: 2, column: 85, was: '5', now: '4', words }])
    expect((await petalyard('read', await writeText(FLOWER))).out).not.toContain('would work out')
  })

  it('gives what the page says besides its rounds, with where it stands and what it would set', async () => {
    const page = `Meadow Mat\nHook: US H-8\nGauge: Rnds 1 and 2 = 2"\n\nNotes\nWeave in ends.\n\n${FLOWER}`
    const file = await writeText(page)
    const told = JSON.parse((await petalyard('read', file, '--json')).out) as { rounds: object[] }
    expect(told.rounds).toHaveLength(3)
    const at = (words: string, line: number, column: number) => ({ words, line, column })
    expect(told).toMatchObject({
      proposals: [
        { id: 'name-1', kind: 'name', sets: { 'motif.name': 'Meadow Mat' }, ...at('Meadow Mat', 1, 1) },
        { id: 'hook-1', sets: { 'motif.gauge.hook': 5 }, value: '5 mm', ...at('H-8', 2, 10) },
        {
          ...{ kind: 'rounds-gauge', label: 'Gauge by rounds', ...at('Rnds 1 and 2 = 2"', 3, 8) },
          // In the units of the page.
          value: 'rounds 1–2 measure 2 in across',
          sets: { 'motif.gauge.rounds': 2, 'motif.gauge.across': 50.8 },
        },
        {
          kind: 'notes',
          sets: { 'motif.instructions': 'Notes: Weave in ends.' },
          ...at('Weave in ends.', 6, 1),
        },
      ],
      findings: [],
    })
    const shown = (await petalyard('read', file)).out
    expect(shown).toMatch(/^From the page\nName of the motif \(line 1\) +Meadow Mat\nHook \(line 2\) +5 mm\n/)
    const plain = JSON.parse((await petalyard('read', await writeText(FLOWER), '--json')).out) as object
    expect(plain).toMatchObject({ proposals: [] })
  })

  it('takes special stitches out of a pasted block', async () => {
    const file = await writeText(
      'Special stitches: Twin: (Sc, hdc) in same st\n\nRnd 1: Magic ring, 6 sc in ring.\nRnd 2: *Twin in next st; rep from * around.',
    )
    const told = JSON.parse((await petalyard('read', file, '--json')).out) as object
    expect(told).toMatchObject({
      special: [{ name: 'twin', explanation: '(Sc, hdc) in same st' }],
      rounds: [
        { number: 1, made: 6 },
        { number: 2, made: 12 },
      ],
      findings: [],
    })
    const shown = (await petalyard('read', file)).out
    expect(shown).toMatch(/^Special stitches\ntwin +\(Sc, hdc\) in same st\n\nRound/)
    expect(shown).toMatch(/^2 +12 /m)
  })

  it('takes up where the round before left off', async () => {
    const file = await writeText('Round 4: 1 ch, (1 dc, 2 tr, 1 dc) in each 3-ch sp around, ss to first dc.')
    const after = '{"stitches": 12, "spaces": {"ch-3": 4}}'
    const ran = await petalyard('read', file, '--terms', 'UK', '--after', after, '--json')
    expect(ran.code).toBe(0)
    expect(JSON.parse(ran.out)).toMatchObject({
      terms: 'UK',
      rounds: [
        { number: 4, made: 16, consumed: { stitches: 0, spaces: 4 }, passed: { stitches: 12, spaces: 0 } },
      ],
    })
  })

  it('ends with 1 where a round has an error, and still answers', async () => {
    const file = await writeText('Rnd 3: *Sc in next 3 sts, 2 sc in next st; rep from * around; join.')
    const ran = await petalyard('read', file, '--terms', 'US', '--after', '{"stitches": 22}', '--json')
    expect(ran.code).toBe(1)
    expect(JSON.parse(ran.out)).toMatchObject({
      rounds: [{ number: 3, made: null, consumed: null }],
      findings: [{ code: 'rounds/repeat-does-not-fit', severity: 'error', target: { round: 3, column: 8 } }],
    })
    const shown = await petalyard('read', file, '--terms', 'US', '--after', '{"stitches": 22}')
    expect(shown.code).toBe(1)
    expect(shown.out).toContain('round 3, column 8')
  })

  it('goes on from the text of the rounds before, and tells its own alone', async () => {
    const file = await writeText(
      'Rnd 2: 2 sc in each sc around. (24 sc)\nRnd 3: *Sc in next sc, 2 sc in next sc; rep from * 11 times. (36 sc)',
    )
    const after = JSON.stringify({ rounds: 'Rnd 1: 12 sc in a magic ring.\n\n' })
    const ran = await petalyard('read', file, '--terms', 'US', '--after', after, '--json')
    const { rounds, findings, suggestions } = JSON.parse(ran.out) as Record<string, object[]>
    expect(rounds).toMatchObject([
      { number: 2, made: 24, source: 1, consumed: { stitches: 12 }, line: 1 },
      { number: 3, made: 36, source: 2, consumed: { stitches: 24 }, line: 2 },
    ])
    expect(findings).toEqual([])
    expect(suggestions).toEqual([])
  })

  it('counts lines from the first of the text, and says what is wrong before it', async () => {
    const file = await writeText('Rnd 2: *Sc in next sc, 2 sc in next sc; rep from * 7 times. (18 sc)')
    const after = JSON.stringify({ rounds: 'Leaf\nRnd 1: 12 sc in a magic ring. (13 sc)' })
    const ran = await petalyard('read', file, '--terms', 'US', '--after', after, '--json')
    const { findings } = JSON.parse(ran.out) as Record<string, object[]>
    expect(findings).toMatchObject([
      { code: 'rounds/wrong-end-count', where: expect.stringMatching(/^before the text, .*round 1/) },
      { code: 'rounds/too-many-used', target: { round: 2, line: 1 } },
    ])
    expect(findings![0]).not.toHaveProperty('target.line')
    const sound = JSON.stringify({ rounds: 'Leaf\nRnd 1: 12 sc in a magic ring.' })
    const again = await petalyard('read', file, '--terms', 'US', '--after', sound, '--json')
    expect(JSON.parse(again.out)).toMatchObject({ suggestions: [{ round: 2, line: 1, now: '5' }] })
  })

  it.each([
    ['no JSON', 'stitches: 12'],
    ['a count below nothing', '{"stitches": -1}'],
    ['a count that nobody has', '{"stitches": 1e9}'],
    ['half a stitch', '{"stitches": 1.5}'],
    ['a space without a name', '{"spaces": {"corner": 4}}'],
    ['nothing known', '{"stitch": 12}'],
    ['a list', '[12]'],
  ])('refuses --after with %s', async (_, after) => {
    const ran = await petalyard('read', await writeText(FLOWER), '--after', after)
    expect(ran.code).toBe(2)
    expect(ran.out).toBe('')
    expect(ran.err).toMatch(/^petalyard: .*--after/)
  })

  it('refuses terms that nobody writes in', async () => {
    expect((await petalyard('read', await writeText(FLOWER), '--terms', 'FR')).code).toBe(2)
  })

  it('ends with 3 where the file is missing, a folder or no text', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'petalyard-read-'))
    for (const file of [
      join(folder, 'none.txt'),
      folder,
      await writeText(new Uint8Array([0, 1, 2])),
      await writeText(new Uint8Array([0xff, 0xfe, 0x41])),
    ]) {
      const ran = await petalyard('read', file)
      expect(ran.code).toBe(3)
      expect(ran.err).toMatch(/^petalyard: .* could not be read: .*\.\n$/)
      expect(ran.out).toBe('')
    }
  })

  it('says so where there is no round in the text', async () => {
    const ran = await petalyard('read', await writeText(''), '--json')
    expect(ran.code).toBe(1)
    expect(JSON.parse(ran.out)).toMatchObject({ rounds: [], findings: [{ code: 'rounds/nothing' }] })
  })

  it('reads standard input', async () => {
    const script = new URL('../../../scripts/petalyard.mjs', import.meta.url)
    const ran = spawnSync(process.execPath, [script.pathname, 'read', '-', '--json'], {
      input: FLOWER,
      encoding: 'utf8',
    })
    expect(ran.status).toBe(0)
    expect(JSON.parse(ran.stdout)).toMatchObject({ rounds: [{ made: 12 }, { made: 6 }, { made: 42 }] })
  })

  it('gives published formulations the account that they have', async () => {
    const fixture = new URL('../../fixtures/rounds.jsonl', import.meta.url)
    const line = (await readFile(fixture, 'utf8'))
      .split('\n')
      .map(
        (each) =>
          each &&
          (JSON.parse(each) as { id: string; text: string; terms: string; previous: object; expect: object }),
      )
      .find((each) => each && each.id === 'g57')
    if (!line) throw new Error('g57 is missing')
    const ran = await petalyard(
      'read',
      await writeText(line.text),
      '--terms',
      line.terms,
      '--after',
      JSON.stringify(line.previous),
      '--json',
    )
    const { made, consumed, spaces } = line.expect as Record<string, unknown>
    expect(JSON.parse(ran.out)).toMatchObject({ rounds: [{ made, consumed, spaces }] })
  })
})
