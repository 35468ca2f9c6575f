export const dist: string
export function unpackedFolder(): string
export function packedProgram(): string
export function notePacked(): void
export function whyNotPacked(): string | null
export function linkTree(from: string, to: string): void
export function copyPacked(to: string): string
