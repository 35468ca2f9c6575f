/** Whatever a file holds: the right exit code, one clear line, no stack, and the file as it was. */
import { execFileSync } from 'node:child_process'
import { mkdir, readdir, readFile, stat, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { newFolder, petalyard, SAMPLE, writeProject } from './sample'
import type { Ran } from './sample'

const deep = (open: string, count: number) => open.repeat(count)
const nested = (value: string) => JSON.stringify(SAMPLE).replace(/\}$/, `,"extra":${value}}`)

const UNREADABLE: Record<string, string | Uint8Array> = {
  empty: '',
  damaged: JSON.stringify(SAMPLE).slice(0, 400),
  'no JSON': 'ch 5, join with sl st to form a ring',
  'a foreign JSON file': '{"name":"something","version":"1.2.3"}',
  'a list': '[1, 2, 3]',
  'a number': '42',
  newer: JSON.stringify({ ...SAMPLE, version: 2, layout: 'unheard of' }),
  'lists nested 100,000 deep': deep('[', 100_000),
  'groups nested 100,000 deep': deep('{"a":', 100_000),
  'a closed nest of 100,000 in a project': nested(deep('[', 100_000) + deep(']', 100_000)),
  binary: Uint8Array.from({ length: 4096 }, (_, index) => (index * 7919) % 256),
  'Latin-1 text': Uint8Array.from([0x7b, 0x22, 0xe9, 0x22, 0x3a, 0x31, 0x7d]),
}

const COMMANDS: Record<string, (file: string) => string[]> = {
  check: (file) => ['check', file],
  'check --json': (file) => ['check', file, '--json'],
  measure: (file) => ['measure', file],
  plan: (file) => ['plan', file],
  'plan --json': (file) => ['plan', file, '--json'],
  fit: (file) => ['fit', file, '--width', '1300', '--height', '1600'],
  map: (file) => ['map', file, '--out', `${file}.pdf`],
}

let folder = ''
beforeAll(async () => {
  folder = await newFolder()
})

/** Runs a command on a file and proves that the file, its time and its folder stayed as they were. */
async function onFile(content: string | Uint8Array, command: (file: string) => string[]): Promise<Ran> {
  const own = join(folder, Math.random().toString(36).slice(2))
  await mkdir(own)
  const file = join(own, 'a.petalyard')
  await writeFile(file, content)
  const before = await stat(file)
  const ran = await petalyard(...command(file))
  expect((await stat(file)).mtimeMs).toBe(before.mtimeMs)
  expect(Buffer.compare(await readFile(file), Buffer.from(content))).toBe(0)
  expect(await readdir(own)).toEqual(['a.petalyard'])
  return ran
}

