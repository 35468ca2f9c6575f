/**
 * Which joined motifs of a blanket would be joined otherwise by an edit: to other motifs, by other petals or in another
 * way. What is joined by hand stays so until somebody undoes it.
 */
import type { BlanketLayout, Project } from '../../shared-types/project'
import type { Anchor } from '../../shared-types/plan'
import { singlePairs } from '../joins/single-pairs'
import { groundOf } from '../layout/ground'
import { join, placedAccounts } from '../layout/stages'
import { layBlanket } from '../layout/blanket'
import { tidyAddress } from '../layout/addresses'
import { blanketOf } from '../plans/layouts'
import { settled } from '../settled'
import { PROGRESS } from './constants'
import { joinedOf } from './mark'

/** Two motifs joined at a place of each. */
interface Joint {
  readonly ids: readonly [string, string]
  readonly anchors: readonly [number, number]
  /** By which rule, over how many chains, or sewn how. */
  readonly way: string
}

/** A motif as far as its joins. */
interface Jointed {
  /** A round one looks the same however it is turned. */
  readonly isRound: boolean
  readonly anchors: readonly Anchor[]
  /** Partner and own place of each of its joints. */
  readonly joints: (readonly [string, number])[]
}

interface Joints {
  readonly motifs: ReadonlyMap<string, Jointed>
  readonly all: readonly Joint[]
}

/** What of a layout changes no joins of the motifs that stay. */
const HARMLESS: ReadonlySet<string> = new Set([
  ...['columns', 'rows', 'target', 'edging', 'fillers', 'halves', 'outlineShape', 'blocking', 'kit'],
] satisfies (keyof BlanketLayout | 'blocking' | 'kit')[])
/** What of a blanket's cells only colours it. */
export const COLOURS: ReadonlySet<string> = new Set(['fill', 'painted', 'held', 'kept'])

type Fields = Readonly<Record<string, unknown>>

/** Whether two objects differ in anything but some of their fields. */
export function differs(
  one: object | undefined,
  other: object | undefined,
  but: ReadonlySet<string>,
): boolean {
  const [a, b] = [(one ?? {}) as Fields, (other ?? {}) as Fields]
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].some(
    (name) => !but.has(name) && a[name] !== b[name],
  )
}

/** Whether an edit touches anything that joins follow from. */
function canRejoin(before: Project, after: Project): boolean {
  if (before.joining !== after.joining || before.motifs !== after.motifs) return true
  const [was, is] = [blanketOf(before), blanketOf(after)]
  if (!was || !is || was === is) return false
  // Once round, another number of columns has another end.
  if (is.inTheRound && was.columns !== is.columns) return true
  return differs(was, is, new Set([...HARMLESS, 'cells'])) || differs(was.cells, is.cells, COLOURS)
}

/** Addresses, before an edit, of joined motifs that it would join otherwise; `move` says where they are after it. */
export function rejoinedBy(
  before: Project,
  after: Project,
  move: (address: string) => string | null,
): ReadonlySet<string> {
  const none = new Set<string>()
  const joined = new Set(Object.keys(joinedOf(before)).map(tidyAddress))
  if (joined.size < 2 || !blanketOf(before) || !blanketOf(after) || !canRejoin(before, after)) return none
  const places = new Map([...joined].flatMap((id) => [[id, move(id) ?? '']]))
  const back = new Map([...places].map(([id, now]) => [now, id]))
  const was = jointsOf(before, (id) => (joined.has(id) ? id : null))
  const is = jointsOf(after, (id) => back.get(id) ?? null)
  if (!was || !is) return none
  const found = new Set<string>()
  const shifts = new Map<string, number | null>()
  for (const [id, motif] of was.motifs) {
    const now = is.motifs.get(id)
    if (now)
      shifts.set(
        id,
        shiftOf(motif, now, (partner) => is.motifs.has(partner)),
      )
  }
  /** A joint as it should be found again, each motif turned as it is. */
  const nameOf = ({ ids, anchors, way }: Joint, isBefore: boolean): string => {
    const ends = ids.map((id, at) => {
      const motif = was.motifs.get(id)!
      const shift = isBefore ? (shifts.get(id) ?? null) : 0
      // What no turn brings back is found nowhere.
      if (shift === null) return `${id}@`
      return motif.isRound ? id : `${id}@${(anchors[at]! + shift) % motif.anchors.length}`
    })
    return `${ends.sort().join(' ')} ${way}`
  }
  const stays = ({ ids }: Joint): boolean => ids.every((id) => was.motifs.has(id) && is.motifs.has(id))
  const [old, now] = [was, is].map(({ all }) => all.filter(stays))
  const names = [
    new Set(old!.map((each) => nameOf(each, true))),
    new Set(now!.map((each) => nameOf(each, false))),
  ]
  const add = ({ ids }: Joint) => ids.forEach((id) => found.add(id))
  for (const joint of old!) if (!names[1]!.has(nameOf(joint, true))) add(joint)
  for (const joint of now!) if (!names[0]!.has(nameOf(joint, false))) add(joint)
  return found
}

