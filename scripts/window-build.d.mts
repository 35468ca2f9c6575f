export function buildWindow(): Promise<boolean>
export function buildDesktop(): Promise<boolean>
