import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import { finding } from '../../../src-core/findings/finding'
import { planProject } from '../../../src-core/plan'
import { runCommand } from '../../../src-renderer/frame/commands'
import Ledger from '../../../src-renderer/frame/Ledger.svelte'
import FindingList from '../../../src-renderer/parts/FindingList.svelte'
import PaperPlace from '../../../src-renderer/places/paper/PaperPlace.svelte'
import MotifPlace from '../../../src-renderer/places/motif/MotifPlace.svelte'
import type { Project } from '../../../shared-types/project'
import { inWindow } from '../in-window'
import { example, SMALL } from '../projects'

describe('Paper', () => {
  it('shows pages, exports with progress, and can be stopped', async () => {
    const { host } = await inWindow(PaperPlace, {}, SMALL)
    await screen.findByRole('img', { name: 'Page 1 of 3: Overview' })
    await fireEvent.click(screen.getByRole('button', { name: 'Export the map as PDF' }))
    screen.getByText('Drawing page 1 of 3')
    expect(host.asked.at(-1)).toMatchObject({ name: 'exportProject', payload: { kind: 'map', paper: 'A4' } })
    await fireEvent.click(screen.getByRole('button', { name: 'Cancel the export' }))
    await screen.findByText('The export was canceled; nothing was written.')
    await fireEvent.click(screen.getByRole('button', { name: 'Export the map as PDF' }))
    host.finishExport()
    await screen.findByText(/^Exported: in memory, 3 pages\./)
  })
})

describe('the pattern of one motif', () => {
  const sent = (host: Awaited<ReturnType<typeof inWindow>>['host'], name: string) => {
    const payload = host.asked.findLast((each) => each.name === name)!.payload as { text: string }
    return { ...payload, project: JSON.parse(payload.text) as Project }
  }

  it('is chosen among the sheets, looked at and exported without the blanket', async () => {
    const { app, host } = await inWindow(PaperPlace, {}, example('market-stall-throw'))
    const before = JSON.stringify(app.document.project)
    await fireEvent.change(screen.getByRole('combobox', { name: 'Sheets' }), { target: { value: 'pattern' } })
    expect(app.paper.choice).toMatchObject({ sheets: ['pattern'] })
    await fireEvent.click(screen.getByRole('button', { name: 'Export the pattern as PDF' }))
    const { project, sheets } = sent(host, 'exportProject') as ReturnType<typeof sent> & { sheets: unknown }
    expect(sheets).toEqual(['pattern'])
    expect(project.layout).toMatchObject({ columns: 1, rows: 1, motif: app.paper.motif })
    // The project in the window is what it was, and the map is of all of it.
    expect(JSON.stringify(app.document.project)).toBe(before)
    host.finishExport()
    await fireEvent.change(screen.getByRole('combobox', { name: 'Sheets' }), { target: { value: 'main' } })
    await fireEvent.click(screen.getByRole('button', { name: 'Export the map as PDF' }))
    expect(sent(host, 'exportProject').project.layout).not.toMatchObject({ rows: 1 })
  })

  it('is of the motif that is chosen, and Motif leads there', async () => {
    const project = example('orangery-cloth')
    const { app } = await inWindow(MotifPlace, {}, project)
    const [, second] = project.motifs!
    app.view.motif = second!.id
    await fireEvent.click(await screen.findByRole('button', { name: 'Print its pattern alone…' }))
    expect(app.view.place).toBe('paper')
    expect(app.paper.motif).toBe(second!.id)
    expect(app.paper.choice).toMatchObject({ sheets: ['pattern'] })
    expect(app.paper.isForBuyer).toBe(true)
  })
})

