/** The stream on which a browser hears of its projects. */
import { describe, expect, it } from 'vitest'
import { eventually, projectText } from '../documents/session/world'
import { ask, enter, holdTime, losePatience, openStream, openTab } from './served'
import { post, raw, serveEach, world } from './served'
import type { Tab } from './served'

serveEach()

describe('the stream of events', () => {
  holdTime()

  /** A stream of a browser, with everything that it heard. */
  const member = ({ project, seat }: Tab) => ({ project, seat })
  const joins = (tab: Tab, stream: string) => post(tab, '/stream/join', { ...member(tab), stream })

  it('says how the project is kept, and holds the project while it is open', async () => {
    const tab = await openTab(await enter())
    const stream = await openStream('one', tab.cookie)
    expect((await joins(tab, 'one')).status).toBe(200)
    await ask(tab, 'keepProject', { revision: 1, text: projectText('First') })
    await eventually(() =>
      expect(stream.heard()).toMatch(new RegExp(`${tab.seat} \\{"event":"keeping",.*"name":"First"`)),
    )
    // Sealed: whoever heard it without the key would read nothing of it.
    expect(stream.asItCame()).not.toMatch(/First|keeping/)
    losePatience()
    expect(await ask(tab, 'currentProject')).toMatchObject({ outcome: { outcome: 'done' } })
    expect(world.host.session(tab.project)).not.toBeNull()
    stream.end()
    await eventually(() => {
      losePatience()
      expect(world.host.session(tab.project)).toBeNull()
    })
  })

  it('serves all tabs of a browser, each with its own; one may leave while others stay', async () => {
    const cookie = await enter()
    const [first, second] = [await openTab(cookie), await openTab(cookie)]
    expect(first.project).not.toBe(second.project)
    const stream = await openStream('one', cookie)
    for (const tab of [first, second]) expect((await joins(tab, 'one')).status).toBe(200)
    await post(first, '/stream/leave', member(first))
    losePatience()
    await eventually(() => expect(world.host.session(first.project)).toBeNull())
    expect(world.host.session(second.project)).not.toBeNull()
    stream.end()
  })

  it('is joined by whoever has the project, once the stream is there', async () => {
    const tab = await openTab(await enter())
    expect((await joins(tab, 'none')).status).toBe(409)
    const stream = await openStream('one', tab.cookie)
    expect((await joins({ ...tab, seat: 'another' }, 'one')).status).toBe(404)
    expect((await post(tab, '/stream/join', {})).status).toBe(400)
    expect((await raw('GET', '/stream', { cookie: tab.cookie })).status).toBe(400)
    // What the project is like is told at once: something may have happened before.
    await joins(tab, 'one')
    await eventually(() => expect(stream.heard()).toContain('"event":"keeping"'))
    stream.end()
  })
})
