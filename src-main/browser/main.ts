/** Starts the loopback server and opens the window in the user's browser. `scripts/start.mjs` runs it. */
import { homedir } from 'node:os'
import { join, resolve } from 'node:path'
import { createInterface } from 'node:readline'
import { version } from '../../package.json'
import { projectFiles, writeAtomically } from '../documents/session/project-files'
import { builtIn } from '../host/build'
import { dataFolderIn, platformName, programFolder } from '../host/data-folder'
import { examples } from '../host/examples'
import { Host } from '../host/host'
import { licencesIn } from '../host/licences'
import { createPaper } from '../host/paper'
import { openAddress } from './open-address'
import { OpeningPage } from './opening-page'
import { sayTo } from './say'
import { LoopbackServer } from './server'

const say = sayTo(process.stdout)
const complain = sayTo(process.stderr)

async function run(paths: readonly string[]): Promise<void> {
  const folder = programFolder()
  // Where a person would look for them; both hosts keep the projects that have no file in the same place.
  const saveFolder = process.env.PETALYARD_DATA ? join(folder, 'saved') : join(homedir(), 'Petalyard')
  const page = new OpeningPage(saveFolder)
  const server = new LoopbackServer({
    windowFolder: join(__dirname, '..', 'renderer'),
    clientScript: join(__dirname, 'client.js'),
    streamScript: join(__dirname, 'stream.js'),
    entryScript: join(__dirname, 'enter.js'),
    saveFolder,
    onEntered: (how) => {
      void page.remove()
      if (how === 'again')
        say(
          'petalyard: an address was used a second time. In case that was somebody else, whoever came in with it is shut out. Press Enter for another.',
        )
    },
  })
  const host = new Host({
    dataFolder: dataFolderIn(folder),
    facts: { host: 'browser', platform: platformName(process.platform), version, hasMenu: false },
    locale: Intl.DateTimeFormat().resolvedOptions().locale,
    files: projectFiles,
    writeAtomically,
    examples,
    paper: createPaper(join(__dirname, 'paper.cjs')),
    licences: () => licencesIn([__dirname, join(__dirname, '..', 'renderer')]),
    build: () => builtIn([__dirname, join(__dirname, '..', 'renderer')]),
    announce: server.announce,
  })
  await host.start()
  if (host.own.problem !== null)
    say(`petalyard: ${host.own.path} cannot be written: ${host.own.problem}. Projects are only in memory.`)
  else say(`Projects are kept in ${dataFolderIn(folder)}; saved files go to ${saveFolder}.`)
  await host.openInterrupted()
  for (const path of paths) {
    const opened = await host.openPath(path)
    if (opened.outcome === 'refused') say(`petalyard: ${opened.problem.message}`)
  }
  await server.listen(host)

  const open = async () => {
    const url = server.entryUrl()
    say(`Petalyard is at ${url}`)
    if (process.env.PETALYARD_OPEN === 'no') return
    const file = await page.write(url)
    if (file === null || !(await openAddress(file)))
      say('No browser could be opened from here: please open that address yourself.')
  }
  await open()
  say('The address works once. Press Enter for another, Ctrl+C to stop.')

  let isStopping = false
  const stop = async () => {
    if (isStopping) return
    isStopping = true
    await server.close()
    await page.remove()
    for (const problem of await host.stop()) say(`petalyard: ${problem.message} ${problem.mend}`)
    process.exit(0)
  }
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void stop())
  createInterface({ input: process.stdin }).on('line', () => void open())
}

run(process.argv.slice(2).map((path) => resolve(path))).catch((error: unknown) => {
  complain(`petalyard: ${error instanceof Error ? error.message : String(error)}`)
  process.exitCode = 1
})
