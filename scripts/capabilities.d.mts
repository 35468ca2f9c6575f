export function findElectron(): string | null
export function findChromium(): string | null
export const hasDisplay: () => boolean
export const findVirtualDisplay: () => string | null
export function missingCapabilities(): Record<'desktop' | 'package' | 'browser' | 'pdf', string | null>
