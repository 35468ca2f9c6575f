/** What the project file is made of. Numbers are finite, and no more is asked of them here. */
import { z } from 'zod'

export const number = z.number()
export const text = z.string()
/** What others refer to something by. */
export const id = z.string().min(1)
