import { chmod, mkdir, mkdtemp, readFile, stat, truncate, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { explainOutcome, openProject, readProjectText } from '../../../src-main/documents'
import type { OpenOutcome, TextOutcome } from '../../../src-main/documents'
import { SIZE_LIMIT } from '../../../src-main/documents/limits'
import { explainReadError } from '../../../src-main/documents/read'

const PROJECT = { format: 'petalyard-project', version: 1 }
const text = (more: object = {}) => JSON.stringify({ ...PROJECT, ...more })

function words(outcome: OpenOutcome | TextOutcome): string {
  return outcome.kind === 'opened' ? 'opened' : explainOutcome(outcome, 'a.petalyard', '0.1.0')
}

function invalid(more: object): string[] {
  const outcome = readProjectText(text(more))
  if (outcome.kind !== 'invalid') throw new Error(`expected invalid values, got ${outcome.kind}`)
  return outcome.findings.map((entry) => `${entry.where}: ${entry.message}`)
}

describe('opening a file', () => {
  let folder = ''
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'petalyard-open-'))
  })

  /** Writes bytes, opens them, and proves that opening left bytes and time alone. */
  async function open(name: string, content: string | Uint8Array): Promise<OpenOutcome> {
    const path = join(folder, name)
    await writeFile(path, content)
    const before = await stat(path)
    const outcome = await openProject(path)
    const after = await stat(path)
    expect(after.mtimeMs).toBe(before.mtimeMs)
    expect(Buffer.from(await readFile(path)).equals(Buffer.from(content))).toBe(true)
    return outcome
  }

  it('opens a project and remembers time and size', async () => {
    const outcome = await open('good.petalyard', text({ title: 'Harbour window throw' }))
    if (outcome.kind !== 'opened') throw new Error(outcome.kind)
    expect(outcome.project.title).toBe('Harbour window throw')
    expect(outcome.migratedFrom).toBeNull()
    expect(outcome.stamp.size).toBe(text({ title: 'Harbour window throw' }).length)
  })

  it('opens a project behind a byte order mark and with CRLF lines', async () => {
    const outcome = await open(
      'bom.petalyard',
      `\ufeff${JSON.stringify(PROJECT, null, 2).replace(/\n/g, '\r\n')}`,
    )
    expect(outcome.kind).toBe('opened')
  })

  it('tells a missing file, a folder and a device', async () => {
    await mkdir(join(folder, 'sub'))
    expect(words(await openProject(join(folder, 'none.petalyard')))).toBe(
      'a.petalyard: there is no such file.',
    )
    expect(words(await openProject(join(folder, 'sub')))).toBe('a.petalyard: this is a folder, not a file.')
    expect(words(await openProject('/dev/null'))).toBe('a.petalyard: this is a device or a pipe, not a file.')
  })

  it('tells a file that may not be read', async () => {
    const denied = Object.assign(new Error('EACCES: permission denied'), { code: 'EACCES' })
    expect(explainReadError(denied)).toMatchObject({ kind: 'unreadable', reason: 'permission' })
    const path = join(folder, 'locked.petalyard')
    await writeFile(path, text())
    await chmod(path, 0)
    const kind = (await openProject(path)).kind
    // The superuser may read everything.
    expect(kind).toBe(process.getuid?.() === 0 ? 'opened' : 'unreadable')
    await chmod(path, 0o600)
  })

  it('refuses a file beyond the size limit without reading it', async () => {
    const path = join(folder, 'large.petalyard')
    await writeFile(path, '')
    await truncate(path, SIZE_LIMIT + 1)
    expect(words(await openProject(path))).toBe('a.petalyard: 33 MB is more than a project can have (32 MB).')
  })

  it('tells binary files and other encodings', async () => {
    const pdf = Uint8Array.from([0x25, 0x50, 0x44, 0x46, 0, 1, 2])
    expect(words(await open('a.pdf', pdf))).toContain(
      'this is a binary file; a Petalyard project is UTF-8 text.',
    )
    expect(words(await open('latin1', Uint8Array.from([0x7b, 0xe9, 0x7d])))).toContain('this is not UTF-8')
    expect(words(await open('utf16', Buffer.from(`\ufeff${text()}`, 'utf16le')))).toContain('UTF-16')
  })

  it('tells an empty file', async () => {
    const line =
      'a.petalyard: line 1, column 1: the file is empty. The file is damaged or no project; it was left as it is.'
    expect(words(await open('empty', ''))).toBe(line)
    expect(words(await open('blank', ' \n\n'))).toBe(line)
  })
})

