import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { readPdf } from '../paper/read-pdf'
import { newFolder, petalyard, SAMPLE, writeProject } from './sample'

describe('map', () => {
  let file = ''
  let folder = ''
  beforeAll(async () => {
    file = await writeProject(SAMPLE)
    folder = await newFolder()
  })

  it('writes a PDF and says so; the same file on the same day gives the same bytes', async () => {
    const out = join(folder, 'throw.pdf')
    const ran = await petalyard('map', file, '--out', out)
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect(ran.out).toMatch(/^Wrote .+throw\.pdf: 30 motifs, [\d,]+ kB\n$/)
    const first = await readFile(out)
    expect(first.subarray(0, 5).toString()).toBe('%PDF-')
    await petalyard('map', file, '--out', out)
    expect(Buffer.compare(await readFile(out), first)).toBe(0)
    expect(await readdir(folder)).toEqual(['throw.pdf'])
    expect(await readdir(dirname(file))).toEqual(['throw.petalyard'])
  })

  it('takes paper, style, terms and pages', async () => {
    const sheets = [[], ['--paper', 'Letter'], ['--style', 'colour'], ['--terms', 'UK'], ['--pages', '1']]
    const written = new Set<string>()
    for (const [index, options] of sheets.entries()) {
      const out = join(folder, `sheet-${index}.pdf`)
      expect(await petalyard('map', file, '--out', out, ...options)).toMatchObject({ code: 0, err: '' })
      written.add((await readFile(out)).toString('base64'))
    }
    expect(written.size).toBe(sheets.length)
  })

  it('takes the hand; sheets for the left one say so on every page', async () => {
    const texts = async (...options: string[]) => {
      const out = join(folder, 'hand.pdf')
      expect(await petalyard('map', file, '--out', out, ...options)).toMatchObject({ code: 0, err: '' })
      const { pages } = await readPdf(new Uint8Array(await readFile(out)))
      return pages.map(({ words }) => words)
    }
    const [left, right, own] = [await texts('--hand', 'left'), await texts('--hand', 'right'), await texts()]
    expect(left.length).toBeGreaterThan(2)
    for (const page of left) expect(page).toMatch(/version of .+ · left-handed/)
    for (const page of right) expect(page).not.toContain('left-handed')
    expect(own).toEqual(right)
    expect(left.join(' ')).toContain('direction of work, clockwise')
    expect(await petalyard('map', file, '--out', folder, '--editions', 'us', '--hand', 'left')).toMatchObject(
      {
        code: 2,
      },
    )
    expect(await petalyard('map', file, '--out', join(folder, 'h.pdf'), '--hand', 'both')).toMatchObject({
      code: 2,
    })
  })

  it('tells which texts paper spells in other letters, and writes the map all the same', async () => {
    const hebrew = await writeProject({ ...SAMPLE, title: 'שמיכה' })
    const out = join(folder, 'hebrew.pdf')
    const ran = await petalyard('map', hebrew, '--out', out)
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/^Wrote /)
    expect(ran.err).toMatch(
      /letters\/missing[^\n]*title[^\n]*the font used on paper has no ש, מ, י, כ and ה \(Hebrew\)/,
    )
    const checked = await petalyard('check', hebrew)
    expect(checked).toMatchObject({ code: 0 })
    expect(checked.out).toContain('letters/missing')
  })

  it('refuses pages that the map does not have', async () => {
    const out = join(folder, 'none.pdf')
    const ran = await petalyard('map', file, '--out', out, '--pages', '900')
    expect(ran).toMatchObject({ code: 2, out: '' })
    expect(ran.err).toMatch(/^petalyard: [^\n]*900[^\n]*\n$/)
    await expect(readFile(out)).rejects.toThrow('ENOENT')
  })

  it('ends with 4 where it cannot write, and keeps what is there', async () => {
    const taken = join(folder, 'taken')
    await mkdir(taken)
    const plain = join(folder, 'plain')
    await writeFile(plain, 'mine')
    for (const [out, why] of [
      [taken, 'a folder or device has this name'],
      [join(folder, 'no', 'folder', 'a.pdf'), 'the folder does not exist'],
      [join(plain, 'a.pdf'), 'the folder does not exist'],
    ] as const) {
      const ran = await petalyard('map', file, '--out', out)
      expect(ran).toEqual({ code: 4, out: '', err: `petalyard: ${out} could not be written: ${why}.\n` })
    }
    expect(await readFile(plain, 'utf8')).toBe('mine')
  })

  it('of a project with an error is written all the same, tells the error and ends with 1', async () => {
    const broken = await writeProject({ ...SAMPLE, joining: { ...SAMPLE.joining, yarn: 'y9' } })
    const out = join(folder, 'error.pdf')
    const ran = await petalyard('map', broken, '--out', out)
    expect(ran.code).toBe(1)
    expect(ran.err).toContain("joining.yarn: there is no yarn 'y9'.")
    expect((await readFile(out)).length).toBeGreaterThan(1000)
  })
})
