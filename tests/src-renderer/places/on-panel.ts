/** What is done on a panel, by name as a person finds it; an empty one. */
import { fireEvent, screen } from '@testing-library/svelte'
import type { Project } from '../../../shared-types/project'
import { example } from '../projects'

export const fill = async (label: string, text: string) => {
  const field = screen.getByRole('textbox', { name: label })
  await fireEvent.input(field, { target: { value: text } })
  await fireEvent.keyDown(field, { key: 'Enter' })
}
export const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }))
export const EMPTY = (): Project => ({
  ...example('quince-wreath-cushion'),
  layout: {
    kind: 'applique',
    panel: { shape: 'rectangle', width: 450, height: 300, allowance: 15 },
    clearance: 5,
    items: [],
  },
})

export const open = (title: string | RegExp) => fireEvent.click(screen.getByText(title))
