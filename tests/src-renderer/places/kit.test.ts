import { fireEvent, screen, within } from '@testing-library/svelte'
import { beforeAll, describe, expect, it } from 'vitest'
import KitPlace from '../../../src-renderer/places/kit/KitPlace.svelte'
import PaperPlace from '../../../src-renderer/places/paper/PaperPlace.svelte'
import YarnPlace from '../../../src-renderer/places/yarn/YarnPlace.svelte'
import { kitOf } from '../../../src-renderer/state/edits/kit'
import { example, SMALL } from '../projects'
import { inWindow } from '../in-window'

beforeAll(() => {
  URL.createObjectURL = () => 'blob:page'
  URL.revokeObjectURL = () => undefined
})

const GATE = example('orchard-gate-garland')
const fill = async (label: string, text: string) => {
  const field = screen.getByRole('textbox', { name: label })
  await fireEvent.input(field, { target: { value: text } })
  await fireEvent.keyDown(field, { key: 'Enter' })
}

describe('Kit', () => {
  it('teaches what a kit is, and sells any project as one', async () => {
    const { app } = await inWindow(KitPlace, {}, SMALL)
    screen.getByText(/^A kit is one project put up for somebody else to make/)
    await fireEvent.click(screen.getByRole('button', { name: 'Sell it as a kit' }))
    expect(app.document.undoLabel).toBe('sell it as a kit')
    expect(app.document.plan.kit).toMatchObject({ count: 10 })
    await fireEvent.click(screen.getByRole('button', { name: 'Remove the kit' }))
    expect(kitOf(app.document.project)).toBeNull()
  })

  it('asks for everything that a run needs, and answers at once', async () => {
    const { app } = await inWindow(KitPlace, {}, GATE)
    await fill('Kits in the batch', '40')
    await fill('Round up to whole', '5 g')
    await fill('To spare', '10 %')
    screen.getByText(/^Yarn and extras for 4 more to spare \(10\s% of 40\), for what gets lost or spoilt\.$/)
    await fill('Packaging per kit (EUR)', '1.20')
    await fill('It weighs', '50 g')
    await fill('Margin', '45')
    await fill('Marketplace fees', '5')
    await fill('and for each kit (EUR)', '0.4')
    await fill('Tax on the price', '19')
    expect(kitOf(app.document.project)).toMatchObject({
      count: 40,
      windTo: 5,
      sparePercent: 10,
      packaging: 1.2,
      packagingGrams: 50,
      marginPercent: 45,
      fees: { fixed: 0.4, sharePercent: 5 },
      taxPercent: 19,
    })
    const { kit } = app.document.plan
    expect(kit!.spares).toBe(4)
    const facts = screen.getByLabelText('Cost and price')
    within(facts).getByText('Price with tax')
    within(facts).getByText(`€${kit!.asked!.withTax.toFixed(2)}`)
    within(facts).getByText(`at ${kit!.breakEven} of 40`)
    await fill('Tax on the price', '')
    within(screen.getByLabelText('Cost and price')).getByText('Price, tax not included')
  })

  it('says that margin and fees have to stay under what the other leaves of the price', async () => {
    const { app } = await inWindow(KitPlace, {}, GATE)
    const refused = async (label: string, text: string) => {
      screen.getByRole('textbox', { name: label }).focus()
      await fill(label, text)
      const said = screen.getByRole('alert').textContent
      await fireEvent.keyDown(screen.getByRole('textbox', { name: label }), { key: 'Escape' })
      return said
    }
    await fill('Marketplace fees', '')
    await fill('Margin', '40')
    expect(await refused('Margin', '100')).toBe('It must be less than 100 %. 40 % is kept.')
    await fill('Marketplace fees', '6.5')
    expect(await refused('Margin', '95')).toBe('It must be less than 93.5 %. 40 % is kept.')
    expect(await refused('Marketplace fees', '60')).toBe('It must be less than 60 %. 6.5 % is kept.')
    await fill('Tax on the price', '20')
    await fireEvent.click(screen.getByRole('radio', { name: 'what the buyer pays, tax included' }))
    expect(app.document.undoLabel).toBe('change what fees are charged on')
    expect(kitOf(app.document.project)?.fees).toMatchObject({ sharePercent: 6.5, on: 'paid' })
    // 6.5 % of 120 % are 7.8 %.
    expect(await refused('Margin', '92.2')).toBe('It must be less than 92.2 %. 40 % is kept.')
  })

  it('puts extras in, and tells what is bought in the cheapest mix', async () => {
    const { app } = await inWindow(KitPlace, {}, GATE)
    await fireEvent.click(screen.getByRole('button', { name: 'Put something else in' }))
    const extras = screen.getByRole('list', { name: 'Extras' })
    const last = within(extras).getAllByRole('listitem').at(-1)!
    const name = within(last).getByRole('textbox', { name: 'Name' })
    await fireEvent.input(name, { target: { value: 'tin of pins' } })
    await fireEvent.blur(name)
    const price = within(last).getByRole('textbox', { name: 'Price of one (EUR)' })
    await fireEvent.input(price, { target: { value: '2.50' } })
    await fireEvent.keyDown(price, { key: 'Enter' })
    expect(kitOf(app.document.project)?.extras?.at(-1)).toEqual({ name: 'tin of pins', count: 1, price: 2.5 })
    const table = screen.getByRole('table', { name: 'To buy for the batch' })
    within(table).getByText('tin of pins')
    expect(within(table).getAllByText(/200 g/).length).toBeGreaterThan(0)
    await fireEvent.click(screen.getByRole('button', { name: 'Leave out tin of pins' }))
    expect(kitOf(app.document.project)?.extras).toHaveLength(2)
  })

  it('asks whose pattern it is, and warns until it may be put in', async () => {
    const { app } = await inWindow(KitPlace, {}, GATE)
    await fill('Pattern by somebody else', 'Ada Loop')
    const codes = () => app.document.plan.findings.map(({ code }) => code)
    expect(codes()).toContain('kit/pattern')
    await fireEvent.click(screen.getByRole('checkbox', { name: /^Ada Loop allows it/ }))
    expect(codes()).not.toContain('kit/pattern')
    screen.getByText(/^Hooks, needles and beads|not for children under three/)
    screen.getByText(/Check what applies where you sell/)
  })
})

