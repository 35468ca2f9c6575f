/** Names of the files that stand beside another for a moment while it is written. */
import { createHash, randomBytes } from 'node:crypto'
import { basename, dirname, join } from 'node:path'
import { shortenedTo } from './byte-length'

/**
 * Longest part of the target's name in them (bytes). File systems allow 255 for the whole; ours adds 19, and
 * write-file-atomic up to 11 more.
 */
const LONGEST_STEM = 200
const HASH_LENGTH = 8

/** ".STEM.<12 hex>.new" and ".old", and what write-file-atomic adds. */
const ASIDE = /^\.(.+)\.[0-9a-f]{12}\.(?:new|old)(?:\.\d+)?$/

/** What could not take its target's place, whole, so that a person was told where it is: never stale. */
const KEPT = /^\.(.+)\.[0-9a-f]{12}\.kept$/

/** A new path beside `target`: for what shall take its place, was kept from it, or copies what stands there. */
export function asidePath(target: string, ending: 'new' | 'old' | 'kept'): string {
  const name = `.${asideStem(basename(target))}.${randomBytes(6).toString('hex')}.${ending}`
  return join(dirname(target), name)
}

/** What such names have of the name of their target. */
export function asideStem(name: string): string {
  if (Buffer.byteLength(name) <= LONGEST_STEM) return name
  const hash = createHash('sha256').update(name).digest('hex').slice(0, HASH_LENGTH)
  return `${shortenedTo(name, LONGEST_STEM - HASH_LENGTH - 1)}-${hash}`
}

/** The stem of such a name; null for every other file, and for what was kept. */
export const stemOfAside = (name: string): string | null => ASIDE.exec(name)?.[1] ?? null

/** The same of what was kept. */
export const stemOfKept = (name: string): string | null => KEPT.exec(name)?.[1] ?? null
