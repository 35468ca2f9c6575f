/**
 * Pages of docs/ that follow from the source: the findings, the keys, the fields and the JSON Schema of the project
 * file.
 * `npm run docs` writes them, and a test compares them.
 */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { format } from 'prettier'
import type { Options } from 'prettier'
import { PROJECT_VERSION, projectJsonSchema } from '../shared-types/project'
import { CATALOGUE } from '../src-core/findings/catalogue'
import type { CatalogueEntry } from '../src-core/findings/catalogue'
import { sayIn } from '../src-renderer/state/say'
import { keyRows } from '../src-renderer/frame/keys'
import { keySheets } from '../src-renderer/frame/map-keys'
import { commandRows } from '../src-renderer/frame/shortcuts'
import { LAYOUT_KINDS } from '../src-renderer/state/edits/layout-kind'
import { TERM_WORDS, termWord } from '../src-core/stitches/terms'
import type { TermWord } from '../src-core/stitches/terms'
import { COMMANDS } from '../shared-types/commands'
import { explainOutcome } from '../src-main/documents/outcome'
import type { OpenOutcome } from '../src-main/documents/outcome'
import { describeFields, fieldTable } from './field-docs'
import { licencesPage } from './licences'

const root = new URL('..', import.meta.url)

/** Words for the part of a code before its stroke. */
const ROOMS: Readonly<Record<string, string>> = {
  file: 'The file and what refers to what in it',
  app: 'Window, machine and saved files',
  gauge: 'Gauge',
  motif: 'Motifs',
  rounds: 'Written rounds',
  layout: 'Arrangement',
  applique: 'Appliqué',
  garland: 'Garlands',
  kit: 'Kits',
  joins: 'Joins',
  order: 'Working order',
  letters: 'Letters on paper',
  colour: 'Colours',
  yarn: 'Yarn',
  edging: 'Edging',
  time: 'Time',
  cost: 'Cost',
}

/** One example of every way in which opening ends without a project. */
const OUTCOMES: readonly Exclude<OpenOutcome, { kind: 'opened' | 'invalid' }>[] = [
  { kind: 'unreadable', reason: 'missing', detail: '' },
  { kind: 'unreadable', reason: 'permission', detail: '' },
  { kind: 'unreadable', reason: 'folder', detail: '' },
  { kind: 'unreadable', reason: 'not-a-file', detail: '' },
  { kind: 'unreadable', reason: 'other', detail: 'EIO' },
  { kind: 'too-large', bytes: 48 * 2 ** 20 },
  { kind: 'not-text', detail: 'this is a binary file' },
  { kind: 'too-deep' },
  { kind: 'not-json', line: 12, column: 5, detail: 'a comma is expected.' },
  { kind: 'not-a-project', detail: 'it does not say "format": "petalyard-project".' },
  { kind: 'newer', version: PROJECT_VERSION + 1 },
  { kind: 'not-migrated', from: 1, to: PROJECT_VERSION, detail: 'what went wrong.' },
]

/** `{count}` of the catalogue as something that reads as a place to fill; words for more than one, and in UK terms. */
const places = (text: string): string =>
  text
    .replace(/\{(\w+)\}/g, (place, name: string) =>
      Object.hasOwn(TERM_WORDS, name) ? termWord(name as TermWord, 'UK') : place,
    )
    .replace(/\{\w+\|[^|{}]*\|([^|{}]*)\}/g, '$1')
    .replace(/\{(\w+)\}/g, '‹$1›')

function findingsPage(): string {
  const entries = Object.entries(CATALOGUE as Readonly<Record<string, CatalogueEntry>>)
  const rooms = [...new Set(entries.map(([code]) => code.split('/')[0] ?? ''))]
  const sections = rooms.map((room) => {
    const own = entries.filter(([code]) => code.startsWith(`${room}/`))
    const blocks = own.map(
      ([code, { severity, message, mend }]) =>
        `### \`${code}\`\n\n**${severity}** · ${places(message)}\n\n_${places(mend)}_\n`,
    )
    return `## ${ROOMS[room] ?? room}\n\n${blocks.join('\n')}`
  })
  const outcomes = OUTCOMES.map((outcome) => `- ${explainOutcome(outcome, 'throw.petalyard', '‹version›')}`)
  return [
    '# Findings',
    'Written by `npm run docs` from `src-core/findings/`. Do not edit by hand.',
    'A finding has a stable code, a severity, a place, a message with its numbers, and how to fix it. ' +
      'An **error** keeps part of the plan from being right (`petalyard` ends with 1), a **warning** should be ' +
      'checked before yarn is cut, a **note** is good to know.',
    ...sections,
    '## When a file cannot be opened',
    'No finding, but one line; `petalyard` ends with 3. The file is never changed by opening it.',
    outcomes.join('\n'),
  ].join('\n\n')
}

/** Rows of keys as a table; an upright stroke would end a cell. */
const keyTable = (rows: readonly (readonly [string, string])[]): string =>
  ['| key | does |', '| --- | --- |', ...rows.map((row) => `| ${row.join(' | ')} |`)].join('\n')

function keysPage(): string {
  const told = { isMac: false, units: 'metric' } as const
  // Pages are British.
  sayIn('UK')
  // What is the same in all kinds stands last, once.
  const sheets = new Map(LAYOUT_KINDS.flatMap((kind) => keySheets(kind)).reverse())
  const sections = [...sheets]
    .reverse()
    .map(([where, rows]) => `## ${where}\n\n${keyTable(keyRows(rows, told))}`)
  const everywhere = commandRows(COMMANDS, told.isMac)
  return [
    '# Keys',
    'Written by `npm run docs` from the tables that hear them (`src-renderer/frame/keys.ts`, `panel-keys.ts`, ' +
      '`shared-types/commands.ts`). Do not edit by hand.',
    'In the window **?** shows those of the current project. On a Mac Command (⌘) stands for Ctrl and Option for ' +
      'Alt, and redo is ⇧⌘Z. In an imperial project items of a panel move by 1/16 in, 1/2 in and 1/64 in.',
    ...sections,
    `## Everywhere\n\n${keyTable([['?', 'this sheet'], ...everywhere])}`,
  ].join('\n\n')
}

const TABLE = /(<!-- fields: written by `npm run docs` -->\n)[^]*?(<!-- end of fields -->)/

/** The page on the project file with its table of fields as it should be. */
function projectPage(): string {
  const page = readFileSync(new URL('docs/project-file.md', root), 'utf8')
  return page.replace(TABLE, (_, start: string, end: string) => `${start}\n${fieldTable()}\n\n${end}`)
}

/** Every generated page: its path under the project's root, and its text as it should be. */
export async function generateDocs(): Promise<Readonly<Record<string, string>>> {
  const options = JSON.parse(readFileSync(new URL('.prettierrc.json', root), 'utf8')) as Options
  const write = (text: string, parser: string) => format(text, { ...options, plugins: [], parser })
  return {
    'docs/keys.md': await write(keysPage(), 'markdown'),
    'docs/findings.md': await write(findingsPage(), 'markdown'),
    'docs/licences.md': await write(licencesPage(), 'markdown'),
    'docs/project-file.md': await write(projectPage(), 'markdown'),
    'docs/project.schema.json': await write(JSON.stringify(describeFields(projectJsonSchema())), 'json'),
  }
}

/** The path of a page on this machine. */
export const pagePath = (name: string): string => fileURLToPath(new URL(name, root))
