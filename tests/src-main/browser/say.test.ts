import { PassThrough, Writable } from 'node:stream'
import { expect, it } from 'vitest'
import { sayTo } from '../../../src-main/browser/say'

it('a closed output ends nothing: what is said to it is lost', async () => {
  const closed = new Writable({
    autoDestroy: false,
    write: (_chunk, _encoding, done) => done(Object.assign(new Error('write EPIPE'), { code: 'EPIPE' })),
  })
  const say = sayTo(closed)
  // An error that nobody hears is thrown here.
  expect(() => closed.emit('error', new Error('write EPIPE'))).not.toThrow()
  for (let again = 0; again < 3; again++) say('an address was used a second time')
  await new Promise((resolve) => setImmediate(resolve))
})

it('each line is one, whatever it names', () => {
  const stream = new PassThrough()
  sayTo(stream)('a\u001b]0;x\u0007 name\nof a file')
  expect(String(stream.read())).toMatch(/^[^\p{Cc}]+\n$/u)
})