describe('reading text', () => {
  it.each([
    ['lists', '['.repeat(100_000) + ']'.repeat(100_000)],
    ['groups', '{"a":'.repeat(100_000)],
    ['lists in a project', `{"format":"petalyard-project","version":1,"x":${'['.repeat(100_000)}}`],
  ])('refuses %s nested 100,000 deep before anything else touches them', (_, deep) => {
    expect(readProjectText(deep)).toEqual({ kind: 'too-deep' })
    expect(words({ kind: 'too-deep' })).toBe(
      'a.petalyard: its brackets are nested more than 100 deep; no project is.',
    )
  })

  it('does not count brackets in texts, whatever is escaped there', () => {
    const outcome = readProjectText(text({ title: '[{'.repeat(5000), notes: 'a \\" [[[ \\\\' }))
    expect(outcome.kind).toBe('opened')
  })

  it.each([
    ['{"a": 1,\n "b" 2}', 2, 6, 'a colon is expected.'],
    ['{"a": 1,\n "b": 2,}', 2, 9, 'a name in double quotes is expected.'],
    ['{"a": 1\n "b": 2}', 2, 2, 'a comma is expected.'],
    ['{"a": [1, 2\n', 2, 1, 'the file ends too early.'],
    ['{"a": NaN}', 1, 7, 'this is not a value.'],
    ['{"a": "x\ny"}', 1, 7, 'this text has no closing quote.'],
    ['{}{}', 1, 3, 'nothing more is expected.'],
    ['{"a": 1} // note', 1, 10, 'comments are not allowed.'],
    ['{"a": "\\q"}', 1, 7, 'this backslash escape is not valid.'],
    ["{'a': 1}", 1, 2, 'this is not a value.'],
    ['hello', 1, 1, 'this is not a value.'],
  ])('tells where %j breaks', (broken, line, column, detail) => {
    expect(readProjectText(broken)).toEqual({ kind: 'not-json', line, column, detail })
  })

  it.each([
    ['3', 'it holds a single value.'],
    ['null', 'it holds a single value.'],
    ['[]', 'it holds a list.'],
    ['{}', 'it does not say "format": "petalyard-project".'],
    ['{"format":"something-else","version":1}', 'it does not say "format": "petalyard-project".'],
  ])('tells that %s is no project', (foreign, detail) => {
    expect(readProjectText(foreign)).toEqual({ kind: 'not-a-project', detail })
  })

  it('leaves newer files alone and says what to get', () => {
    expect(words(readProjectText(text({ version: 7, motifs: 'anything' })))).toBe(
      'a.petalyard: this project was saved by a newer Petalyard (file version 7). This is Petalyard 0.1.0, ' +
        'which reads versions up to 1: get one that reads version 7. The file was left as it is.',
    )
  })

  it.each([undefined, null, '1', 0, -1, 1.5, {}])('marks the version %j', (version) => {
    const outcome = readProjectText(text({ version }))
    expect(outcome).toMatchObject({
      kind: 'invalid',
      findings: [{ code: 'file/invalid-value', where: 'version' }],
    })
  })

  it('tells every wrong value at its own path, several at once', () => {
    const found = invalid({
      title: 3,
      yarns: [{ id: '' }, { name: 'Sea glass' }],
      colourways: [{ id: 'a' }, { id: 'b' }, { id: 'c', yarns: { petals: 5, 'row 1': null } }],
      motifs: [{ id: 'm', kind: 'knitted' }, { id: 'n', kind: 'measured', outline: 'star' }, 7],
      layout: { kind: 'blanket', columns: '12' },
      order: ['1,1', 2],
    })
    expect(found).toEqual([
      'title: found 3, expected a text.',
      'yarns[0].id: found an empty text, expected a text that is not empty.',
      'yarns[1].id: found nothing, expected a text.',
      "motifs[0].kind: found the text 'knitted', expected 'rounds' or 'measured'.",
      "motifs[1].outline: found the text 'star', expected 'petals', 'round', 'square', 'hexagon', 'octagon', 'leaf' or 'traced'.",
      'motifs[2]: found 7, expected a group { … }.',
      'colourways[2].yarns.petals: found 5, expected a text.',
      'colourways[2].yarns["row 1"]: found null, expected a text.',
      "layout.columns: found the text '12', expected a number.",
      'order[1]: found 2, expected a text.',
    ])
  })

  it('tells all choices of a value that may be several things', () => {
    expect(invalid({ order: 5 })).toEqual([
      "order: found 5, expected 'there-and-back', 'one-way', 'upward', 'centre', 'colourway' or a list.",
    ])
  })

  it('tells numbers that are none', () => {
    const beyond = readProjectText('{"format":"petalyard-project","version":1,"gauge":{"rows":1e999}}')
    expect(beyond).toMatchObject({
      findings: [{ where: 'gauge.rows', message: 'found a number beyond all bounds, expected a number.' }],
    })
    expect(invalid({ gauge: { rows: 'NaN' } })[0]).toContain("found the text 'NaN', expected a number")
  })

  it('counts wrong values beyond the first fifty', () => {
    const found = invalid({ yarns: Array.from({ length: 1000 }, () => 5) })
    expect(found).toHaveLength(51)
    expect(found.at(-1)).toBe('project: 950 more values cannot be right.')
  })

  it('keeps unknown fields and the order of keys', () => {
    const source =
      '{"zeta":{"deep":[1,{"x":null}]},"version":1,"yarns":[{"twist":"Z","id":"y1"}],"format":"petalyard-project"}'
    const outcome = readProjectText(source)
    if (outcome.kind !== 'opened') throw new Error(outcome.kind)
    expect(JSON.stringify(outcome.project)).toBe(source)
  })

  it('is not harmed by names that programs treat specially', () => {
    const hostile =
      '{"format":"petalyard-project","version":1,"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},' +
      '"yarns":[{"id":"y1","__proto__":{"polluted":1}}],"colourways":[{"id":"c","yarns":{"__proto__":"y1","constructor":"y1"}}]}'
    const outcome = readProjectText(hostile)
    if (outcome.kind !== 'opened') throw new Error(outcome.kind)
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
    expect(Object.getPrototypeOf(outcome.project)).toBe(Object.prototype)
    expect((outcome.project as Record<string, unknown>).polluted).toBeUndefined()
    expect(JSON.stringify(outcome.project)).toBe(hostile)
  })
})
