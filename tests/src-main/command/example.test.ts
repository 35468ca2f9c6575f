import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { listExamples, openProject } from '../../../src-main/documents'
import { checkProject } from '../../../src-core/plan'
import { newFolder, petalyard } from './sample'

const names = listExamples().map((example) => example.name)

describe('example', () => {
  it('lists every example with its title and first sentence, in 80 columns', async () => {
    const ran = await petalyard('example')
    expect(ran).toMatchObject({ code: 0, err: '' })
    const flat = ran.out.replace(/\s+/g, ' ')
    expect(names.length).toBeGreaterThan(2)
    for (const { name, title, description } of listExamples()) {
      expect(ran.out).toMatch(new RegExp(`^${name} `, 'm'))
      expect(flat).toContain(`${title}. ${description}`)
      expect(description).toMatch(/[.]$/)
    }
    for (const line of ran.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })

  it.each(names)('%s is written, opens, and has no errors', async (name) => {
    const out = join(await newFolder(), 'mine.petalyard')
    expect(await petalyard('example', name, '--out', out)).toMatchObject({ code: 0, err: '' })
    const outcome = await openProject(out)
    if (outcome.kind !== 'opened') throw new Error(outcome.kind)
    expect(checkProject(outcome.project).filter((entry) => entry.severity === 'error')).toEqual([])
    for (const command of ['check', 'plan', 'measure']) expect((await petalyard(command, out)).code).toBe(0)
  })

  it('says of a bag which end stays open, and how its bottom is closed', async () => {
    const out = join(await newFolder(), 'bag.petalyard')
    await petalyard('example', 'saltmarsh-bag', '--out', out)
    const told = (await petalyard('plan', out)).out.replace(/\s+/g, ' ')
    expect(told).toContain('The mouth stays open.')
    expect(told).toMatch(
      /41\.4 cm wide laid flat.* Close the bottom\. Lay it flat .* straight across: 41\.4 cm, /,
    )
  })

  it('does not replace a file unless told to, and then keeps a copy', async () => {
    const folder = await newFolder()
    const out = join(folder, 'mine.petalyard')
    await writeFile(out, 'months of work')
    const refused = await petalyard('example', names[0] ?? '', '--out', out)
    expect(refused).toMatchObject({ code: 4, out: '' })
    expect(refused.err).toContain('is there already; it was left as it is. --force replaces it.')
    expect(await readFile(out, 'utf8')).toBe('months of work')
    expect((await petalyard('example', names[0] ?? '', '--out', out, '--force')).code).toBe(0)
    expect(await readFile(`${out}~`, 'utf8')).toBe('months of work')
    expect(await readdir(folder)).toHaveLength(2)
  })

  it('tells wrong names and places', async () => {
    const unknown = await petalyard('example', 'nothing-like-it', '--out', 'x')
    expect(unknown).toMatchObject({ code: 2, out: '' })
    for (const name of names) expect(unknown.err).toContain(name)
    expect(await petalyard('example', names[0] ?? '')).toMatchObject({ code: 2 })
    expect(await petalyard('example', '--out', 'x')).toMatchObject({ code: 2 })
    const folder = await newFolder()
    await mkdir(join(folder, 'sub'))
    for (const out of [join(folder, 'sub'), join(folder, 'no', 'x')])
      expect((await petalyard('example', names[0] ?? '', '--out', out)).code).toBe(4)
  })
})
