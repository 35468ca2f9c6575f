/** Nobody measures a motif to a tenth of a mm that was worked out: what pages say of its size is what a tape shows. */
import { expect, it } from 'vitest'
import { example } from '../examples'
import { toldOf } from './pages-of'

it.each(['dovecote-runner', 'orchard-wall-throw', 'saltmarsh-bag', 'slate-roof-lap-blanket'])(
  'sizes that were worked out are whole on the pages of %s',
  (name) => {
    const project = example(name)
    const entered = JSON.stringify(project)
    const { of } = toldOf({ ...project, units: 'metric' })
    const fine = [
      ...['overview', 'motif']
        .map(of)
        .join(' ')
        .matchAll(/\b(\d+\.\d) mm/g),
    ].map(([, mm]) => mm!)
    expect(fine.filter((mm) => Number(mm) >= 20 && !entered.includes(mm))).toEqual([])
  },
)
