import { fireEvent, screen, within } from '@testing-library/svelte'
import { beforeEach, describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { CATALOGUE } from '../../../src-core/findings/catalogue'
import FindingsDialog from '../../../src-renderer/frame/FindingsDialog.svelte'
import { placeOfFinding } from '../../../src-renderer/state/places-of-findings'
import { inWindow } from '../in-window'
import { example } from '../projects'

/** A project with something wrong in a round, in a colourway, in the order and as a whole. */
function troubled(): Project {
  const own = example('orchard-wall-throw')
  const motif = own.motifs!.find(({ id }) => own.layout?.kind === 'blanket' && id === own.layout.motif)!
  if (motif.kind !== 'rounds') throw new Error('the example has no written rounds')
  const rounds = motif.rounds!.map((round, i) => (i === 4 ? { ...round, work: '12 sc' } : round))
  const [way, ...ways] = own.colourways!
  return {
    ...own,
    layout: { ...own.layout, columns: 4, rows: 3 } as Project['layout'],
    motifs: own.motifs!.map((entry) => (entry === motif ? { ...motif, rounds } : entry)),
    colourways: [{ ...way!, yarns: { ...way!.yarns, nowhere: way!.yarns!['Heart'] ?? '' } }, ...ways],
    order: ['1,1', '1,1'],
  }
}

beforeEach(() => {
  // jsdom lacks modal dialogs.
  Object.assign(HTMLDialogElement.prototype, {
    showModal(this: HTMLDialogElement) {
      this.open = true
    },
    close(this: HTMLDialogElement) {
      this.open = false
    },
  })
})

describe('the dialogue of findings', () => {
  it('tells of each where it is, and has a way there wherever there is one', async () => {
    const { app } = await inWindow(FindingsDialog, { onclose: () => {}, map: null }, troubled())
    const { findings } = app.document
    expect(findings.some(({ target }) => target?.entry !== undefined)).toBe(true)
    const items = within(screen.getByRole('dialog')).getAllByRole('listitem')
    expect(items).toHaveLength(findings.length)
    findings.forEach((finding, i) => {
      // Beside the way there may be what brings the blanket nearer to its target size.
      const ways = within(items[i]!)
        .queryAllByRole('button')
        .filter(({ textContent }) => !textContent?.trim().startsWith('Change to '))
      const leads = finding.target !== undefined || placeOfFinding(finding) !== null
      expect(ways.length, finding.code).toBe(leads ? 1 : 0)
      if (leads) expect(items[i]!.textContent, finding.code).toMatch(/^(Error|Warning|Note)\. [^:]+: /)
    })
    const wrong = findings.findIndex(({ severity, target }) => severity === 'error' && target?.entry === 4)
    expect(items[wrong]!.textContent).toMatch(/^Error\. Round 5 of .+: /)
    const chosen = findings.findIndex(({ target }) => target?.cells?.length === 1)
    expect(items[chosen]!.textContent).toMatch(/Motif \d+, row 1, motif 1: /)
  })

  it('knows where whatever the engine finds is mended', () => {
    const engine = Object.keys(CATALOGUE).filter((code) => !/^(app|file|numbers)\//.test(code))
    expect(engine.filter((code) => placeOfFinding({ code, where: '' }) === null)).toEqual([])
    const at = (where: string) => placeOfFinding({ code: 'file/invalid-value', where })
    expect([at('yarns[1].colour'), at('layout.kit.count'), at('layout.rows'), at('title')]).toEqual([
      ...(['yarn', 'kit', 'arrangement', null] as const),
    ])
  })

  it('goes to the round', async () => {
    let closed = false
    const { app } = await inWindow(
      FindingsDialog,
      { onclose: () => void (closed = true), map: null },
      troubled(),
    )
    await fireEvent.click(screen.getAllByRole('button', { name: 'Go to round 5' })[0]!)
    expect(closed).toBe(true)
    expect(app.view.place).toBe('motif')
    expect(app.view.showRounds).toBe(true)
    expect(app.view.wishedRound).toBe(4)
  })
})
