export const SIZES: readonly number[]
export function iconPictures(of: 'app' | 'project'): Promise<Map<number, Buffer>>
export function icoOf(pictures: ReadonlyMap<number, Buffer>): Buffer
export function icnsOf(pictures: ReadonlyMap<number, Buffer>): Buffer
