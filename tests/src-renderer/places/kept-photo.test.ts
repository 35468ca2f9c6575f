import { cleanup, fireEvent, screen } from '@testing-library/svelte'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import MotifPlace from '../../../src-renderer/places/motif/MotifPlace.svelte'
import { inWindow } from '../in-window'
import { KEPT_JPEG } from '../photo/fake-finder'
import { SMALL } from '../projects'

beforeEach(() => {
  HTMLDialogElement.prototype.showModal = function () {
    this.open = true
  }
  HTMLDialogElement.prototype.close = function () {
    this.open = false
  }
})
afterEach(cleanup)

const withPhoto = (picture: string): Project => ({
  ...SMALL,
  motifs: SMALL.motifs!.map((motif) => ({ ...motif, name: 'Rose', photo: { picture, sheet: 'A4' } })),
})
const button = (name: string | RegExp) => screen.getByRole('button', { name })

describe('the photo that a motif was measured from', () => {
  it('is shown at the motif, and large', async () => {
    await inWindow(MotifPlace, {}, withPhoto(KEPT_JPEG))
    await fireEvent.click(button('Photo that Rose was measured from: show it large'))
    const large = screen.getByRole('img', { name: 'Photo that Rose was measured from' })
    expect(large.getAttribute('src')).toBe(KEPT_JPEG)
    screen.getByRole('dialog', { name: 'Photo of Rose' })
  })

  it('is measured again as the same picture', async () => {
    const { app } = await inWindow(MotifPlace, {}, withPhoto(KEPT_JPEG))
    await fireEvent.click(button('Measure it again'))
    expect(app.view.dialog).toBe('photo')
    const { motif, file, isKept } = app.view.photo
    expect({ motif, isKept, name: file!.name, type: file!.type }).toEqual({
      ...{ motif: SMALL.motifs![0]!.id, isKept: true, name: 'Rose.jpg', type: 'image/jpeg' },
    })
    expect(file!.size).toBe(Buffer.from(KEPT_JPEG.split(',')[1]!, 'base64').length)
  })

  it('is removed, and undo brings it back', async () => {
    const { app } = await inWindow(MotifPlace, {}, withPhoto(KEPT_JPEG))
    await fireEvent.click(button('Remove the photo'))
    expect(app.document.project.motifs![0]).not.toHaveProperty('photo')
    expect(screen.queryByRole('button', { name: 'Remove the photo' })).toBeNull()
    expect(app.document.undoLabel).toBe('remove the photo of the motif')
    app.document.undo()
    expect(app.document.project.motifs![0]!.photo!.picture).toBe(KEPT_JPEG)
  })

  it('is never fetched or shown where it is none, and can be removed', async () => {
    await inWindow(MotifPlace, {}, withPhoto('https://example.org/rose.jpg'))
    expect(document.querySelector('img')).toBeNull()
    screen.getByText('What is kept with Rose is no photo that can be shown.')
    expect(screen.queryByRole('button', { name: 'Measure it again' })).toBeNull()
    button('Remove the photo')
  })

  it('is not spoken of where none is kept', async () => {
    await inWindow(MotifPlace, {}, SMALL)
    expect(screen.queryByText('Photo')).toBeNull()
  })
})
