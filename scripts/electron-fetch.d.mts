export const PATIENCE_MS: number
export function fetchElectron(
  tell: (line: string) => void,
  how?: { readonly patience?: number; readonly installer?: string },
): Promise<string | null>
