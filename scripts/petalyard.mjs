#!/usr/bin/env node
/** The command line in the repository: builds it where that is needed, then runs it. */
import { createRequire } from 'node:module'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { buildCommand } from './command-build.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))

try {
  const entry = await buildCommand()
  // `npm run` changes into the project's folder; files are meant from where it was called.
  const calledFrom = process.env.INIT_CWD
  if (calledFrom && resolve(process.cwd()) === resolve(root)) process.chdir(calledFrom)
  const { main } = createRequire(import.meta.url)(entry)
  await main(process.argv.slice(2))
} catch (error) {
  const reason = error instanceof Error ? error.message.split('\n')[0] : String(error)
  process.stderr.write(`petalyard: the command line could not be built or started: ${reason}\n`)
  process.exitCode = 70
}
