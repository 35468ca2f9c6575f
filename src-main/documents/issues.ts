/**
 * What is wrong with a document, by a schema of zod and in its words and order, but no more of it than is asked for:
 * zod itself notes every wrong value, and a file of millions of them would keep the program busy for minutes. Fields
 * that a schema does not name are not looked at, so that they cost nothing.
 */
import type { z } from 'zod'

export type Issue = z.core.$ZodIssue

/** The first `most` issues of a document, with their paths. */
export function issuesOf(schema: z.core.$ZodType, document: unknown, most: number): readonly Issue[] {
  const found: Issue[] = []
  look(schema, document, [], found, most)
  return found
}

/** Notes what is wrong with one value, until there are `most`. `path` leads to it; it is lengthened and shortened on the way. */
function look(
  schema: z.core.$ZodType,
  value: unknown,
  path: PropertyKey[],
  found: Issue[],
  most: number,
): void {
  const { def } = (schema as z.core.$ZodTypes)._zod
  const below = (inner: z.core.$ZodType, item: unknown, key: PropertyKey) => {
    // Most fields are left out.
    if (item === undefined && inner._zod.def.type === 'optional') return
    path.push(key)
    look(inner, item, path, found, most)
    path.pop()
  }
  switch (def.type) {
    case 'optional':
      if (value !== undefined) look(def.innerType, value, path, found, most)
      return
    case 'nullable':
      if (value !== null) look(def.innerType, value, path, found, most)
      return
    case 'array':
      if (!Array.isArray(value) || hasChecks(def)) break
      for (let at = 0; at < value.length && found.length < most; at++) below(def.element, value[at], at)
      return
    case 'object':
      // Only groups that may have other fields as well are looked at one by one.
      if (!isGroup(value) || hasChecks(def) || def.catchall?._zod.def.type !== 'unknown') break
      for (const key in def.shape) if (found.length < most) below(def.shape[key]!, value[key], key)
      return
    case 'record':
      if (!isGroup(value) || hasChecks(def) || !isAnyText(def.keyType)) break
      for (const key of Object.keys(value)) {
        if (found.length >= most) return
        // As zod does: nothing of ours stands under this name.
        if (key !== '__proto__') below(def.valueType, value[key], key)
      }
      return
    case 'union': {
      if ('discriminator' in def) {
        const option = optionFor(def as z.core.$ZodDiscriminatedUnionDef, value)
        if (!option) break
        return look(option, value, path, found, most)
      }
      const errors: Issue[][] = []
      for (const option of def.options) {
        const wrong: Issue[] = []
        look(option, value, [], wrong, most)
        if (wrong.length === 0) return
        errors.push(wrong)
      }
      found.push({ code: 'invalid_union', errors, path: [...path], message: '' })
      return
    }
    case 'string':
      if (typeof value === 'string' && !hasChecks(def)) return
      break
    case 'number':
      if (Number.isFinite(value) && !hasChecks(def)) return
      break
  }
  const result = safeParse(schema, value)
  for (const issue of result)
    if (found.length < most) found.push({ ...issue, path: [...path, ...issue.path] })
}

const safeParse = (schema: z.core.$ZodType, value: unknown): readonly Issue[] =>
  (schema as z.ZodType).safeParse(value).error?.issues ?? []

const hasChecks = (def: z.core.$ZodTypeDef): boolean => (def.checks?.length ?? 0) > 0

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  value !== null && typeof value === 'object' && !Array.isArray(value)

const isAnyText = (schema: z.core.$ZodType): boolean =>
  schema._zod.def.type === 'string' && !hasChecks(schema._zod.def)

/** Which of several groups a value is meant to be, by the field that tells them apart. */
const optionFor = (
  { options, discriminator }: z.core.$ZodDiscriminatedUnionDef,
  value: unknown,
): z.core.$ZodType | undefined =>
  isGroup(value)
    ? options.find((option) =>
        option._zod.propValues?.[discriminator]?.has(value[discriminator] as z.core.util.Primitive),
      )
    : undefined
