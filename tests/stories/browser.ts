/** Starts the window in a real browser for a story: the built server, with a data folder of its own. */
import { spawn } from 'node:child_process'
import type { ChildProcess } from 'node:child_process'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import type { Browser } from 'playwright-core'
import { findChromium } from '../../scripts/capabilities.mjs'
import { build, projectRoot } from './desktop'

export interface Loopback {
  readonly child: ChildProcess
  /** Everything that it wrote so far. */
  said(): string
  /** Waits for an address that lets in once, beyond those that were told before. */
  nextAddress(): Promise<string>
  /** Ends it as Ctrl+C does. */
  stop(): Promise<void>
  kill(): Promise<void>
}

const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/enter#token=[\w-]+/g

/** Watches a process that is, or becomes, the loopback server. */
export function watchLoopback(child: ChildProcess): Loopback {
  let said = ''
  let used = 0
  child.stdout?.on('data', (data: Buffer) => (said += data.toString()))
  child.stderr?.on('data', (data: Buffer) => (said += data.toString()))
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const end = async (signal: NodeJS.Signals) => {
    if (child.exitCode === null && child.signalCode === null) {
      child.kill(signal)
      await ended
    }
  }
  return {
    child,
    said: () => said,
    nextAddress: async () => {
      for (let tries = 0; tries < 400; tries++) {
        const address = [...said.matchAll(ADDRESS)][used]?.[0]
        if (address !== undefined) {
          used++
          return address
        }
        await new Promise((resolve) => setTimeout(resolve, 50))
      }
      throw new Error(`no address was told:\n${said}`)
    },
    stop: () => end('SIGINT'),
    kill: () => end('SIGKILL'),
  }
}

/** Builds what is missing and starts the server on the data in `folder`, with files to open. */
export async function startLoopback(
  folder: string,
  files: readonly string[] = [],
  program = join(projectRoot, 'out'),
): Promise<Loopback> {
  await build()
  const script = join(program, 'main', 'browser.cjs')
  const env = { ...process.env, PETALYARD_DATA: folder, PETALYARD_OPEN: 'no' }
  return watchLoopback(spawn(process.execPath, [script, ...files], { env, stdio: ['pipe', 'pipe', 'pipe'] }))
}

let running: Promise<Browser> | undefined

/**
 * A Chromium without a window of its own: one for all stories of a worker, with whose end it ends. Each story has
 * contexts of its own, and closes them.
 */
export async function startChromium(): Promise<Browser> {
  const known = await running
  if (known?.isConnected()) return known
  const executablePath = findChromium()
  if (!executablePath) throw new Error('there is no Chromium')
  return (running = chromium.launch({ executablePath, args: ['--no-sandbox'] }))
}
