/** How electron-builder packs: the folder `dist/app` and nothing else, with an Electron whose fuses are set. */
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { setFuses } from './fuses.mjs'

export const APP_ID = 'app.petalyard'
/** Also the name of its entry in menus; the command line is `petalyard`, this opens the window. */
export const PROGRAM = 'petalyard-desktop'
export const MIME_TYPE = 'application/x-petalyard'

/** What an Electron brings that runs folders from its command line. */
const DEFAULT_APPS = ['default_app.asar', 'app']

/** `electron`: its version, and its folder where one is at hand; `fuses` is the module @electron/fuses. */
export function packingConfig({ electron, fuses }) {
  const resources = (out, isMac) =>
    isMac ? join(out, 'Electron.app', 'Contents', 'Resources') : join(out, 'resources')
  return {
    appId: APP_ID,
    productName: 'Petalyard',
    copyright: 'Petalyard and the authors of the packages in it',
    directories: { app: 'dist/app', output: 'dist', buildResources: 'dist/icons' },
    files: ['**/*'],
    asar: true,
    // What is staged is all: every library is bundled already, and no folder of modules is looked for.
    beforeBuild: () => false,
    publish: null,
    electronVersion: electron.version,
    ...(electron.folder ? { electronDist: electron.folder } : {}),
    extraResources: [{ from: 'dist/licences', to: '.' }],
    artifactName: 'petalyard-${version}-${os}-${arch}.${ext}',
    fileAssociations: [
      {
        ext: 'petalyard',
        name: 'Petalyard project',
        description: 'Petalyard project',
        mimeType: MIME_TYPE,
        icon: 'project',
        role: 'Editor',
      },
    ],
    // A current runtime of AppImage, which needs no FUSE 2 and keeps the sandbox.
    toolsets: { appimage: '1.0.3' },
    linux: {
      executableName: PROGRAM,
      syncDesktopName: true,
      icon: 'linux',
      category: 'Graphics;2DGraphics',
      target: ['AppImage'],
    },
    win: { icon: 'icon.ico', target: ['nsis', 'zip'] },
    nsis: { oneClick: false, perMachine: false, license: 'dist/licences/LICENSE.petalyard.txt' },
    mac: {
      icon: 'icon.icns',
      category: 'public.app-category.graphics-design',
      target: ['dmg', 'zip'],
    },
    afterExtract: ({ appOutDir, electronPlatformName }) => {
      const folder = resources(appOutDir, electronPlatformName === 'darwin')
      for (const name of DEFAULT_APPS) rmSync(join(folder, name), { recursive: true, force: true })
      rmSync(join(appOutDir, 'version'), { force: true })
    },
    // Last before it is signed.
    afterPack: async ({ appOutDir, electronPlatformName }) => {
      await setFuses(fuses, programIn(appOutDir, electronPlatformName))
    },
  }
}

/** The program in an unpacked folder. */
export function programIn(folder, platform) {
  if (platform === 'darwin') return join(folder, 'Petalyard.app', 'Contents', 'MacOS', 'Petalyard')
  return join(folder, platform === 'win32' ? 'Petalyard.exe' : PROGRAM)
}
