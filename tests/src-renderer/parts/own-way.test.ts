import { expect, it } from 'vitest'
import { inTheirOwnWay } from '../../../src-renderer/parts/own-way'
import { eventually } from '../../src-main/documents/session/world'

const isolate = (text: string): string => text.replace(/(?<!\[)כחול/g, '[כחול]')

it('isolates names in what is shown, what comes and what changes, and never in what is typed', async () => {
  document.body.innerHTML = '<p>כחול 5</p><textarea>כחול 6</textarea><ul></ul>'
  const stop = inTheirOwnWay(document.body, isolate)
  const [text, list] = [document.querySelector('p')!, document.querySelector('ul')!]
  expect(text.textContent).toBe('[כחול] 5')
  list.innerHTML = '<li>2 כחול</li>'
  text.firstChild!.nodeValue = 'כחול 7'
  await eventually(() => expect(document.body.textContent).toBe('[כחול] 7כחול 62 [כחול]'))
  stop()
  text.firstChild!.nodeValue = 'כחול 8'
  await Promise.resolve()
  expect(text.textContent).toBe('כחול 8')
})
