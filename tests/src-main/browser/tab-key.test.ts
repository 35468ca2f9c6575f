/** Which key a page speaks with, as its tab and the server have it. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { KEY_PLACE } from '../../../src-main/browser/envelope'
import { newKey, readKey, writeKey } from '../../../src-main/browser/sealed'
import { TabKey } from '../../../src-main/browser/tab-key'
import { enter, keys, nextToken, origin, post, raw, serveEach, showToken } from './served'
import type { Tab } from './served'

serveEach()

/** What a tab keeps. */
function storeOf(key?: string) {
  const kept = new Map(key === undefined ? [] : [[KEY_PLACE, key]])
  return {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, value: string) => void kept.set(name, value),
  }
}
const noOther = () => Promise.resolve(null)
const named = (text: string) => readKey(text)!.name
const speaks = async (cookie: string, key: string) => {
  const tab: Tab = { cookie, project: 'none', seat: 'none' }
  return (await post(tab, '/ask/facts', { project: 'none', seat: 'none', payload: null }, {}, key)).status
}

/** As a browser would, with the cookie of its session and the origin of its page. */
let cookie: string
const fetchHere = async (path: string, init: RequestInit) => {
  const headers = { ...(init.headers as Record<string, string>), cookie, origin: origin() }
  const { status, bytes } = await raw('POST', path, headers, Buffer.from(init.body as Uint8Array))
  return new Response(new Uint8Array(bytes), { status })
}
beforeEach(async () => {
  cookie = await enter()
  vi.stubGlobal('fetch', fetchHere)
})
afterEach(() => vi.unstubAllGlobals())

describe('the key of a page', () => {
  it('is no other page’s, not even that of the tab that it was copied from', async () => {
    const entered = keys.get(cookie)!
    const store = storeOf(entered)
    const pages = [new TabKey(() => store, noOther), new TabKey(() => storeOf(entered), noOther)]
    for (const page of pages) expect(await page.begin()).toBe(true)
    const texts = [entered, ...pages.map(({ text }) => text)]
    expect(new Set(texts).size).toBe(3)
    for (const text of texts) expect(await speaks(cookie, text)).toBe(200)
    // Loaded again it begins with its own.
    expect(store.getItem(KEY_PLACE)).toBe(pages[0]!.text)
  })

  it('comes from another tab where its own has none; without either it has none', async () => {
    const typed = new TabKey(
      () => storeOf(),
      () => Promise.resolve(keys.get(cookie)!),
    )
    expect(await typed.begin()).toBe(true)
    const alone = new TabKey(() => storeOf(), noOther)
    expect(await alone.begin()).toBe(false)
    expect(alone.text).toBe('')
  })

  it('ends with its session, with all others of it, and is followed by none that Petalyard does not know', async () => {
    const token = nextToken()
    const answered = await showToken(token)
    cookie = answered.headers['set-cookie']![0]!.split(';')[0]!
    const { key } = JSON.parse(answered.body) as { key: string }
    let offered = writeKey(newKey())
    const page = new TabKey(
      () => storeOf(key),
      () => Promise.resolve(offered),
    )
    expect(await page.begin()).toBe(true)
    const former = page.text
    await showToken(token)
    cookie = await enter()
    for (const each of [key, former]) expect(await speaks(cookie, each)).toBe(403)
    // Of whoever plays Petalyard.
    expect(await page.renew()).toBe(false)
    expect(page.text).toBe(former)
    offered = keys.get(cookie)!
    expect(await page.renew()).toBe(true)
    expect(named(page.text)).toBe(named(offered))
    expect(await speaks(cookie, page.text)).toBe(200)
  })
})

it('whoever was shut out is given no key', async () => {
  const token = nextToken()
  const { body } = await showToken(token)
  const { key } = JSON.parse(body) as { key: string }
  await showToken(token)
  const tab: Tab = { cookie, project: 'none', seat: 'none' }
  expect(await post(tab, '/key', 'null', {}, key)).toMatchObject({ status: 403 })
  expect(await post(tab, '/known', '"x"', {}, key)).toMatchObject({ status: 200, body: 'false' })
})
