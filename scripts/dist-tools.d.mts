import type { FusesModule } from '../packing/fuses.mjs'
export function fusesModule(): FusesModule
