/**
 * A Debian package out of the unpacked program, by Debian's own `dpkg-deb`. It needs no script of its own when it is
 * installed or removed: menus, file types and icons are noticed by the triggers of Debian's packages for them.
 */
import { execFileSync } from 'node:child_process'
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { PROGRAM } from '../packing/electron-builder.mjs'
import { manifest } from './dist-stage.mjs'
import { dist, linkTree } from './dist-program.mjs'
import { root } from './fresh-build.mjs'

const HOME = 'opt/petalyard'
/** What Electron's program is linked with, under the names before and since Debian's change of its time stamps. */
const DEPENDS = [
  ...['libgtk-3-0t64 | libgtk-3-0', 'libnss3', 'libasound2t64 | libasound2', 'libgbm1', 'libdrm2'],
  ...['libatk-bridge2.0-0t64 | libatk-bridge2.0-0', 'libcups2t64 | libcups2', 'libxkbcommon0'],
  ...['libxcomposite1', 'libxdamage1', 'libxfixes3', 'libxrandr2', 'libexpat1'],
]
/** Those whose triggers notice the new file type, menu entry and icons. */
const RECOMMENDS = ['shared-mime-info', 'desktop-file-utils', 'hicolor-icon-theme', 'xdg-utils']
const ARCHITECTURES = { x64: 'amd64', arm64: 'arm64', arm: 'armhf' }

/** Null where a package can be made here, else why not. */
export function whyNoDeb() {
  try {
    execFileSync('dpkg-deb', ['--version'], { stdio: 'ignore' })
    return null
  } catch {
    return 'there is no dpkg-deb'
  }
}

/** Packs `unpacked`; returns the path of the package. */
export function makeDeb(unpacked, pictures) {
  const tree = join(dist, 'deb')
  rmSync(tree, { recursive: true, force: true })
  const put = (path, content) => {
    mkdirSync(join(tree, path, '..'), { recursive: true })
    writeFileSync(join(tree, path), content)
  }
  linkTree(unpacked, join(tree, HOME))
  // Chromium's own helper, for systems where nobody but root may make the name spaces of its sandbox.
  const helper = join(tree, HOME, 'chrome-sandbox')
  rmSync(helper)
  copyFileSync(join(unpacked, 'chrome-sandbox'), helper)
  chmodSync(helper, 0o4755)
  mkdirSync(join(tree, 'usr/bin'), { recursive: true })
  symlinkSync(`/${HOME}/${PROGRAM}`, join(tree, 'usr/bin', PROGRAM))
  for (const [from, to] of [
    ['petalyard.desktop', 'usr/share/applications/petalyard.desktop'],
    ['petalyard.xml', 'usr/share/mime/packages/petalyard.xml'],
  ]) {
    mkdirSync(join(tree, to, '..'), { recursive: true })
    copyFileSync(join(root, 'packing/linux', from), join(tree, to))
  }
  for (const [size, png] of pictures.app)
    put(`usr/share/icons/hicolor/${size}x${size}/apps/petalyard.png`, png)
  for (const [size, png] of pictures.project)
    put(`usr/share/icons/hicolor/${size}x${size}/mimetypes/application-x-petalyard.png`, png)
  copyFileSync(
    join(root, 'packing/icons/petalyard.svg'),
    made(tree, 'usr/share/icons/hicolor/scalable/apps/petalyard.svg'),
  )
  copyFileSync(join(root, 'LICENSE'), made(tree, 'usr/share/doc/petalyard/copyright'))

  const { version, description } = manifest()
  const architecture = ARCHITECTURES[process.arch] ?? process.arch
  put(
    'DEBIAN/control',
    [
      'Package: petalyard',
      `Version: ${version.replace('-', '~')}`,
      `Architecture: ${architecture}`,
      'Maintainer: Petalyard <petalyard@petalyard.invalid>',
      `Installed-Size: ${Math.ceil(sizeOf(tree) / 1024)}`,
      `Depends: ${DEPENDS.join(', ')}`,
      `Recommends: ${RECOMMENDS.join(', ')}`,
      'Section: graphics',
      'Priority: optional',
      'Description: planner for what comes after the crocheted motif',
      ` ${description}`,
      '',
    ].join('\n'),
  )
  openToAll(tree)
  const file = join(dist, `petalyard_${version.replace('-', '~')}_${architecture}.deb`)
  execFileSync('dpkg-deb', ['--root-owner-group', '-Zzstd', '-z9', '--build', tree, file], {
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  rmSync(tree, { recursive: true, force: true })
  return file
}

function made(tree, path) {
  mkdirSync(join(tree, path, '..'), { recursive: true })
  return join(tree, path)
}

/** Everybody may read what is installed, whatever the mask of who packs. */
function openToAll(path) {
  const facts = statSync(path)
  if (facts.isDirectory()) {
    chmodSync(path, 0o755)
    for (const entry of readdirSync(path, { withFileTypes: true }))
      if (!entry.isSymbolicLink()) openToAll(join(path, entry.name))
  } else if ((facts.mode & 0o4000) === 0) chmodSync(path, facts.mode & 0o100 ? 0o755 : 0o644)
}

/** Bytes of all files in a folder. */
export function sizeOf(folder) {
  let bytes = 0
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true }))
    if (entry.isFile()) bytes += statSync(join(entry.parentPath ?? entry.path, entry.name)).size
  return bytes
}
