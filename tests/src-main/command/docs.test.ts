import { readFile } from 'node:fs/promises'
import { describe, expect, it } from 'vitest'
import { toJSONSchema } from 'zod'
import { generateDocs, pagePath } from '../../../scripts/docs'
import { projectSchema } from '../../../shared-types/project'
import { EXIT } from '../../../src-main/command/exit-codes'
import { run } from '../../../src-main/command/program'

describe('docs', () => {
  it('generated pages follow from the source; `npm run docs` writes them', async () => {
    for (const [name, text] of Object.entries(await generateDocs()))
      expect(await readFile(pagePath(name), 'utf8'), name).toBe(text)
  })

  it('docs/project-file.md names every field of the project file', async () => {
    const page = await readFile(pagePath('docs/project-file.md'), 'utf8')
    const told = new Set([...page.matchAll(/`[^`\n]+`/g)].flatMap(([code]) => code.split(/\W+/)))
    const missing = fieldsOf(toJSONSchema(projectSchema, { unrepresentable: 'any' })).filter(
      (field) => !told.has(field),
    )
    expect(missing).toEqual([])
  })

  it('docs/command-line.md tells every command, option and exit code', async () => {
    const page = await readFile(pagePath('docs/command-line.md'), 'utf8')
    const help = async (...args: string[]) => {
      let said = ''
      const add = (text: string) => void (said += text)
      await run([...args, '--help'], {
        out: add,
        err: add,
        width: 80,
        now: () => new Date(0),
        locale: 'en-GB',
      })
      return said
    }
    const commands = [...(await help()).matchAll(/^ {2}([a-z]+) .*\[options\]|^ {2}([a-z]+) \[/gm)].map(
      (match) => match[1] ?? match[2] ?? '',
    )
    expect(commands).toContain('example')
    for (const command of commands.filter((name) => name !== 'help')) {
      expect(page, command).toContain(`petalyard ${command}`)
      for (const [option] of (await help(command)).matchAll(/--[a-z]+/g))
        expect(page, `${command} ${option}`).toContain(option)
    }
    for (const code of Object.values(EXIT)) expect(page).toMatch(new RegExp(`^\\| ${code} +\\|`, 'm'))
  })
})

/** Names of all fields that a JSON Schema knows. */
function fieldsOf(schema: unknown): string[] {
  if (schema === null || typeof schema !== 'object') return []
  const own = 'properties' in schema ? Object.keys(schema.properties as object) : []
  return [...new Set([...own, ...Object.values(schema).flatMap(fieldsOf)])]
}
