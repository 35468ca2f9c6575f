/** Hands that do a job in the window by role and name, and count what they do. */
import { expect } from 'vitest'
import type { Page } from 'playwright-core'
import { eventually } from '../src-main/documents/session/world'

/** Mouse and typing: pressing something, or filling a field, is one action each. */
export class Hands {
  actions = 0
  constructor(readonly page: Page) {}

  async press(name: string | RegExp, role: 'button' | 'radio' | 'checkbox' = 'button'): Promise<void> {
    this.actions++
    const target = this.page.getByRole(role, { name, exact: typeof name === 'string' }).first()
    if (role === 'radio') await target.check({ force: true })
    else await target.click()
  }

  /** Opens a place of the job. */
  async go(place: string | RegExp): Promise<void> {
    this.actions++
    const places = this.page.getByRole('navigation', { name: 'Places of the job' })
    await places.getByRole('button', { name: place, exact: true }).click()
  }

  async fill(label: string | RegExp, text: string): Promise<void> {
    this.actions++
    const field = this.page.getByRole('textbox', { name: label, exact: typeof label === 'string' })
    await field.fill(text)
    await field.press('Enter')
  }
}

/** The name that a screen reader would say for what has the keyboard. */
function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement
    if (!element) return ''
    const labelled = element.getAttribute('aria-labelledby')
    const fromId = labelled ? document.getElementById(labelled)?.textContent : null
    const labels = element instanceof HTMLInputElement ? element.labels : null
    const text = element.getAttribute('aria-label') ?? fromId ?? labels?.[0]?.textContent
    return (text ?? element.textContent ?? '').replace(/\s+/g, ' ').trim()
  })
}

/** Keyboard alone: reaching something with Tab is one action, pressing a key or typing a value another. */
export class Keys {
  actions = 0
  constructor(readonly page: Page) {}

  /** Presses Tab until the keyboard is on what has this name. */
  async reach(name: string | RegExp, backwards = false): Promise<void> {
    this.actions++
    const seen: string[] = []
    for (let tries = 0; tries < 120; tries++) {
      const now = await focusedName(this.page)
      if (typeof name === 'string' ? now === name : name.test(now)) return
      seen.push(now)
      await this.page.keyboard.press(backwards ? 'Shift+Tab' : 'Tab')
    }
    throw new Error(`Tab never reaches ${String(name)}; it passed ${[...new Set(seen)].join(' · ')}`)
  }

  async press(key: string): Promise<void> {
    this.actions++
    await this.page.keyboard.press(key)
  }

  /** Replaces what stands in the field that has the keyboard. */
  async type(text: string): Promise<void> {
    this.actions++
    await this.page.keyboard.press('Control+A')
    await this.page.keyboard.type(text)
  }
}

/** The sentence of the project, as a screen reader reads it. */
export const sentence = (page: Page): Promise<string> =>
  page
    .locator('p.sentence')
    .innerText()
    .then((text) => text.replace(/\s+/g, ' '))

/** Waits until the sentence says this: a plan that takes long is worked out beside the window and comes when it is done. */
export const sentenceSays = (page: Page, words: string | RegExp): Promise<void> =>
  eventually(async () => expect(await sentence(page)).toMatch(words))