describe('the answer to an export', () => {
  const answerTo = async (name: string | RegExp) => {
    await fireEvent.click(screen.getByRole('button', { name }))
  }
  const isAfter = (a: Element, b: Element) =>
    (a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0

  it('stands under the button that was pressed, above everything that is folded away', async () => {
    const { host } = await inWindow(PaperPlace, {}, SMALL)
    await answerTo('Export the map as PDF')
    host.finishExport()
    const map = await screen.findByText(/^Exported: /)
    expect(isAfter(screen.getByRole('button', { name: 'Export the map as PDF' }), map)).toBe(true)
    expect(isAfter(map, screen.getByRole('button', { name: 'Page for a phone' }))).toBe(true)
    await answerTo('Page for a phone')
    host.finishExport()
    await waitFor(() => {
      const page = screen.getByText(/^Exported: /)
      expect(isAfter(screen.getByRole('button', { name: 'Page for a phone' }), page)).toBe(true)
      expect(isAfter(page, screen.getByText('Several editions'))).toBe(true)
    })
    await answerTo('Save the picture…')
    host.finishExport()
    await waitFor(() => {
      const button = screen.getByRole('button', { name: 'Save the picture…' })
      expect(button.closest('details')!.textContent).toContain('Exported: ')
      expect(screen.getAllByText(/^Exported: /)).toHaveLength(1)
    })
  })

  it('is a sentence, and is brought into sight', async () => {
    const seen: Element[] = []
    const before = Element.prototype.scrollIntoView
    Element.prototype.scrollIntoView = function (this: Element) {
      seen.push(this)
    }
    try {
      const { app } = await inWindow(PaperPlace, {}, SMALL)
      app.exporting.end = { how: 'refused', problem: finding('app/cannot-print', '', { reason: 'no paper' }) }
      const told = await screen.findByText(/^Nothing was printed: no paper\. Check that/)
      await waitFor(() => expect(seen.some((each) => each.contains(told))).toBe(true))
    } finally {
      Element.prototype.scrollIntoView = before
    }
  })
})

describe('Printing', () => {
  it('prints what the Paper place shows, by button, menu and ledger alike', async () => {
    const { app, host } = await inWindow(Ledger, {}, SMALL)
    // jsdom decodes no pictures and has no sheets made by scripts.
    Object.assign(HTMLImageElement.prototype, { decode: () => Promise.resolve() })
    Object.assign(CSSStyleSheet.prototype, { replaceSync: () => undefined })
    document.adoptedStyleSheets = []
    const printed = () => host.asked.filter(({ name }) => name === 'printSheets').length
    app.document.change('print on Letter', (project) => ({ ...project, sheet: { paper: 'Letter' } }))
    await fireEvent.click(screen.getByRole('button', { name: 'Print the map…' }))
    await waitFor(() => expect(printed()).toBe(1))
    expect(host.asked.at(-1)?.payload).toEqual({ paper: 'Letter' })
    expect(app.view.place).toBe('paper')
    await waitFor(() => expect(app.exporting.end).toEqual({ how: 'done', what: { printed: 3 } }))
    expect(document.querySelector('.print-sheets')).toBeNull()
    runCommand('print', app, null)
    await waitFor(() => expect(printed()).toBe(2))
    // Export by key asks for the same as export by button.
    await waitFor(() => expect(app.exporting.isRunning).toBe(false))
    runCommand('export-map', app, null)
    expect(host.asked.at(-1)?.payload).toMatchObject({ kind: 'map', paper: 'Letter', style: 'colour' })
  })
})

describe('texts that paper cannot print as they are written', () => {
  const HEBREW = { ...SMALL, title: 'שמיכה', yarns: SMALL.yarns!.map((yarn) => ({ ...yarn, name: 'צמר' })) }

  it('are told beside the page and among all findings, each with the way to its field', async () => {
    await inWindow(PaperPlace, {}, HEBREW)
    screen.getByText(
      /^The type on paper lacks characters of \d+ texts\. The page shows what is printed instead; fonts for other scripts are chosen in the settings\.$/,
    )
    const { app } = await inWindow(
      FindingList,
      { findings: planProject(HEBREW).findings, map: null, apart: true },
      HEBREW,
    )
    expect(app.document.findings.map(({ code }) => code)).toContain('letters/missing')
    screen.getByText(/the title: the font used on paper has no ש, מ, י, כ and ה \(Hebrew\)\.$/)
    expect(screen.getAllByRole('button', { name: 'Go to Yarn' }).length).toBeGreaterThan(0)
    screen.getByRole('button', { name: 'Go to Paper' })
  })
})
