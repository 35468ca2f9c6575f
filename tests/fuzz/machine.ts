/** What comes from outside the engine: files on disk, messages of a window, requests to the server, words of a command line, paper. */
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { ExportRequest } from '../../shared-types/bridge'
import { PICTURE_FORMATS, PICTURE_SUBJECTS } from '../../shared-types/pictures'
import type { Random } from '../../src-core/units/random'
import { DOOR, LoopbackServer } from '../../src-main/browser/server'
import { run } from '../../src-main/command/program'
import { openProject } from '../../src-main/documents/read'
import { answer, OPERATIONS, runExport } from '../../src-main/host/operations'
import { makeExport } from '../../src-main/host/paper-work'
import { NoSuchPictureError } from '../../src-main/paper/picture'
import type { HostWorld } from '../src-main/host/host-world'
import { makeHost, TestCaller } from '../src-main/host/host-world'
import { LEAKS, must } from './asserts'
import { EXAMPLES, roundTexts } from './corpus'
import { changedText, mutated, oneOf, TEXTS } from './mutate'
import type { Json } from './mutate'
import type { Target } from './target'

/** A folder for one case, gone after it. */
async function inFolder(work: (folder: string) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'petalyard-fuzz-'))
  try {
    await work(folder)
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 50 })
  }
}

/** Bytes of a text file changed at some places; latin1 keeps each of them as one sign. */
function changedBytes(text: string, random: Random): string {
  const bytes = Buffer.from(text, 'utf8')
  for (let changes = 1 + random.below(4); changes > 0; changes--)
    bytes[random.below(bytes.length)] = random.below(256)
  const end = random.below(4) === 0 ? random.below(bytes.length) : bytes.length
  return bytes.subarray(0, end).toString('latin1')
}

const files: Target = {
  name: 'files',
  perRound: 30,
  draw: (random) => changedBytes(JSON.stringify(oneOf(EXAMPLES, random)), random),
  run: (text) =>
    inFolder(async (folder) => {
      const path = join(folder, 'a.petalyard')
      const bytes = Buffer.from(text, 'latin1')
      await writeFile(path, bytes)
      const outcome = await openProject(path)
      must(/^[a-z-]+$/.test(outcome.kind), () => `an outcome called ${outcome.kind}`)
      must((await readFile(path)).equals(bytes), () => 'the file was changed by opening it')
    }),
}

const CHANGE: Json = { revision: 1, text: JSON.stringify(EXAMPLES[0]) }
/** A good message for each operation that takes one. */
const PAYLOADS: Readonly<Record<string, Json>> = {
  keepProject: CHANGE,
  saveProject: CHANGE,
  saveProjectAs: CHANGE,
  duplicateProject: CHANGE,
  duplicateAsPlan: CHANGE,
  answerDisk: { revision: 1, text: JSON.stringify(EXAMPLES[1]), answer: 'keep-mine' },
  newProject: { from: 'example', name: 'throw' },
  openRecent: { id: 'kept-one' },
  forgetRecent: { id: 'kept-one' },
  previewPage: { text: JSON.stringify(EXAMPLES[2]), page: 1, paper: 'A4', sheets: ['map'] },
  printSheets: { paper: 'A4' },
  changeSettings: { theme: 'dark', units: 'imperial' },
  addFont: { name: 'hebrew.ttf', data: 'AAEAAAAA', face: null },
  removeFont: { id: '0' },
  showEditState: { undo: 'paint', redo: null },
  exportProject: { kind: 'map', text: JSON.stringify(EXAMPLES[3]), paper: 'A4', pages: [1] },
}
const MESSAGES: readonly Json[] = [...Object.keys(OPERATIONS), 'exportProject'].map((name) => ({
  name,
  payload: PAYLOADS[name] ?? null,
}))

