/** The pages for people hold together: every link leads somewhere, every picture is shown and small. */
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../../', import.meta.url))
const PICTURES = 'docs/pictures'
/** Bytes of a picture that a page may ask its reader to fetch. */
const MOST_BYTES = 150_000

const pages = [
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  ...readdirSync(join(root, 'docs'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.md'))
    .map((path) => `docs/${path.replaceAll('\\', '/')}`),
]

const withoutCode = (text: string): string => text.replace(/^```[\s\S]*?^```/gm, '').replace(/`[^`\n]*`/g, '')
const sourceOf = (page: string): string => readFileSync(join(root, page), 'utf8')

/** How a heading is addressed: in lower case, with hyphens, without marks. */
const anchorOf = (heading: string): string =>
  heading
    .replace(/[`*_]|\]\([^)]*\)|\[/g, '')
    .trim()
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s-]/gu, '')
    .replace(/\s/g, '-')

const anchorsOf = (page: string): Set<string> =>
  new Set([...sourceOf(page).matchAll(/^#{1,6} (.*)$/gm)].map(([, heading = '']) => anchorOf(heading)))

/** The links of a page that stay in the project, each as a path from its root and an anchor. */
const linksOf = (page: string) =>
  [...withoutCode(sourceOf(page)).matchAll(/\]\(([^)\s]+)\)/g)]
    .map(([, target = '']) => target)
    .filter((target) => !/^[a-z]+:/.test(target))
    .map((target) => {
      const [path = '', anchor] = target.split('#')
      return { target, path: path ? normalize(join(dirname(page), path)) : page, anchor }
    })

const isThere = (path: string): boolean => statSync(join(root, path), { throwIfNoEntry: false }) !== undefined

describe('pages', () => {
  it.each(pages)('%s links to what is there', (page) => {
    const broken = linksOf(page).filter(
      ({ path, anchor }) =>
        !isThere(path) ||
        (anchor !== undefined && path.endsWith('.md') && !anchorsOf(path).has(decodeURIComponent(anchor))),
    )
    expect(broken.map(({ target }) => target)).toEqual([])
  })

  it('show every picture that is kept, and each is small', () => {
    const shown = new Set(pages.flatMap((page) => linksOf(page).map(({ path }) => path)))
    const kept = readdirSync(join(root, PICTURES)).map((name) => `${PICTURES}/${name}`)
    expect(kept.length).toBeGreaterThan(3)
    expect(kept.filter((path) => !shown.has(path))).toEqual([])
    expect(kept.filter((path) => statSync(join(root, path)).size > MOST_BYTES)).toEqual([])
  })

  it('can all be reached from the README', () => {
    const reached = new Set(['README.md'])
    for (const page of reached)
      for (const { path } of linksOf(page)) if (pages.includes(path)) reached.add(path)
    const decisions = /^docs\/decisions\//
    expect(pages.filter((page) => !reached.has(page) && !decisions.test(page))).toEqual([])
  })
})
