/** Names in a file that every object has by itself are names like any other. */
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { newFolder, petalyard } from './sample'

it.each([
  ['orangery-cloth', 'c'],
  ['slate-roof-lap-blanket', 'a'],
  ['causeway-lap-blanket', 'a'],
])('a colorway of %s is counted, whatever it is called', async (example, id) => {
  const folder = await newFolder()
  const file = join(folder, 'named.petalyard')
  await petalyard('example', example, '--out', file)
  const text = await readFile(file, 'utf8')
  const told = (await petalyard('plan', file)).out
  for (const name of ['constructor', '__proto__', 'hasOwnProperty']) {
    await writeFile(file, text.replaceAll(`"${id}"`, `"${name}"`))
    expect((await petalyard('plan', file)).out).toBe(told)
  }
})