const messages: Target = {
  name: 'messages',
  perRound: 20,
  draw: (random) => JSON.stringify(mutated(MESSAGES, random)),
  run: (text) =>
    inFolder(async (folder) => {
      const world = await makeHost({ dataFolder: join(folder, 'own') })
      try {
        const caller = new TestCaller(world.host.openBlank())
        caller.place = join(folder, 'saved.petalyard')
        const message = JSON.parse(text) as { name?: unknown; payload?: unknown } | null
        const name = typeof message?.name === 'string' ? message.name : 'facts'
        const payload = message?.payload
        const told =
          name === 'exportProject'
            ? await runExport(world.host, caller, payload, () => undefined, new AbortController().signal)
            : await answer(world.host, caller, name, payload)
        must(/^(done|refused|cancelled)$/.test(told.outcome), () => `an outcome called ${told.outcome}`)
        if (told.outcome !== 'refused') return
        must(told.problem.code !== 'app/failed', () => told.problem.message)
        must(!told.problem.message.includes('[object'), () => told.problem.message)
      } finally {
        await world.end()
      }
    }),
}

/** A server for as many requests as one likes; what they bring must not get in. */
let door: Promise<{ server: LoopbackServer; world: HostWorld; port: number }> | null = null
async function openDoor() {
  const folder = await mkdtemp(join(tmpdir(), 'petalyard-fuzz-door-'))
  await mkdir(join(folder, 'renderer'))
  await writeFile(join(folder, 'renderer', 'index.html'), '<!doctype html><html><head></head>INSIDE</html>')
  await writeFile(join(folder, 'client.js'), 'INSIDE')
  const server = new LoopbackServer({
    windowFolder: join(folder, 'renderer'),
    clientScript: join(folder, 'client.js'),
    streamScript: join(folder, 'client.js'),
    entryScript: join(folder, 'none.js'),
    saveFolder: join(folder, 'saved'),
  })
  const world = await makeHost({ announce: server.announce, dataFolder: join(folder, 'own') })
  const port = await server.listen(world.host)
  return { server, world, port }
}

/** Ends the server of the requests, where one was started. */
export async function closeDoor(): Promise<void> {
  const open = await door
  door = null
  await open?.server.close()
  await open?.world.end()
}

const REQUESTS = [
  'GET / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\n\r\n',
  'GET /enter HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nSec-Fetch-Mode: navigate\r\nSec-Fetch-Site: cross-site\r\n\r\n',
  'POST /enter HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nOrigin: http://127.0.0.1:PORT\r\nContent-Length: 43\r\n\r\naaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa',
  'POST /ask/facts HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nOrigin: http://127.0.0.1:PORT\r\nContent-Type: application/json\r\nContent-Length: 2\r\nCookie: petalyard-PORT=aaaa\r\n\r\n{}',
  'POST /export HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nOrigin: http://127.0.0.1:PORT\r\nTransfer-Encoding: chunked\r\nContent-Type: application/json\r\n\r\n2\r\n{}\r\n0\r\n\r\n',
  'GET /../client.js HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nCookie: petalyard-PORT=\r\n\r\n',
  'GET /%2e%2e/%2e%2e/etc/passwd HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nSec-Fetch-Site: same-origin\r\n\r\n',
  'GET /stream HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n\r\n',
  'OPTIONS * HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nAccess-Control-Request-Method: POST\r\nOrigin: null\r\n\r\n',
]
/** The page at the door, byte by byte as answers are heard. */
const DOOR_READ = Buffer.from(DOOR).toString('latin1')
/** ms that a connection without an end may take. */
const REQUEST_PATIENCE = 400

