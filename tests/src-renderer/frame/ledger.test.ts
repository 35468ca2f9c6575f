import { cleanup, screen } from '@testing-library/svelte'
import { afterEach, describe, expect, it } from 'vitest'
import Ledger from '../../../src-renderer/frame/Ledger.svelte'
import { SMALL } from '../projects'
import { inWindow } from '../in-window'

afterEach(cleanup)

describe('the ledger', () => {
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
