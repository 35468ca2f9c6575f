/** Names in Hebrew and Arabic in a real window: each goes its own way, and the words round it stay where they are. */
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Project } from '../../shared-types/project'
import { eventually } from '../src-main/documents/session/world'
import { Hands } from './hands'
import type { OpenedWindow } from './opened'
import { example, openWindow } from './opened'

const YARNS = ['כחול בהיר 5', 'وردي (٣)', 'Moss', 'צהוב 7'] as const

let opened: OpenedWindow
let page: Page

const named = (project: Project): Project => ({
  ...project,
  title: 'שמיכה 12',
  yarns: project.yarns?.map((yarn, i) => ({ ...yarn, name: YARNS[i % YARNS.length]! })) ?? [],
  colourways: project.colourways?.map((way) => ({ ...way, name: `גוון 4` })) ?? [],
})

beforeAll(async () => {
  opened = await openWindow({ files: example('hedgerow-baby-throw', named) })
  page = opened.page
})
afterAll(() => opened?.close())

/** The order in which words of an element stand on one line, from left to right. */
const order = (within: Locator, words: readonly string[]): Promise<readonly string[]> =>
  within.evaluate(
    (root, wanted) => {
      ;(root as HTMLElement).style.whiteSpace = 'nowrap'
      const places = wanted.map((word) => {
        const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT)
        for (let node = texts.nextNode(); node; node = texts.nextNode()) {
          const start = node.textContent!.indexOf(word)
          if (start < 0) continue
          const range = document.createRange()
          range.setStart(node, start)
          range.setEnd(node, start + word.length)
          const { left, right } = range.getBoundingClientRect()
          return { word, at: (left + right) / 2 }
        }
        return { word: `no ${word}`, at: 0 }
      })
      return places.sort((one, other) => one.at - other.at).map(({ word }) => word)
    },
    [...words],
  )

describe('a project with names from right to left', () => {
  it('keeps the colors of a selected motif beside their parts', async () => {
    await page.getByRole('application').focus()
    await page.keyboard.press('ArrowRight')
    const line = page.locator('aside.hand .way p')
    const words = await line.innerText()
    const bare = words.replace(/[\u2066-\u2069]/g, '')
    const parts = /^(גוון 4): (.*) (\w+), (.*) (\w+)$/.exec(bare)
    expect(parts, bare).not.toBeNull()
    const wanted = parts!.slice(1)
    await eventually(async () => expect(await order(line, wanted)).toEqual(wanted))
  })

  it('keeps the words of a label round its name, and the name from right to left in its field', async () => {
    const hands = new Hands(page)
    await hands.go('Yarn')
    const label = ['Skeins of', YARNS[0], 'on hand']
    const line = page
      .locator('#place-panel label')
      .getByText(/^Skeins of/)
      .first()
    await eventually(async () => expect(await order(line, label)).toEqual(label))
    const field = page.getByRole('textbox', { name: /^Name of/ }).first()
    expect(await field.inputValue()).toBe(YARNS[0])
    expect(await field.evaluate((node) => getComputedStyle(node).direction)).toBe('rtl')
  })

  it('follows a name that is changed, and keeps it as it was typed', async () => {
    const field = page.getByRole('textbox', { name: /^Name of/ }).first()
    await field.fill('לבן 9')
    await field.press('Enter')
    const ledger = page.getByRole('region', { name: 'Ledger' })
    await eventually(async () => expect(await ledger.innerText()).toContain('\u2068לבן 9\u2069'))
    expect(await field.inputValue()).toBe('לבן 9')
    await eventually(async () => {
      const kept = await page.evaluate(async () => {
        const answer = await window.petalyard.currentProject()
        return answer.outcome === 'done' ? answer.value.text : ''
      })
      expect(kept).toContain('"לבן 9"')
      expect(kept).not.toMatch(/[\u2066-\u2069]/)
    })
  })
})
