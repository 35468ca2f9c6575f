/** What is shipped besides our own: every package that the builds can bundle, with its licence, from the lock file. */
import { readFileSync } from 'node:fs'

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
const LEAVE_CODE = ['svelte', 'clsx', 'esm-env', 'electron']

/** Licences that allow what is done with them here: to be used and shipped unchanged, with their texts. */
export const ALLOWED = new Set([
  ...['MIT', 'ISC', '0BSD', 'BSL-1.0', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', 'MPL-2.0', 'OFL-1.1'],
])

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
  packages.filter(({ licence }) => licence.split(' AND ').some((one) => !ALLOWED.has(one)))

/** The page that lists them. */
export const licencesPage = (): string =>
  [
    '# Licences',
    'Written by `npm run docs` from `package-lock.json`. Do not edit by hand.',
    'Petalyard is under the MIT licence. What is built holds parts of these packages; the text of each licence ' +
      'stands in the folder of its package under `node_modules`. Electron brings the licences of Chromium in a ' +
      'file of its own.',
    [
      '| package | version | licence |',
      '| --- | --- | --- |',
      ...shipped().map((one) => `| ${one.name} | ${one.version} | ${one.licence} |`),
    ].join('\n'),
  ].join('\n\n')
