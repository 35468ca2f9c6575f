import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import Ledger from '../../../src-renderer/frame/Ledger.svelte'
import type { Project } from '../../../shared-types/project'
import { confirmBand } from '../../../src-renderer/state/edits/yarn'
import { SMALL } from '../projects'
import { inWindow } from '../in-window'

/** A blanket of motifs in so many yarns. */
function manyYarns(count: number): Project {
  const ids = Array.from({ length: count }, (_, i) => `y${i + 1}`)
  return {
    ...SMALL,
    yarns: ids.map((id) => ({ id, name: `Yarn ${id}`, ballGrams: 50, ballMetres: 125, price: 4 })),
    colourways: ids.map((id) => ({ id: `c-${id}`, motif: 'm1', yarns: { centre: id, petals: id } })),
    layout: {
      ...SMALL.layout!,
      cells: { fill: { pattern: 'repeat', colourways: ids.map((id) => `c-${id}`) } },
    } as never,
  }
}

describe('the ledger', () => {
  it('shows all of six yarns, and of more the rest at a press', async () => {
    await inWindow(Ledger, {}, manyYarns(6))
    const lines = () => within(screen.getByRole('list', { name: 'Yarn' })).getAllByText(/^Yarn y/).length
    expect(lines()).toBe(6)
    expect(screen.queryByRole('button', { name: /more yarn/ })).toBeNull()
    cleanup()
    await inWindow(Ledger, {}, manyYarns(9))
    expect(lines()).toBe(5)
    const more = screen.getByRole('button', { name: '4 more yarns' })
    expect(more.getAttribute('aria-expanded')).toBe('false')
    await fireEvent.click(more)
    expect(lines()).toBe(9)
    await fireEvent.click(screen.getByRole('button', { name: 'Fewer yarns' }))
    expect(lines()).toBe(5)
  })

  it('marks what follows from a band that nobody entered, until somebody does', async () => {
    const yarns = SMALL.yarns!.map((yarn) => ({ ...yarn, assumed: ['ballGrams' as const] }))
    const { app } = await inWindow(Ledger, {}, { ...SMALL, yarns })
    const text = () => screen.getByLabelText('Ledger').textContent.replace(/\s+/g, ' ')
    expect(text()).toMatch(/Brick.* skeins?\*.*buy \d+\*.*\* assumed, as the skein band is not entered yet/)
    expect(text()).toMatch(/To buy €\d+\.\d+ \(assumed\)/)
    app.document.change('enter the bands', (project) => confirmBand(confirmBand(project, 'y1'), 'y2'))
    await waitFor(() => expect(text()).not.toContain('assumed'))
  })

  it('puts printing first only where something is arranged', async () => {
    const print = () => screen.getByRole('button', { name: 'Print the map…' }).className
    await inWindow(Ledger, {}, SMALL)
    expect(print()).toMatch(/\bmain\b/)
    cleanup()
    await inWindow(Ledger, {}, { ...SMALL, motifs: [] })
    expect(print()).not.toMatch(/\bmain\b/)
  })

  it('counts errors as errors, beside warnings and notes', async () => {
    const { app } = await inWindow(
      Ledger,
      {},
      { ...SMALL, layout: { ...SMALL.layout!, motif: 'gone' } as never },
    )
    const count = (severity: string) =>
      app.document.findings.filter((finding) => finding.severity === severity).length
    expect(count('error')).toBeGreaterThan(0)
    const button = screen.getByRole('button', { name: /error/ })
    expect(button.textContent).toMatch(new RegExp(`^${count('error')} errors?`))
    expect(button.textContent).not.toMatch(/0 /)
  })
})
