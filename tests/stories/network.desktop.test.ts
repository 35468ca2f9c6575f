/** The desktop asks nothing of the network: Chromium's own log of it says so. */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { encode as encodeJpeg } from 'jpeg-js'
import { expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { studio } from '../src-core/photo/studio'
import { makeFolder, startDesktop } from './desktop'
import { Hands } from './hands'

interface NetLog {
  readonly constants: { readonly logEventTypes: Readonly<Record<string, number>> }
  readonly events: readonly { readonly type: number; readonly params?: Readonly<Record<string, unknown>> }[]
}

/** Everything in the log that would leave the machine: requests by their address, names that were looked up. */
function outgoing({ constants, events }: NetLog): string[] {
  const names = new Map(Object.entries(constants.logEventTypes).map(([name, type]) => [type, name]))
  return events.flatMap(({ type, params }) => {
    const name = names.get(type) ?? String(type)
    const url = typeof params?.url === 'string' ? params.url : ''
    if (/^(https?|wss?|ftp):/i.test(url)) return [`${name} ${url}`]
    if (/^(HOST_RESOLVER_.*REQUEST|TCP_CONNECT_ATTEMPT|UDP_CONNECT|PROXY_RESOLUTION_SERVICE)$/.test(name))
      return [`${name} ${JSON.stringify(params ?? {})}`]
    return []
  })
}

/** The desktop with Chromium's log of the network; its end looks whether anything left the machine. */
async function startListening(words: readonly string[] = []) {
  const folder = await makeFolder()
  const log = join(folder.path, 'net.json')
  const desktop = await startDesktop(join(folder.path, 'data'), [`--log-net-log=${log}`, ...words])
  return {
    page: desktop.window,
    endsInSilence: async () => {
      await desktop.close()
      const net = JSON.parse(await readFile(log, 'utf8')) as NetLog
      expect(net.events.length).toBeGreaterThan(0)
      expect(outgoing(net)).toEqual([])
      await folder.forget()
    },
  }
}

it('sends no request from its start to a project that was edited and kept', async () => {
  // In a language whose spelling Chromium would look up.
  const { page, endsInSilence } = await startListening(['--lang=en-GB'])
  const title = page.getByRole('textbox', { name: 'Title' })
  await title.click()
  await page.keyboard.type('Wollen blankit')
  await page.keyboard.press('Enter')
  await eventually(async () =>
    expect(await page.locator('header .kept').innerText()).toBe('kept in the app a moment ago'),
  )
  // A connection to another browser finds no address to go out from.
  const candidates = await page.evaluate(async () => {
    const connection = new RTCPeerConnection()
    connection.createDataChannel('out')
    const found: string[] = []
    connection.onicecandidate = ({ candidate }) =>
      void (candidate?.candidate && found.push(candidate.candidate))
    await connection.setLocalDescription(await connection.createOffer())
    await new Promise((resolve) => setTimeout(resolve, 1_000))
    connection.close()
    return found
  })
  expect(candidates).toEqual([])
  // A word list would be asked for within the first seconds.
  await new Promise((resolve) => setTimeout(resolve, 5_000))
  await endsInSilence()
}, 60_000)

it('sends no request while a motif is measured in a photo and taken over', async () => {
  const { picture, sheet } = studio(14)
  const { width, height, data } = picture
  const { page, endsInSilence } = await startListening()
  const hands = new Hands(page)
  await hands.press('Start from your own motif')
  await hands.press('Measure it in a photo')
  const dialog = page.getByRole('dialog', { name: 'Measure a photo' })
  await dialog.getByRole('combobox', { name: 'Lies on a' }).selectOption(sheet)
  await dialog.locator('input[type=file]').setInputFiles({
    ...{ name: 'rose.jpg', mimeType: 'image/jpeg' },
    buffer: encodeJpeg({ width, height, data: Buffer.from(data) }, 92).data,
  })
  await dialog.getByText(/^Measured: /).waitFor({ state: 'attached', timeout: 60_000 })
  await hands.press('Use as measured')
  await hands.press('Start with this motif')
  await page.getByRole('textbox', { name: 'Title' }).waitFor()
  await endsInSilence()
}, 120_000)