describe('Paper of a blanket kit', () => {
  it('offers card and map together, and each of them alone', async () => {
    const blanket = example('market-stall-throw')
    const layout = { ...blanket.layout!, kit: { count: 30 } }
    const { app } = await inWindow(PaperPlace, {}, { ...blanket, layout } as typeof blanket)
    const { paper } = app
    expect(paper.offers.map(({ label }) => label)).toEqual([
      'Card and map, to put in',
      'The map alone',
      'Kit card alone',
      'Packing list, for the seller',
      'Labels',
      'Pattern of one motif',
    ])
    screen.getByRole('button', { name: 'Export card and map as PDF' })
    expect(paper.choice).toMatchObject({ sheets: ['card', 'map'] })
    await fireEvent.change(screen.getByRole('combobox', { name: 'Sheets' }), { target: { value: 'map' } })
    expect(paper.choice).toMatchObject({ sheets: ['map'] })
  })
})

describe('Paper of a garland kit', () => {
  const exported = (host: Awaited<ReturnType<typeof inWindow>>['host']) =>
    host.asked.filter(({ name }) => name === 'exportProject').at(-1)?.payload

  it('offers what goes in, the card alone, the packing list and labels, each as a PDF', async () => {
    const { host } = await inWindow(PaperPlace, {}, GATE)
    const give = async (button: string) => {
      await fireEvent.click(screen.getByRole('button', { name: button }))
      const asked = exported(host)
      host.finishExport()
      await screen.findByText(/^Exported:/)
      return asked
    }
    expect(await give('Export card and list as PDF')).toMatchObject({ sheets: ['card', 'map'] })
    for (const [what, sheet] of [
      ['the kit card', 'card'],
      ['the packing list', 'packing'],
      ['the labels', 'labels'],
    ] as const) {
      await fireEvent.change(screen.getByRole('combobox', { name: 'Sheets' }), { target: { value: sheet } })
      expect(await give(`Export ${what} as PDF`)).toMatchObject({ kind: 'map', sheets: [sheet] })
    }
    await fireEvent.click(screen.getByRole('radio', { name: '25 labels, one for each kit' }))
    expect(await give('Export the labels as PDF')).toMatchObject({ sheets: ['labels'], labels: 'run' })
    for (const [button, table] of [
      ['Materials (CSV)', 'materials'],
      ['Along the cord (CSV)', 'cord'],
      ['Winding and cutting (CSV)', 'kit'],
      ['Purchases (CSV)', 'purchase'],
    ] as const)
      expect(await give(button)).toMatchObject({ kind: 'table', table })
  })

  it('without a kit there are the template and the pattern of a motif to choose from', async () => {
    await inWindow(PaperPlace, {}, example('quince-wreath-cushion'))
    screen.getByRole('button', { name: 'Export the template as PDF' })
    screen.getByRole('button', { name: 'Items (CSV)' })
    const { options } = screen.getByRole<HTMLSelectElement>('combobox', { name: 'Sheets' })
    expect([...options].map(({ text }) => text)).toEqual(['The template', 'Pattern of one motif'])
  })
})

describe('what a yarn is sold in', () => {
  it('is entered at its band, and bought where it is cheaper', async () => {
    const { app } = await inWindow(YarnPlace, {}, GATE)
    const before = app.document.plan.kit!.runCost!
    await fireEvent.click(screen.getAllByText('Also sold in another size')[1]!)
    const added = screen.getAllByRole('group', { name: 'Quince is also sold in' }).at(-1)!
    const price = within(added).getByRole('textbox', { name: 'for (EUR)' })
    await fireEvent.input(price, { target: { value: '10' } })
    await fireEvent.keyDown(price, { key: 'Enter' })
    expect(app.document.plan.kit!.runCost!).toBeLessThan(before)
    await fireEvent.click(screen.getByRole('button', { name: 'Quince is not sold in 500 g' }))
    expect(app.document.plan.kit!.runCost!).toBe(before)
  })

  it('says how much of a yarn is in the cord', async () => {
    await inWindow(YarnPlace, {}, GATE)
    screen.getByText('for the cord, of it')
  })
})