const requests: Target = {
  name: 'requests',
  perRound: 20,
  draw(random) {
    const text = oneOf(REQUESTS, random)
    if (random.below(2) === 0) return changedBytes(text, random)
    const lines = text.split('\r\n')
    const at = random.below(lines.length)
    const line = oneOf(oneOf(REQUESTS, random).split('\r\n'), random)
    return [...lines.slice(0, at), line, ...lines.slice(at + random.below(2))].join('\r\n')
  },
  async run(text) {
    const { port } = await (door ??= openDoor())
    const heard = await new Promise<string>((resolve) => {
      let said = ''
      const socket = connect(port, '127.0.0.1', () =>
        socket.write(Buffer.from(text.replaceAll('PORT', String(port)), 'latin1')),
      )
      socket.setTimeout(REQUEST_PATIENCE, () => socket.destroy())
      socket.on('data', (data) => (said += data.toString('latin1')))
      socket.on('error', () => resolve(said))
      socket.on('close', () => resolve(said))
    })
    // Several answers stand behind each other. The door is the same for everybody: a page that holds nothing.
    for (const answer of heard.split(/(?=^HTTP\/1\.1 \d{3} )/m)) {
      const body = answer.slice(answer.indexOf('\r\n\r\n') + 4).replace(/^[\da-f]+\r\n|\r\n0\r\n\r\n$/g, '')
      const isDoor = answer.startsWith('HTTP/1.1 200 ') && body === DOOR_READ
      must(isDoor || !/^HTTP\/1.1 (2|500)/.test(answer), () => `let in: ${answer.slice(0, 300)}`)
    }
    must(!/INSIDE|root:|petalyard-project|Set-Cookie/.test(heard), () => `gave away: ${heard.slice(0, 300)}`)
  },
}

const COMMANDS = [
  'check',
  'measure',
  'read',
  'plan',
  'fit',
  'arrange',
  'map',
  'page',
  'chart',
  'example',
  'help',
]
const WORDS = [
  ...[
    '--json',
    '--order',
    '--help',
    '--version',
    '--width',
    '--height',
    '--motifs',
    '--turn',
    '--force',
    '--out',
  ],
  ...[
    '--wreath',
    '--row',
    '--scatter',
    '--count',
    '--centre',
    '--seed',
    '--pages',
    '--paper',
    '--reverse',
    '--labels',
  ],
  ...[
    '--after',
    '--terms',
    '--panel',
    '--line',
    '--unit',
    '--replace',
    '--distance',
    '--opening',
    '--style',
    '--for',
  ],
  ...[
    '130cm',
    '51in',
    '-1',
    '0',
    '1e9',
    '999999999',
    '1-3,5',
    '0-0',
    '5-1',
    '1,1',
    'A4',
    'Letter',
    'FILE',
    'FILE',
  ],
  ...[
    'NOWHERE',
    'OUT',
    '{"stitches": 12}',
    '{',
    'M 0 0 L 9 9',
    '--',
    '-',
    '-x',
    '--nonsense',
    '',
    '.',
    '/dev/null',
  ],
]

