/** The house style on the command line: read from a file, and refused in one line where it is none. */
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { readPdf } from '../paper/read-pdf'
import { newFolder, petalyard } from './sample'

let folder = ''
let file = ''
beforeAll(async () => {
  folder = await newFolder()
  file = join(folder, 'runner.petalyard')
  await petalyard('example', 'dovecote-runner', '--out', file)
})

const inFolder = async (name: string, text: string): Promise<string> => {
  const path = join(folder, name)
  await writeFile(path, text)
  return path
}

describe('map --house', () => {
  it('puts title page, name, address and logo into the file', async () => {
    await inFolder(
      'logo.svg',
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><path fill="#204060" d="M0 0h40v20H0z"/></svg>',
    )
    const house = await inFolder(
      'house.json',
      JSON.stringify({ name: 'Larkspur Yarns', address: 'Arbroath', logo: 'logo.svg', titlePage: true }),
    )
    const out = join(folder, 'runner.pdf')
    const ran = await petalyard('map', file, '--out', out, '--house', house)
    expect([ran.err, ran.code]).toEqual(['', 0])
    const [title] = (await readPdf(new Uint8Array(await readFile(out)))).pages
    const words = title!.texts.map(({ text }) => text).join(' ')
    for (const told of ['Dovecote table runner', 'Larkspur Yarns', 'Arbroath', 'Inside'])
      expect(words).toContain(told)
    const plain = join(folder, 'plain.pdf')
    await petalyard('map', file, '--out', plain)
    const [first] = (await readPdf(new Uint8Array(await readFile(plain)))).pages
    expect(first!.texts.map(({ text }) => text).join(' ')).not.toContain('Larkspur')
  })

  it('prints a title page or none as the command says, whatever the house says', async () => {
    const house = await inFolder('titled.json', '{"titlePage": true}')
    const isTitled = async (...more: string[]): Promise<boolean> => {
      const out = join(folder, 'titled.pdf')
      const ran = await petalyard('map', file, '--out', out, ...more)
      expect([ran.err, ran.code]).toEqual(['', 0])
      const [first] = (await readPdf(new Uint8Array(await readFile(out)))).pages
      return first!.words.includes('Title page')
    }
    expect(await isTitled()).toBe(false)
    expect(await isTitled('--title-page')).toBe(true)
    expect(await isTitled('--title-page', '--sheets', 'map')).toBe(true)
    expect(await isTitled('--house', house)).toBe(true)
    expect(await isTitled('--house', house, '--no-title-page')).toBe(false)
  })

  it('leaves out the pages that the house does not want, and prints them where they are asked for', async () => {
    const house = await inFolder('lean.json', '{"leaveOut": ["order", "materials", "motif"]}')
    const headings = async (...more: string[]): Promise<string> => {
      const out = join(folder, 'lean.pdf')
      const ran = await petalyard('map', file, '--out', out, '--house', house, ...more)
      expect([ran.err, ran.code]).toEqual(['', 0])
      const { pages } = await readPdf(new Uint8Array(await readFile(out)))
      return pages.map(({ texts }) => texts.map(({ text }) => text).join(' ')).join('\n')
    }
    const lean = await headings()
    expect(lean).toContain('Dovecote table runner')
    for (const gone of ['Order of work ', 'Finished size']) expect(lean).not.toContain(gone)
    const whole = await headings('--leave-out', 'none')
    for (const there of ['Order of work ', 'Finished size']) expect(whole).toContain(there)
    const other = await headings('--leave-out', 'materials')
    expect(other).toContain('Order of work ')
    expect(other).not.toContain('Finished size')
    const wrong = await petalyard('map', file, '--out', join(folder, 'x.pdf'), '--leave-out', 'cautions')
    expect(wrong.code).toBe(2)
    expect(wrong.err).toContain('Expected are order, materials, motif, progress, or none')
  })

  it.each([
    ['no JSON', 'name: Larkspur', /this is no JSON/],
    ['a list', '[1]', /this is no house style/],
    [
      'a field that is none',
      '{"nmae": "Larkspur"}',
      /"nmae" is none of name, address, accent, logo, titlePage, leaveOut/,
    ],
    ['a colour that is none', '{"accent": "green"}', /six digits behind a #/],
    ['a page that must stay', '{"leaveOut": ["cautions"]}', /"leaveOut" is a list of order, materials/],
    ['a name that is a number', '{"name": 5}', /"name" is not as it has to be/],
    ['a logo that is not there', '{"logo": "none.png"}', /none\.png could not be read: it does not exist/],
    [
      'a logo that is a text',
      '{"logo": "house-bad.json"}',
      /the logo cannot be used: it is neither a PNG nor an SVG/,
    ],
  ])('ends with 3 and writes nothing where it has %s', async (_, text, why) => {
    const house = await inFolder('house-bad.json', text)
    const ran = await petalyard('map', file, '--out', join(folder, 'never.pdf'), '--house', house)
    expect(ran.code).toBe(3)
    expect(ran.err.trim().split('\n')).toHaveLength(1)
    expect(ran.err).toMatch(why)
  })
})
