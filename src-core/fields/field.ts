/**
 * A field of the project, declared once: what kind of quantity it is, within which bounds, what it is called and
 * where it is kept. The engine's findings, the window's fields, the schema and the docs all come from it.
 */
import type { Layout, Project } from '../../shared-types/project'
import { blanketOf, layoutKindOf } from '../plans/layouts'
import type { FindingCode } from '../findings/catalogue'
import type { QuantityKind } from '../units/written'

export interface Bounds {
  readonly least: number
  readonly most: number
}

/** Where fields are kept: a path into the file, `[]` for each list or list of names on the way; and in which layout. */
const HOMES = {
  project: { path: '' },
  blanket: { path: 'layout', layout: 'blanket' },
  garland: { path: 'layout', layout: 'garland' },
  part: { path: 'layout.items[]', layout: 'garland' },
  applique: { path: 'layout', layout: 'applique' },
  item: { path: 'layout.items[]', layout: 'applique' },
  kit: { path: 'layout.kit' },
  extra: { path: 'layout.kit.extras[]' },
  yarn: { path: 'yarns[]' },
  pack: { path: 'yarns[].packs[]' },
  motif: { path: 'motifs[]' },
  round: { path: 'motifs[].rounds[]' },
} as const satisfies Record<string, { path: string; layout?: Layout['kind'] }>

export type Home = keyof typeof HOMES

/** What a declaration says; texts may hold `{currency}`, words of the trade and names that the window knows. */
export interface FieldFacts extends Partial<Bounds> {
  readonly kind: QuantityKind
  /** At most four words. */
  readonly label: string
  /** What undo calls the change: "change the drop". */
  readonly change: string
  /** Said under the field: how to measure it, what it means. */
  readonly hint?: string
  /** What it means, for the docs; the hint or the label when left out. */
  readonly doc?: string
  /** The most that is told is out of reach itself: under 100 % is up to 99.99 %. */
  readonly under?: number
  /** May be left empty; this stands there then. */
  readonly optional?: boolean
  readonly placeholder?: string
  /** What holds when the file does not say, shown as if it were entered. */
  readonly initial?: number
  /** Shown as stored × times + plus: a radius as a width, a factor as a percentage. */
  readonly shown?: { readonly times: number; readonly plus?: number }
  /** 0 in a file is nothing given. */
  readonly zeroIsNone?: boolean
  /** The finding of the stage that reads it, in the layouts that use it; left out, it is checked in every project. */
  readonly code?: FindingCode
  /** What its finding calls it: "the span". */
  readonly what?: string
}

export interface Field extends FieldFacts {
  /** From the top of the file: `layout.items[].gap`. */
  readonly path: string
  readonly layout?: Layout['kind']
}

/** A field that is bounded on both sides. */
export type BoundedField = Field & Bounds

/** Declares a field of a home by its key there: `field('garland', 'cord.length', …)`. */
export function field<const Facts extends FieldFacts>(home: Home, key: string, facts: Facts): Facts & Field {
  const { path, ...only } = HOMES[home]
  return { ...facts, ...only, path: path ? `${path}.${key}` : key }
}

/** Which one of each list on a path: its place from 0, or its id or name. */
export type At = readonly (number | string)[]

type Step = { readonly key: string } | { readonly entry: number | string }
type Entries = Readonly<Record<string, unknown>>

const isObject = (node: unknown): node is Entries =>
  typeof node === 'object' && node !== null && !Array.isArray(node)

function stepsOf(path: string, at: At): Step[] {
  let lists = 0
  return path.split('.').flatMap((part): Step[] => {
    if (!part.endsWith('[]')) return [{ key: part }]
    return [{ key: part.slice(0, -2) }, { entry: at[lists++] ?? 0 }]
  })
}

