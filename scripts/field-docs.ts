/** Fields of the project in the docs: the table of their bounds, and what the JSON Schema says of them. */
import { FIELDS } from '../src-core/fields/all'
import type { Field } from '../src-core/fields/field'
import { TERM_WORDS } from '../src-core/stitches/terms'
import { writeNumber } from '../src-core/units/language'
import { USABLE } from '../src-core/units/usable'
import type { QuantityKind } from '../src-core/units/written'

/** What a number in the file counts. */
const UNITS: Readonly<Record<QuantityKind, string>> = {
  length: 'mm',
  span: 'mm',
  place: 'mm',
  mass: 'g',
  'yarn-length': 'm',
  count: 'whole number',
  number: 'number',
  percent: '%',
  degrees: 'degrees',
  minutes: 'minutes',
  money: 'currency',
}

const LAYOUTS = { blanket: 'blanket', garland: 'garland', applique: 'appliqué' } as const

const ownWords = (text: string): string =>
  text
    .replace(/ ?\(\{currency\}\)/g, '')
    .replace(/ ?\b(of|after) \{\w+\}/g, '')
    .replace(/\{(\w+)\}/g, (place, name: string) =>
      Object.hasOwn(TERM_WORDS, name) ? TERM_WORDS[name as keyof typeof TERM_WORDS].UK : place,
    )

/** What it means: "length of one ball", in the words of the docs. */
const meaning = ({ doc, label }: Field): string =>
  ownWords(doc ?? `${label.charAt(0).toLowerCase()}${label.slice(1)}`)

const told = (bound: number): string => writeNumber(bound, 3)

/** "10 to 1,000,000"; where anything that can be calculated with will do, "above 0" or "from 0 on". */
function bounds({ least, most }: Field): string {
  if (least === undefined || most === undefined) return 'any'
  if (most === USABLE.most) return least === 0 ? 'from 0 on' : 'above 0'
  return `${told(least)} to ${told(most)}`
}

const unitOf = ({ kind, shown }: Field): string => (kind === 'percent' && shown ? 'factor' : UNITS[kind])

/** The table of docs/project-file.md. */
export function fieldTable(): string {
  const rows = FIELDS.map(
    (field) =>
      `| \`${field.path}\` | ${meaning(field)}${field.layout ? ` (${LAYOUTS[field.layout]})` : ''} | ${unitOf(field)} | ${bounds(field)} | ${field.initial ?? ''} |`,
  )
  return [
    '| field | meaning | unit | bounds | when absent |',
    '| --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n')
}

interface Node {
  description?: string
  minimum?: number
  maximum?: number
  type?: unknown
  properties?: Record<string, Node>
  items?: Node
  additionalProperties?: Node | boolean
  anyOf?: Node[]
  oneOf?: Node[]
}

const KINDS = { blanket: 'arrangement', garland: 'cord', applique: 'panel' } as const

/** Every node of a schema that a path leads to; `layout` tells which of the layouts is meant. */
function nodesAt(node: Node, [part, ...rest]: readonly string[], layout: Field['layout']): Node[] {
  const ways = [node, ...(node.anyOf ?? []), ...(node.oneOf ?? [])]
  if (part === undefined) return ways.filter(({ type }) => type === 'number')
  const named = ways.flatMap(({ properties }) => properties?.[part.replace('[]', '')] ?? [])
  const inside = part.endsWith('[]')
    ? named.flatMap(({ items, additionalProperties }) => items ?? additionalProperties ?? [])
    : named
  return inside.flatMap((one) => {
    if (typeof one !== 'object') return []
    const own =
      part === 'layout' && layout
        ? one.oneOf?.filter(({ properties }) => KINDS[layout] in (properties ?? {}))
        : null
    return (own ?? [one]).flatMap((way) => nodesAt(way, rest, layout))
  })
}

/**
 * The schema with what each field means. Bounds stand in words; as minimum and maximum only where they hold in every
 * project: what an arrangement does not use may be anything.
 */
export function describeFields(schema: object): object {
  const described = structuredClone(schema) as Node
  for (const field of FIELDS) {
    const { path, least, most, layout, code, zeroIsNone } = field
    for (const node of nodesAt(described, path.split('.'), layout)) {
      node.description = `${meaning(field)}, ${unitOf(field)}: ${bounds(field)}`
      if (code || zeroIsNone) continue
      if (least !== undefined) node.minimum = least
      if (most !== undefined) node.maximum = most
    }
  }
  return described
}
