/** The module @electron/fuses, which only who packs has. */
export type FusesModule = { readonly [name: string]: unknown }
export type Fuses = Readonly<Record<string, boolean>>
export const FUSES: Fuses
export const FUSE_FOR_STORIES: string
export function setFuses(fuses: FusesModule, program: string, changed?: Fuses): Promise<void>
export function readFuses(fuses: FusesModule, program: string): Promise<Fuses>
