/**
 * What others wrote and we ship: packages of which something stands in what is built, each with its licence and the
 * text of it. The builds write the list beside what they made; a package without a text, or of a licence that is not
 * allowed, fails the build.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join, sep } from 'node:path'
import { root } from './fresh-build.mjs'

/** Licences that allow what is done with them here: to be used and shipped unchanged, with their texts. */
export const ALLOWED = new Set([
  ...['MIT', 'ISC', '0BSD', 'BSL-1.0', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', 'MPL-2.0', 'OFL-1.1'],
])

/** Of licences that hold together each must be allowed, of those to choose from one. */
export const isAllowed = (licence) =>
  licence
    .replace(/[()]/g, '')
    .split(' AND ')
    .every((one) => one.split(' OR ').some((choice) => ALLOWED.has(choice)))

/** Modules that bundlers add themselves, by how their names begin, and the package that they are from. */
const FROM_BUNDLERS = [
  ['\0vite/', 'vite'],
  ['\0rolldown/', 'rolldown'],
  ['\0@oxc-project+runtime', '@oxc-project/runtime'],
]

/** The folder of the package that a module is from; null for our own. */
export function packageFolderOf(id) {
  const bundler = FROM_BUNDLERS.find(([start]) => id.startsWith(start))
  if (bundler) return join(root, 'node_modules', bundler[1])
  const path = id.replace(/^\0/, '').replace(/\?.*$/, '').split(sep).join('/')
  const match = /^(.*node_modules\/)(@[^/]+\/[^/]+|[^@/][^/]*)\//.exec(path)
  return match ? join(root, match[1].replace(/^.*?(?=node_modules\/)/, ''), match[2]) : null
}

/** Notes in `found` the folders of packages that leave code or files in what is built. */
export function bundledPackages(found) {
  let others = []
  return {
    name: 'petalyard:bundled-packages',
    configResolved: ({ plugins }) => {
      others = plugins.map((plugin) => plugin.api?.bundled).filter(Boolean)
    },
    generateBundle: (_, bundle) => {
      for (const output of Object.values(bundle)) {
        const sources =
          output.type === 'chunk'
            ? Object.entries(output.modules).flatMap(([id, { renderedLength }]) =>
                renderedLength > 0 ? [id] : [],
              )
            : (output.originalFileNames ?? [])
        for (const id of sources) {
          const folder = packageFolderOf(id)
          if (folder) found.add(folder)
        }
      }
      for (const folders of others) for (const folder of folders) found.add(folder)
    },
  }
}

/** The folder of the package that a file of a package is from, by the name under which it is asked for. */
export const folderOfFile = (name) => packageFolderOf(createRequire(import.meta.url).resolve(name))

const TEXT = /^(licen[cs]e|copying|notice|ofl)([-._].*)?$/i

/** Each package with its licence and the text of it, by name; throws where one may not be shipped. */
export function licencesOf(folders) {
  const entries = [...folders].map((folder) => {
    const { name, version, license = '' } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
    if (!isAllowed(license))
      throw new Error(`${name} is under ${license || 'no licence that it tells'}, which is not allowed`)
    const text = readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile() && TEXT.test(entry.name) && !/\.(js|ts|json)$/.test(entry.name))
      .map((entry) => readFileSync(join(folder, entry.name), 'utf8').replace(/\r\n?/g, '\n').trim())
      .join('\n\n')
    return { name, version, licence: license, text: text || textOf(name) }
  })
  for (const { name, text } of entries) if (!text) throw new Error(`${name} brings no text of its licence`)
  return entries.sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
}

/** Texts of packages that bring none, as their authors publish them. */
function textOf(name) {
  const file = join(root, 'packing', 'licences', `${name.replace('/', '--')}.txt`)
  return existsSync(file) ? readFileSync(file, 'utf8').trim() : ''
}
