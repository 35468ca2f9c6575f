/** What is shipped besides our own: every package that the builds can bundle, with its licence, from the lock file. */
import { readFileSync } from 'node:fs'
import { isAllowed } from './bundled.mjs'

export interface Shipped {
  readonly name: string
  readonly version: string
  readonly licence: string
}

interface LockEntry {
  readonly name?: string
  readonly version?: string
  readonly license?: string
  readonly dev?: boolean
}

/** Compilers and runtimes that leave code of theirs in what is built or packed, though they are there for development. */
const LEAVE_CODE = ['svelte', 'clsx', 'esm-env', 'electron', 'vite', 'rolldown']

/** Every package that is shipped, by name. */
export function shipped(): Shipped[] {
  const lock = JSON.parse(readFileSync(new URL('../package-lock.json', import.meta.url), 'utf8')) as {
    packages: Readonly<Record<string, LockEntry>>
  }
  return Object.entries(lock.packages)
    .flatMap(([path, { name, version = '', license = '', dev }]): Shipped[] => {
      const called = name ?? path.replace(/^.*node_modules\//, '')
      const isShipped = path !== '' && (!dev || LEAVE_CODE.includes(called))
      return isShipped ? [{ name: called, version, licence: license }] : []
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
}

/** Those whose licence is not among the ones that are allowed; of several that hold together each must be. */
export const notAllowed = (packages: readonly Shipped[]): Shipped[] =>
  packages.filter(({ licence }) => !isAllowed(licence))

/** The page that lists them. */
export const licencesPage = (): string =>
  [
    '# Licences',
    'Written by `npm run docs` from `package-lock.json`. Do not edit by hand.',
    'Petalyard is under the MIT licence. What is built holds parts of these packages. Those of which something really ' +
      'is in the window or behind it stand with the text of their licence under Help, “Licences…”, and beside an ' +
      'installed program in `LICENSES.packages.txt`; a build fails where one has no text or a licence that is not ' +
      'allowed. Electron brings the licences of Chromium in a file of its own, which the same window shows.',
    [
      '| package | version | licence |',
      '| --- | --- | --- |',
      ...shipped().map((one) => `| ${one.name} | ${one.version} | ${one.licence} |`),
    ].join('\n'),
  ].join('\n\n')
