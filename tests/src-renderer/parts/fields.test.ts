/** Every declared field as it stands in the window: its bounds are those of the engine, its change has its name in undo. */
import { cleanup, fireEvent, screen } from '@testing-library/svelte'
import { tick } from 'svelte'
import { expect, it } from 'vitest'
import { FIELDS } from '../../../src-core/fields/all'
import { shownAs, valueOf, withValue } from '../../../src-core/fields/field'
import { fieldText } from '../../../src-core/fields/words'
import Field from '../../../src-renderer/parts/Field.svelte'
import { placeFor, projectFor } from '../../src-core/fields/projects'
import { inWindow } from '../in-window'

/** A blanket of 180 rings or a garland of as many things as can be is long in coming; the last of the few will do. */
const isQuick = (most: number, path: string) => !(path === 'layout.rings' && most > 20)

it.each(FIELDS.map((field) => [`${field.path} ${field.layout ?? ''}`, field] as const))(
  '%s',
  async (_, field) => {
    const at = placeFor(field)
    const names = { name: 'Oat', slot: 'all', label: '1', Balls: 'Skeins', Pieces: 'Motifs' }
    for (const [bound, key, back] of [
      [field.least ?? -400, 'ArrowDown', 'ArrowUp'],
      [field.most ?? 400, 'ArrowUp', 'ArrowDown'],
    ] as const) {
      if (!isQuick(bound, field.path)) continue
      const start = field.kind === 'count' ? Math.ceil(bound) : bound
      const project = withValue(projectFor(field, start), field, start, at)
      const { app } = await inWindow(Field, { of: field, at, names }, project)
      const label = fieldText(field.label, project, names)
      const input = screen.getByRole('textbox', { name: label })
      const isBounded = (key === 'ArrowUp' ? field.most : field.least) !== undefined
      const now = () => shownAs(field, valueOf(app.document.project, field, at) ?? 0)
      // The arrow that leads beyond stays at the bound; where there is none, it goes on.
      await fireEvent.keyDown(input, { key })
      if (isBounded && start === bound) expect(now()).toBeCloseTo(shownAs(field, bound), 6)
      else expect(now()).not.toBe(shownAs(field, start))
      await fireEvent.keyDown(input, { key: 'Escape' })
      // The one that leads back is a change, with its name.
      await fireEvent.keyDown(input, { key: back })
      await fireEvent.keyDown(input, { key: 'Enter' })
      await tick()
      expect(app.document.undoLabel).toBe(fieldText(field.change, project, names))
      cleanup()
    }
  },
)
