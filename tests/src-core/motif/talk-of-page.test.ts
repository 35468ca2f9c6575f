/** What is printed of a pasted page: what concerns the making, not what somebody tells besides. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { toldInstructions } from '../../../src-core/motif/instructions'
import { withoutTalk } from '../../../src-core/motif/talk-of-page'

const TALK = [
  'Hello lovelies!',
  'I am so excited to share this little flower with you today.',
  'My grandmother taught me to crochet, and summers at her cottage always smelled of roses.',
  'Don’t forget to subscribe to my newsletter and follow me on social media!',
  'This post contains affiliate links.',
  'If you make one, tag me, I’d love to see it.',
  'Thanks for reading, happy hooking!',
  'You can find me on any of those sites, and the kit in my shop with 20 % off.',
  'Pictures of 12 flowers go to @harbourhooks.',
]
const MAKING = [
  'Ch 3 at the start of a round counts as a dc throughout.',
  'The flower is worked in rounds with the right side facing.',
  'I used a 4 mm hook.',
  'Weave in all ends. Block to size.',
  'Stretches a little when it is washed.',
]

describe('talk of a pasted page', () => {
  it.each(TALK)('is not printed: %s', (line) => expect(withoutTalk(line)).toBe(''))
  it.each(MAKING)('what concerns the making is: %s', (line) => expect(withoutTalk(line)).toBe(line))

  it('goes sentence by sentence, and stays in the file', () => {
    const line = 'Hello everyone! Work the last round loosely. Please follow me at @harbourhooks.'
    const motif = {
      ...{ id: 'm', kind: 'rounds', rounds: [], instructions: `${TALK.join('\n')}\n${line}` },
      page: { text: `${TALK.join('\n')}\n${line}` },
    } as unknown as RoundsMotif
    expect(toldInstructions(motif, 'US')).toEqual(['Work the last round loosely.'])
    expect(motif.instructions).toContain('Hello everyone!')
  })

  it('what somebody wrote themselves is printed as it is', () => {
    const motif = { id: 'm', kind: 'rounds', rounds: [], instructions: TALK[2] } as unknown as RoundsMotif
    expect(toldInstructions(motif, 'US')).toEqual([TALK[2]])
    const pasted = { ...motif, page: { text: 'Something else.' } } as unknown as RoundsMotif
    expect(toldInstructions(pasted, 'US')).toEqual([TALK[2]])
  })
})
