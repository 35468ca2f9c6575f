/** The shapes that requests of the page and its workers must have. */
import { z } from 'zod'
import { TEXT_LIMIT } from '../host/limits'

const uploadSchema = z.strictObject({ name: z.string().max(255), text: z.string().max(TEXT_LIMIT) })
export const questionSchema = z.strictObject({
  project: z.string().max(64),
  seat: z.string().max(64),
  payload: z.unknown(),
  upload: uploadSchema.optional(),
})
const jobSchema = z.number().int().positive()
export const exportSchema = questionSchema.omit({ upload: true }).extend({ job: jobSchema })
export const cancelSchema = z.strictObject({ project: z.string(), seat: z.string(), job: jobSchema })
export const memberSchema = z.strictObject({ project: z.string().max(64), seat: z.string().max(64) })
export const joinSchema = memberSchema.extend({ stream: z.string().max(64) })