const oneClearLine = (err: string) => {
  expect(err).toMatch(/^petalyard: [^\n]+\n$/)
  expect(err).not.toMatch(/\bat [\w.<>]+ \(|node:|\.ts:|undefined|\[object/)
}

describe('a file that cannot be opened ends with 3', () => {
  for (const [name, content] of Object.entries(UNREADABLE))
    it.each(Object.keys(COMMANDS))(`${name}: %s`, async (command) => {
      const ran = await onFile(content, COMMANDS[command] ?? (() => []))
      expect(ran).toMatchObject({ code: 3, out: '' })
      oneClearLine(ran.err)
    })

  it.each(Object.keys(COMMANDS))('missing, or a folder: %s', async (command) => {
    for (const path of [join(folder, 'none.petalyard'), folder]) {
      const ran = await petalyard(...(COMMANDS[command]?.(path) ?? []))
      expect(ran).toMatchObject({ code: 3, out: '' })
      oneClearLine(ran.err)
    }
  })
})

describe.runIf(process.platform !== 'win32')('what is no file ends with 3, and nobody waits for it', () => {
  const all: typeof COMMANDS = { ...COMMANDS, read: (file) => ['read', file] }
  beforeAll(() => execFileSync('mkfifo', [join(folder, 'pipe')]))

  it.each(Object.keys(all))('a pipe, an endless device: %s', async (command) => {
    for (const path of [join(folder, 'pipe'), '/dev/zero']) {
      const ran = await petalyard(...(all[command]?.(path) ?? []))
      expect(ran).toMatchObject({ code: 3, out: '' })
      expect(ran.err).toContain('a device or a pipe, not a file')
      oneClearLine(ran.err)
    }
  })
})

const layout = (more: object) => JSON.stringify({ ...SAMPLE, layout: { ...SAMPLE.layout, ...more } })

/** A project with values that cannot be: where the finding must point. */
const ABSURD: Record<string, readonly [content: string, where: string]> = {
  '−3 columns': [layout({ columns: -3 }), 'layout.columns'],
  'no columns': [layout({ columns: 0 }), 'layout.columns'],
  'half a column': [layout({ columns: 2.5 }), 'layout.columns'],
  '10⁹ rows': [layout({ rows: 1e9 }), 'layout'],
  '10³⁰⁰ rows': [layout({ rows: 1e300 }), 'layout'],
  'a number beyond all bounds': [layout({ rows: 123454321 }).replace('123454321', '1e999'), 'layout.rows'],
  'rows as text': [layout({ rows: 'NaN' }), 'layout.rows'],
  'rows as null': [layout({ rows: null }), 'layout.rows'],
  'motifs that are no list': [JSON.stringify({ ...SAMPLE, motifs: {} }), 'motifs'],
  'a version that is no number': [JSON.stringify({ ...SAMPLE, version: '1' }), 'version'],
  'an unknown arrangement': [layout({ arrangement: 'spiral' }), 'layout.arrangement'],
  'an unknown yarn': [
    JSON.stringify({ ...SAMPLE, colourways: [{ id: 'c1', motif: 'm1', yarns: { petals: 'y9' } }] }),
    'colourways[0].yarns.petals',
  ],
}

describe('a project with impossible values ends with 1', () => {
  for (const [name, [content, where]] of Object.entries(ABSURD)) {
    it(`${name}: check tells where, one finding a line`, async () => {
      const ran = await onFile(content, (file) => ['check', file])
      expect(ran.code).toBe(1)
      const errors = ran.out.split('\n').filter((line) => line.startsWith('error'))
      expect(
        errors.some((line) => line.includes(` ${where}`)),
        ran.out,
      ).toBe(true)
      expect(ran.out).not.toMatch(/NaN(?!')|undefined|\[object/)
    })

    it(`${name}: check and plan print one JSON document`, async () => {
      for (const command of ['check', 'plan', 'measure']) {
        const ran = await onFile(content, (file) => [command, file, '--json'])
        if (command !== 'measure') expect(ran.code).toBe(1)
        const { findings } = JSON.parse(ran.out) as { findings: { severity: string }[] }
        if (command !== 'measure') expect(findings.some((entry) => entry.severity === 'error')).toBe(true)
      }
    })
  }

  it('fit and map tell it too, and no map is written', async () => {
    const broken = layout({ rows: 'many' })
    for (const command of [COMMANDS.map, COMMANDS.fit]) {
      const ran = await onFile(broken, command ?? (() => []))
      expect(ran).toMatchObject({ code: 1, out: '' })
      expect(ran.err).toContain("layout.rows: found the text 'many', expected a number.")
    }
    const absurd = await onFile(layout({ columns: -3 }), (file) => ['map', file, '--out', `${file}.pdf`])
    expect(absurd.code).toBe(1)
    expect(absurd.err).toContain('no map was written')
  })

  it('names from a file cannot write to the terminal', async () => {
    const hostile = { ...SAMPLE, title: 'Nice \u001b[2J\u001b]0;x\u0007 \u202e throw' }
    const ran = await petalyard('plan', await writeProject(hostile))
    // eslint-disable-next-line no-control-regex
    expect(ran.out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/)
  })
})

describe.each(['\u001b]0;pwn\u0007', '\u009b31m\u007f\u0085', '\u202e\u2066', '\rfake'])(
  'a terminal gets nothing that it would obey: %j',
  (evil) => {
    const project = {
      ...SAMPLE,
      yarns: SAMPLE.yarns!.map((yarn) => ({ ...yarn, name: `Moss ${evil}` })),
      colourways: SAMPLE.colourways!.map((way) => ({ ...way, name: `Dawn ${evil}` })),
      motifs: SAMPLE.motifs!.map((motif) => ({ ...motif, name: `Flower ${evil}` })),
    }
    const name = `a${evil}.petalyard`.replaceAll('\r', '')

    it.each([
      ['plan', ['--json'], project],
      ['measure', ['--json'], project],
      ['plan', ['--csv', 'materials'], project],
      ['plan', ['--csv', 'order'], project],
      ['check', [], { ...SAMPLE, units: evil }],
      ['check', ['--json'], { ...SAMPLE, units: evil }],
      ['plan', [], { ...SAMPLE, layout: { ...SAMPLE.layout, arrangement: evil } }],
      ['map', ['--sheets', 'title', '--out', 'OUT.pdf'], project],
      ['page', ['--out', 'OUT.html'], project],
      ['picture', ['--out', 'OUT.svg'], project],
    ])('%s %j', async (command, options, file) => {
      const path = await writeProject(file, name)
      const ran = await petalyard(command, path, ...options.map((word) => word.replace('OUT', path)))
      expect(ran.code).toBeLessThan(2)
      expect(ran.out + ran.err).not.toBe('')
      expect(ran.out + ran.err).not.toMatch(/[^\P{Cc}\n\t\r]|\r(?!\n)|[\u2028-\u202e\u2066-\u2069]/u)
      // What a program reads is whole all the same.
      const kept = () => JSON.stringify(JSON.parse(ran.out)).includes(JSON.stringify(evil).slice(1, -1))
      if (options[0] === '--json') expect(kept()).toBe(true)
    })

    it('example, and a file that is not there', async () => {
      const out = await petalyard(
        'example',
        'pond-edge-bag',
        '--out',
        await writeProject(SAMPLE, name),
        '--force',
      )
      const missing = await petalyard('check', `none${evil}`)
      expect(out.out + missing.err).not.toMatch(/[^\P{Cc}\n]/u)
    })
  },
)

describe('words of an option', () => {
  it('are taken however they are written', async () => {
    for (const words of [
      ['map', '--paper', 'a4', '--style', 'INK', '--terms', 'us', '--hand', 'Left'],
      ['photo', '--sheet', 'LETTER'],
    ]) {
      const [command = '', ...options] = words
      const { code, err } = await petalyard(command, 'nothing-here', '-o', 'nowhere.pdf', ...options)
      expect(code, err).toBe(3)
      expect(err).not.toContain('invalid')
    }
  })
})

describe('wrong use ends with 2', () => {
  it.each([
    [['plann'], "petalyard: unknown command 'plann' (Did you mean plan?)\n"],
    [['plan'], "petalyard: missing required argument 'file'\n"],
    [['plan', 'a', 'b'], "petalyard: too many arguments for 'plan'. Expected 1 argument but got 2.\n"],
    [['plan', 'a', '--jsno'], "petalyard: unknown option '--jsno' (Did you mean --json?)\n"],
    [['map', 'a'], "petalyard: required option '-o, --out <pdf>' not specified\n"],
    [
      ['map', 'a', '-o', 'b', '--paper', 'A5'],
      "petalyard: option '--paper <size>' argument 'A5' is invalid. Allowed choices are A4, Letter.\n",
    ],
    [
      ['map', 'a', '-o', 'b', '--pages', '3-1'],
      "petalyard: option '--pages <pages>' argument '3-1' is invalid. Page numbers from 1 are expected, such as \"1-3,5\".\n",
    ],
    [['map', 'a', '-o', './a'], 'petalyard: --out ./a would replace the project itself.\n'],
  ])('%j', async (args, err) => {
    expect(await petalyard(...args)).toEqual({ code: 2, out: '', err })
  })

  it('nothing at all: the help, on standard error', async () => {
    const ran = await petalyard()
    expect(ran).toMatchObject({ code: 2, out: '' })
    expect(ran.err).toContain('Usage: petalyard')
  })
})

describe('what is there already', () => {
  it.each([
    ['map', 'PDF', 'other.petalyard', JSON.stringify(SAMPLE)],
    ['map', 'PDF', 'notes.pdf', 'my own notes'],
    ['page', 'HTML page', 'other.petalyard', JSON.stringify(SAMPLE)],
    ['page', 'HTML page', 'map.pdf', '%PDF-1.7'],
  ])('is not replaced by %s where it is no %s: %s', async (command, kind, name, text) => {
    const out = join(await newFolder(), name)
    await writeFile(out, text)
    expect(await petalyard(command, await writeProject(SAMPLE), '--out', out)).toEqual({
      ...{ code: 4, out: '' },
      err: expect.stringContaining(`is there already and is no ${kind}; it was left as it is.`) as string,
    })
    expect(await readFile(out, 'utf8')).toBe(text)
  })

  it.each(['map', 'page'])('is replaced by %s where it is like it, or empty', async (command) => {
    const out = join(await newFolder(), 'made')
    await writeFile(out, '')
    for (let again = 0; again < 2; again++)
      expect(await petalyard(command, await writeProject(SAMPLE), '--out', out)).toMatchObject({ err: '' })
    expect((await stat(out)).size).toBeGreaterThan(1000)
  })
})

describe('a project where a pattern is read', () => {
  it('is said to be one', async () => {
    const ran = await petalyard('read', await writeProject(SAMPLE))
    expect(ran).toMatchObject({ code: 3, out: '' })
    expect(ran.err).toContain('it is a project; read takes the text of a pattern.')
  })
})

describe('help', () => {
  it.each(['check', 'measure', 'read', 'plan', 'fit', 'arrange', 'map', 'chart', 'example'])(
    '%s has one, with an example',
    async (command) => {
      const ran = await petalyard(command, '--help')
      expect(ran).toMatchObject({ code: 0, err: '' })
      expect(ran.out).toContain(`Usage: petalyard ${command}`)
      expect(ran.out).toMatch(new RegExp(`Examples?:\\n  petalyard ${command} `))
      expect(Math.max(...ran.out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80)
      expect((await petalyard('help', command)).out).toBe(ran.out)
    },
  )
})