/** By how many places a motif is turned so that its joints with those that stay are the same; null where no turn does it. */
function shiftOf(was: Jointed, is: Jointed, stays: (partner: string) => boolean): number | null {
  const joints = was.joints.filter(([partner]) => stays(partner))
  const count = was.anchors.length
  if (was.isRound && is.isRound) return isSameRound(joints, was, is) ? 0 : null
  if (was.isRound !== is.isRound || count !== is.anchors.length) return null
  const there = new Set(is.joints.map(([partner, anchor]) => `${partner}@${anchor}`))
  for (let shift = 0; shift < count; shift++) {
    const fits = joints.every(([partner, anchor]) => {
      const now = (anchor + shift) % count
      return there.has(`${partner}@${now}`) && was.anchors[anchor]?.kind === is.anchors[now]?.kind
    })
    if (fits) return shift
  }
  return null
}

/** Whether a round motif is joined to the same ones as far apart along its rim, however it is turned. */
function isSameRound(joints: Jointed['joints'], was: Jointed, is: Jointed): boolean {
  const angleOf = ({ anchors }: Jointed, anchor: number): number => {
    const { x, y } = anchors[anchor]!
    return (Math.atan2(y, x) * 180) / Math.PI
  }
  const now = new Map(is.joints)
  const turns = joints.map(([partner, anchor]) => {
    const place = now.get(partner)
    return place === undefined ? NaN : angleOf(is, place) - angleOf(was, anchor)
  })
  // Once round is no turn at all.
  const apart = (turn: number): number => Math.abs(((turn - turns[0]! + 540) % 360) - 180)
  return turns.every((turn) => apart(turn) <= PROGRESS.sameJoint)
}

/** The joints between the motifs that `named` gives a name. */
function jointsOf(project: Project, named: (address: string) => string | null): Joints | null {
  const parts = groundOf(project)
  if (!parts) return null
  const { accounts, cells, grid, counts, rules, cut, gauge, hand } = parts
  const { joining } = settled(project)
  const laid = layBlanket(grid, counts, cells, cut.test)
  const placed = placedAccounts(accounts, grid, hand, ...(cells.blocks.size > 0 ? [cells] : []))
  const joined = join(placed, gauge, rules, joining, laid, counts)
  const { ruleOf } = singlePairs(joining, placed, rules, gauge, laid)
  const ids = laid.placements.map(({ id }) => named(id))
  const motifs = new Map<string, Jointed>()
  laid.placements.forEach(({ kind }, i) => {
    const id = ids[i]
    const isRound = placed[kind]!.shape === 'round'
    if (id) motifs.set(id, { isRound, anchors: joined.anchors[kind]!, joints: [] })
  })
  const all: Joint[] = []
  if (rules.main.rule === 'apart') return { motifs, all }
  for (const { members } of joined.nodes) {
    members.forEach((one, at) => {
      for (const other of members.slice(at + 1)) {
        const [a, b] = [ids[one.motif], ids[other.motif]]
        if (!a || !b || a === b) continue
        const [first, second] = [laid.placements[one.motif]!, laid.placements[other.motif]!]
        const rule = ruleOf(one.motif, other.motif) ?? rules.of(first.kind, second.kind)
        const way = `${rule.rule} ${rule.chains} ${rule.rule === 'seam' ? (joining.seam ?? '') : ''}`
        all.push({ ids: [a, b], anchors: [one.anchor, other.anchor], way })
        motifs.get(a)!.joints.push([b, one.anchor])
        motifs.get(b)!.joints.push([a, other.anchor])
      }
    })
  }
  return { motifs, all }
}