const commandLines: Target = {
  name: 'command lines',
  perRound: 12,
  draw(random) {
    const words = [oneOf(COMMANDS, random), ...(random.below(4) > 0 ? ['FILE'] : [])]
    for (let count = random.below(6); count > 0; count--)
      words.push(random.below(8) === 0 ? oneOf(TEXTS, random) : oneOf(WORDS, random))
    const file =
      random.below(3) === 0
        ? JSON.stringify(mutated(EXAMPLES, random))
        : JSON.stringify(oneOf(EXAMPLES, random))
    const text = random.below(6) === 0 ? changedText(oneOf(roundTexts, random), random) : file
    return JSON.stringify({ words, text })
  },
  run: (text) =>
    inFolder(async (folder) => {
      const { words, text: file } = JSON.parse(text) as { words: string[]; text: string }
      const path = join(folder, 'a.petalyard')
      await writeFile(path, file)
      const places: Readonly<Record<string, string>> = { FILE: path, NOWHERE: join(folder, 'b') }
      // What is written stays in the folder.
      const named = words.map((word, i) =>
        word === 'OUT' || words[i - 1] === '--out'
          ? join(folder, 'out')
          : Object.hasOwn(places, word)
            ? places[word]!
            : word,
      )
      let said = ''
      const code = await run(
        named.includes('/dev/null') ? named.filter((word) => word !== '/dev/null') : named,
        {
          out: (more) => void (said += more),
          err: (more) => void (said += more),
          width: 80,
          now: () => new Date('2025-03-01T12:00:00Z'),
          locale: 'en-GB',
        },
      )
      must(!said.includes('a fault of the program'), () => `${words.join(' ')}: ${said.slice(-600)}`)
      must(Number.isInteger(code), () => `it ended with ${code}`)
      const after = await readFile(path, 'utf8')
      // Only `arrange` and what is told to may write to it, and then it is a project again.
      must(
        after === file ||
          words.includes('--out') ||
          words.includes('-o') ||
          words.includes('--force') ||
          words[0] === 'arrange',
        () => `${words.join(' ')} changed its file`,
      )
      if (after !== file) return
      const foreign = LEAKS.exec(file) !== null
      // What was typed is told as it was typed, in words and as a name in the file.
      const typed = [...words, file].some((text) => /\bNaN\b|\[object /.test(text))
      must(
        foreign || typed || !/\bNaN\b|\[object /.test(said),
        () => `${words.join(' ')} says: ${/.*(NaN|\[object ).*/.exec(said)?.[0]}`,
      )
    }),
}

const SHEETS = [['map'], ['card'], ['packing'], ['labels'], undefined] as const
const KINDS = [
  'map',
  'map',
  'map',
  'picture',
  'page',
  'materials',
  'order',
  'cord',
  'items',
  'kit',
  'purchase',
] as const

const paper: Target = {
  name: 'paper',
  perRound: 2,
  // The map of 40,000 motifs, twice; docs/speed.md grants 3 s for 10,000.
  slow: 2 * 4 * 3_000,
  draw(random) {
    const text = JSON.stringify(mutated(EXAMPLES, random))
    const kind = oneOf(KINDS, random)
    if (kind === 'page') return JSON.stringify({ kind, text })
    if (kind === 'picture') {
      const [of, format] = [oneOf(PICTURE_SUBJECTS, random), oneOf(PICTURE_FORMATS, random)]
      const ground = random.below(2) === 0 ? null : '#ffffff'
      return JSON.stringify({ kind, text, of, format, width: 64 + random.below(400), ground })
    }
    if (kind !== 'map') return JSON.stringify({ kind: 'table', table: kind, text })
    const paperSize = oneOf(['A4', 'Letter'], random)
    return JSON.stringify({
      kind,
      text,
      paper: paperSize,
      sheets: oneOf(SHEETS, random),
      reverse: random.below(2) === 0,
    })
  },
  async run(text) {
    const request = JSON.parse(text) as ExportRequest
    const make = () => makeExport(request, new Date('2025-03-01T12:00:00Z'), () => undefined)
    let made
    try {
      made = await make()
    } catch (error) {
      const reason = error instanceof Error ? error.message : ''
      // What there is none of is said in words.
      if (
        error instanceof NoSuchPictureError ||
        /^(there is nothing to draw yet|the project could not be read|this list is for|there is no )/.test(
          reason,
        )
      )
        return
      throw error
    }
    if (request.kind !== 'map' && !(request.kind === 'picture' && request.format === 'png')) {
      const written = new TextDecoder().decode(made.bytes)
      must(
        request.kind === 'page' || !/\bNaN\b|\[object |Infinity/.test(written) || LEAKS.test(request.text),
        () => /.*(NaN|\[object |Infinity).*/.exec(written)?.[0] ?? '',
      )
    }
    const again = await make()
    must(Buffer.from(again.bytes).equals(Buffer.from(made.bytes)), () => 'other bytes the second time')
  },
}

export const MACHINE: readonly Target[] = [files, messages, requests, commandLines, paper]
