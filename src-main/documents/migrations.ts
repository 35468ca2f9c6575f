/**
 * Older files become current ones here, one small step per version. A step gets the document as JSON and
 * returns a new one; it must keep fields that it does not know. Add steps at the end and never change one:
 * `tests/src-main/documents/migrations.test.ts` demands that every one was exercised.
 */
import { PROJECT_VERSION } from '../../shared-types/project'

export type JsonObject = Readonly<Record<string, unknown>>

export interface Migration {
  /** The version that the step leads to, from 2, without a gap. */
  readonly to: number
  /** What it does, in a few words, for people who look into a failed opening. */
  readonly name: string
  readonly change: (document: JsonObject) => JsonObject
}

/** Version 1 is the first, so there is nothing to change yet. */
export const MIGRATIONS: readonly Migration[] = []

export interface MigrationSet {
  readonly migrations: readonly Migration[]
  readonly current: number
}

export const CURRENT_MIGRATIONS: MigrationSet = { migrations: MIGRATIONS, current: PROJECT_VERSION }

/** Throws where the list does not lead from version 1 to the current one without a gap: a bug of ours. */
export function checkMigrations({ migrations, current }: MigrationSet): void {
  const expected = Array.from({ length: current - 1 }, (_, index) => index + 2)
  const found = migrations.map((migration) => migration.to)
  if (expected.join() !== found.join())
    throw new Error(`migrations lead to versions [${found.join()}], expected [${expected.join()}]`)
}

/** The document of version `from` as one of the current version. Throws what a step throws. */
export function migrate(
  document: JsonObject,
  from: number,
  set: MigrationSet = CURRENT_MIGRATIONS,
): JsonObject {
  checkMigrations(set)
  return set.migrations
    .filter((migration) => migration.to > from)
    .reduce<JsonObject>(
      (previous, migration) => ({ ...migration.change(previous), version: migration.to }),
      document,
    )
}
