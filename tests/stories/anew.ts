/** Stories that each begin anew: a folder of their own, and what they started ends with them. */
import type { BrowserContext } from 'playwright-core'
import { afterEach, beforeEach } from 'vitest'
import { startChromium } from './browser'
import type { Loopback } from './browser'
import { makeFolder } from './desktop'
import type { Desktop } from './desktop'

type Folder = Awaited<ReturnType<typeof makeFolder>>

interface BrowserStory {
  context: BrowserContext
  /** For the story's files, and for what the program keeps. */
  folder: Folder
  own: Folder
  /** Set by the story once it started it; ended after it. */
  loopback: Loopback | null
}

/** Everything for each story anew but Chromium, which serves all of them. */
export function browserAnew(): BrowserStory {
  const story = { loopback: null } as BrowserStory
  beforeEach(async () => {
    story.folder = await makeFolder()
    story.own = await makeFolder()
    story.context = await (await startChromium()).newContext()
  })
  afterEach(async () => {
    await story.context.close()
    await story.loopback?.kill()
    story.loopback = null
    await story.folder.forget()
    await story.own.forget()
  })
  return story
}

interface DesktopStory {
  folder: Folder
  /** Set by the story once it started it; ended after it. */
  desktop: Desktop | null
}

/** A folder for each story, and no desktop that outlives it. */
export function desktopAnew(): DesktopStory {
  const story = { desktop: null } as unknown as DesktopStory
  beforeEach(async () => {
    story.folder = await makeFolder()
  })
  afterEach(async () => {
    await story.desktop?.kill()
    story.desktop = null
    await story.folder.forget()
  })
  return story
}
