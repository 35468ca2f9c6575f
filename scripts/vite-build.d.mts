import type { UserConfig } from 'vite'

/** The exports of one of the build descriptions, named from the root. */
export function configsOf(file: string): Promise<Record<string, UserConfig>>
export function buildInto(
  config: UserConfig,
  outDir: string,
  how: { emptyOutDir: boolean; logLevel?: 'warn' | 'silent' },
): Promise<void>
