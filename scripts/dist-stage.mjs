/** What is put into a package, laid out in `dist`: the program's own files, icons, licences. */
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { dist } from './dist-program.mjs'
import { root } from './fresh-build.mjs'
import { icnsOf, icoOf, iconPictures } from './icons.mjs'

/** Of what is built, the loopback server and what helps to find mistakes stay out. */
const LEFT_OUT = /^(browser\.cjs|client\.js|stream\.js|enter\.js|\.built-from)$|\.map$/

/** dist/app: what goes into the archive. */
export async function stageApp() {
  const app = join(dist, 'app')
  rmSync(app, { recursive: true, force: true })
  for (const part of ['main', 'renderer'])
    cpSync(join(root, 'out', part), join(app, 'out', part), {
      recursive: true,
      filter: (path) => !LEFT_OUT.test(basename(path)),
    })
  const { name, productName, version, description, license, main } = manifest()
  const own = { name, productName, version, description, license, main, author: 'Petalyard' }
  writeFileSync(
    join(app, 'package.json'),
    JSON.stringify({ ...own, desktopName: 'petalyard.desktop' }, null, 2),
  )
  writeFileSync(join(app, 'out', 'renderer', 'icon.png'), (await iconPictures('app')).get(256))
}

/** dist/icons: every form of the two icons; returns the pictures by size. */
export async function stageIcons() {
  const folder = join(dist, 'icons')
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(join(folder, 'linux'), { recursive: true })
  const pictures = { app: await iconPictures('app'), project: await iconPictures('project') }
  for (const [of, name] of [
    ['app', 'icon'],
    ['project', 'project'],
  ]) {
    writeFileSync(join(folder, `${name}.ico`), icoOf(pictures[of]))
    writeFileSync(join(folder, `${name}.icns`), icnsOf(pictures[of]))
    writeFileSync(join(folder, `${name}.png`), pictures[of].get(1024))
  }
  for (const [size, png] of pictures.app) writeFileSync(join(folder, 'linux', `${size}x${size}.png`), png)
  return pictures
}

/** dist/licences: texts that stand beside the program, to be read without it. */
export function stageLicences() {
  const folder = join(dist, 'licences')
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  cpSync(join(root, 'LICENSE'), join(folder, 'LICENSE.petalyard.txt'))
  const listed = new Map(
    ['main', 'renderer']
      .flatMap((part) => JSON.parse(readFileSync(join(root, 'out', part, 'licences.json'), 'utf8')))
      .map((entry) => [entry.name, entry]),
  )
  const texts = [...listed.values()]
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map(({ name, version, licence, text }) => `${name} ${version}: ${licence}\n\n${text}\n`)
  writeFileSync(join(folder, 'LICENSES.packages.txt'), texts.join(`\n${'-'.repeat(78)}\n\n`))
}

export const manifest = () => JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
