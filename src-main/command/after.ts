/** `--after`: what the round before the text left, as JSON. */
import { InvalidArgumentError } from 'commander'
import { z } from 'zod'
import type { After } from '../../src-core/notation/read'

/** More than any round has; keeps a slip of the pen from filling the memory. */
const MOST = 20_000

const count = z.int().min(0).max(MOST)
const spaces = z.record(z.string().regex(/^(ch-\d+|\d+-ch)$/), count)

const afterSchema = z.looseObject({
  stitches: count.optional(),
  spaces: spaces.optional(),
  ring: count.optional(),
  chain: count.optional(),
  start: z.boolean().optional(),
  from: z
    .looseObject({
      round: count,
      stitches: count.optional(),
      spaces: spaces.optional(),
      gaps: count.optional(),
      used: z.string().optional(),
    })
    .optional(),
  colours: z.array(z.string()).optional(),
  rounds: z.string().optional(),
})

const KNOWN = ['stitches', 'spaces', 'ring', 'chain', 'start', 'from', 'colours', 'rounds']
const EXAMPLE = '\'{"stitches": 12, "spaces": {"ch-3": 4}}\''

/** What is known of the rounds before; `rounds`: their text, read in front of what is asked for. */
export type AfterOption = After & { readonly rounds?: string }

/** Reads the option; what cannot be right ends the command as wrong use. */
export function readAfterOption(text: string): AfterOption {
  let document: unknown
  try {
    document = JSON.parse(text)
  } catch {
    throw new InvalidArgumentError(`JSON is expected, such as ${EXAMPLE}.`)
  }
  const result = afterSchema.safeParse(document)
  if (!result.success) {
    const [issue] = result.error.issues
    const at = issue?.path.join('.') ?? ''
    throw new InvalidArgumentError(`${at === '' ? 'it' : at} cannot be read; write it like ${EXAMPLE}.`)
  }
  const keys = Object.keys(result.data)
  if (!keys.some((key) => KNOWN.includes(key)))
    throw new InvalidArgumentError(`one of ${KNOWN.join(', ')} is expected, such as ${EXAMPLE}.`)
  return result.data
}