/** Colours of a motif are known by their names, everything else by its id. */
const placeIn = (list: readonly unknown[], entry: number | string): number =>
  typeof entry === 'number'
    ? entry
    : list.findIndex((one) => isObject(one) && (one.id === entry || one.slot === entry))

function reach(node: unknown, step: Step): unknown {
  const key = 'key' in step ? step.key : Array.isArray(node) ? placeIn(node, step.entry) : step.entry
  return typeof node === 'object' && node !== null ? (node as Entries)[key] : undefined
}

function changed(node: unknown, [step, ...rest]: readonly Step[], value: number | undefined): unknown {
  if (step === undefined) return value
  if (Array.isArray(node)) {
    const place = 'entry' in step ? placeIn(node, step.entry) : -1
    return node.map((one: unknown, i) => (i === place ? changed(one, rest, value) : one))
  }
  const key = 'key' in step ? step.key : step.entry
  const before = isObject(node) ? node : {}
  const { [key]: old, ...others } = before
  const next = changed(old, rest, value)
  return next === undefined ? others : { ...before, [key]: next }
}

/** The project in which a field of this layout can be kept: one without a layout gets a blanket of its first motif. */
function housed(project: Project, { layout }: Field): Project | null {
  if (layout && layoutKindOf(project) !== layout) return null
  return layout && !project.layout ? { ...project, layout: blanketOf(project) ?? undefined } : project
}

/** What the project says; undefined where it says nothing. */
export function valueOf(project: Project, field: Field, at: At = []): number | undefined {
  const home = housed(project, field)
  const found = home && stepsOf(field.path, at).reduce<unknown>(reach, home)
  return typeof found === 'number' && !(field.zeroIsNone && found === 0) ? found : undefined
}

/** The project with another value of the field, or without it; a project that has no room for it stays as it is. */
export function withValue(project: Project, field: Field, value: number | undefined, at: At = []): Project {
  const home = housed(project, field)
  return home ? (changed(home, stepsOf(field.path, at), value) as Project) : project
}

/** A stored number as the field shows it, and what was typed as it is stored. */
export const shownAs = ({ shown }: Pick<Field, 'shown'>, stored: number): number =>
  shown ? stored * shown.times + (shown.plus ?? 0) : stored
export const storedAs = ({ shown }: Pick<Field, 'shown'>, typed: number): number =>
  shown ? (typed - (shown.plus ?? 0)) / shown.times : typed

/** Whether a number lies within the bounds that there are; what is counted is whole. */
export const isWithin = (
  value: number,
  { least = -Infinity, most = Infinity, kind }: Partial<Field>,
): boolean => value >= least && value <= most && (kind !== 'count' || Number.isInteger(value))

/** The bounds alone. */
export const boundsOf = <F extends Partial<Bounds>>({ least, most }: F): Pick<F, keyof F & keyof Bounds> =>
  ({ least, most }) as Pick<F, keyof F & keyof Bounds>

/** Every place of the file where a field stands, with the path to it. */
export function placesOf(project: Project, field: Field): { where: string; at: At; value: number }[] {
  if (field.layout && layoutKindOf(project) !== field.layout) return []
  const found: { where: string; at: At; value: number }[] = []
  const walk = (node: unknown, parts: readonly string[], where: string, at: At): void => {
    const [part, ...rest] = parts
    if (part === undefined) {
      if (typeof node === 'number' && !(field.zeroIsNone && node === 0))
        found.push({ where, at, value: node })
      return
    }
    const key = part.replace('[]', '')
    const next = isObject(node) ? node[key] : undefined
    const here = where ? `${where}.${key}` : key
    if (key === part) return walk(next, rest, here, at)
    if (Array.isArray(next)) next.forEach((one, i) => walk(one, rest, `${here}[${i}]`, [...at, i]))
    else if (isObject(next))
      for (const [name, one] of Object.entries(next)) walk(one, rest, `${here}.${name}`, [...at, name])
  }
  walk(project, field.path.split('.'), '', [])
  return found
}
