/**
 * Follows the words of an order of work with a hook of numbers: keeps what is joined to what, finds each place by what
 * is said of it, and tells which places of which motifs are joined then. Knows where motifs lie (the map shows it),
 * which petal of each is the first (the drawings show it), and nothing of how the words were made.
 */
import type { Anchor, MotifAccount, Plan, Point } from '../../../../shared-types/plan'
import { accountAt, placedPieces } from '../../../../src-core/layout/placed'
import type { PlacedPiece } from '../../../../src-core/layout/placed'
import type { ReadBox, ReadOrder } from './read-order'

/**
 * A join as it was followed: the place of the motif worked on, the motif that was there first, and its place. Where the
 * clock tells of a place between two, it may be either of them.
 */
export interface FollowedJoin {
  readonly anchors: readonly string[]
  readonly host: string
  /** None where a seam says no more than whom it meets. */
  readonly places: readonly string[]
}

interface Made {
  readonly anchor: Anchor
  readonly label: string
}

/** Where a motif of the map lies seen from another, by what is said of it, as parts of a pitch. */
function wanted(where: string): { across: number; down: number; further: number } {
  const sign = /left/.test(where) ? -1 : /right/.test(where) ? 1 : 0
  const further = Number(/(\d+)(?:nd|rd|th) on the/.exec(where)?.[1] ?? 1) - 1
  const rows = Number(/(\d+) rows/.exec(where)?.[1] ?? 1)
  const down = /upper|above|up/.test(where) ? -rows : /lower|below|down/.test(where) ? rows : 0
  return { across: sign, down, further }
}

export class Follower {
  private readonly byLabel: ReadonlyMap<string, PlacedPiece>
  private readonly made = new Map<string, Made[]>()
  /** Who is joined at a place of a motif that was there first, beginning with that one. */
  private readonly spaces = new Map<string, { readonly piece: PlacedPiece; readonly anchor: Anchor }[]>()

  constructor(
    private readonly plan: Plan,
    private readonly order: ReadOrder,
  ) {
    this.byLabel = new Map(placedPieces(plan).map((piece) => [piece.label, piece]))
  }

  /** Where nothing is told of a motif: those before it with which it shares a side, as the map shows them. */
  beside(label: string, before: readonly string[]): string[] {
    const cornersOf = (piece: PlacedPiece): Point[] =>
      this.account(piece)
        .anchors.filter(({ kind }) => kind === 'corner')
        .map((anchor) => this.at(piece, anchor))
        // A half has the corners on its side of the cut, and those on it.
        .filter(
          ({ x }) => piece.side === undefined || (piece.side === 'left' ? x > piece.x - 1 : x < piece.x + 1),
        )
    const own = cornersOf(this.piece(label))
    return before
      .map((each) => this.piece(each))
      .filter((other) => {
        const theirs = cornersOf(other)
        return own.filter((a) => theirs.some((b) => Math.hypot(a.x - b.x, a.y - b.y) < 1)).length > 1
      })
      .map(({ id }) => id)
  }

  /** The words of a box with the numbers of this motif's own neighbours. */
  wordsOf(box: ReadBox): string {
    if (box.way === null) return box.words
    const way = this.order.ways.get(box.way)
    if (!way) throw new Error(`there is no way ${box.way}`)
    const own = this.piece(box.label)
    const numbers = new Map(
      [...way.neighbours].map(([letter, where]) => [letter, this.neighbour(own, where)]),
    )
    return way.words.replace(/\b([A-Z])\1?\b/g, (letter) => {
      const label = numbers.get(letter)
      if (label === undefined) throw new Error(`way ${box.way} does not say who ${letter} is`)
      return label
    })
  }

  private piece(label: string): PlacedPiece {
    const piece = this.byLabel.get(label)
    if (!piece) throw new Error(`there is no ${label}`)
    return piece
  }

  /** The one motif of the map that lies where it is said. */
  private neighbour(own: PlacedPiece, where: string): string {
    const { pitch, round } = this.plan
    const { across, down, further } = wanted(where)
    const beyond = where.includes('dashed line')
    const once = round?.circumference ?? 0
    const offsets = (piece: PlacedPiece): number[] => {
      const dx = piece.x - own.x
      return beyond ? [dx + once, dx - once] : [dx]
    }
    const half = own.kind === 'filler' ? [0.5] : down === 0 ? [1] : [0.5, 1]
    for (const nearest of across === 0 ? [0] : half) {
      const found = [...this.byLabel.values()].filter((piece) => {
        if (piece.id === own.id || piece.kind === 'filler') return false
        const rows = Math.round(((piece.y - own.y) / pitch.row) * 100) / 100
        const level =
          own.kind === 'filler'
            ? Math.sign(rows) === down && Math.abs(rows) < 1.05
            : Math.abs(rows - down) < 0.3
        return (
          level &&
          offsets(piece).some((dx) => Math.abs(dx / pitch.column - across * (nearest + further)) < 0.2)
        )
      })
      if (found.length === 1) return found[0]!.label
      if (found.length > 1) throw new Error(`two motifs lie ${where} of ${own.label}`)
    }
    throw new Error(`no motif lies ${where} of ${own.label}`)
  }

  private account(piece: PlacedPiece): MotifAccount {
    return accountAt(this.plan, piece)!
  }

  private number(piece: PlacedPiece, { petal }: Anchor): number {
    const account = this.account(piece)
    const count = account.anchors.reduce((most, anchor) => Math.max(most, anchor.petal), 1)
    return ((petal - (piece.firstPetal ?? 1) + count) % count) + 1
  }

  private at(piece: PlacedPiece, anchor: Point): Point {
    const turn = (piece.turn * Math.PI) / 180
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    return { x: piece.x + anchor.x * c - anchor.y * s, y: piece.y + anchor.x * s + anchor.y * c }
  }

  /** The place of a motif that points nearest to an hour; two where it lies between them. */
  private byClock(piece: PlacedPiece, clock: string): readonly Anchor[] {
    const [, past, hour] = /(half past )?(\d+)/.exec(clock)!
    return this.towards(piece, ((Number(hour) + (past ? 0.5 : 0)) / 6) * Math.PI)
  }

  /** The place at a mark, of those that divide the edge evenly: laid off from where it is begun. */
  private byMark(piece: PlacedPiece, words: string): readonly Anchor[] {
    const number = Number(/\d+/.exec(words)![0])
    const { anchors, spaces } = this.account(piece)
    const first = anchors.find(({ petal }) => petal === (piece.firstPetal ?? 1))!
    const { x, y } = this.at(piece, first)
    const onward = this.plan.settled.hand === 'left' ? 1 : -1
    const begin = Math.atan2(x - piece.x, piece.y - y)
    return this.towards(piece, begin + (onward * (number - 1) * 2 * Math.PI) / spaces!.count)
  }

  private towards(piece: PlacedPiece, angle: number): readonly Anchor[] {
    const off = (anchor: Anchor): number => {
      const { x, y } = this.at(piece, anchor)
      const own = Math.atan2(x - piece.x, piece.y - y)
      return Math.abs(Math.atan2(Math.sin(own - angle), Math.cos(own - angle)))
    }
    const { anchors } = this.account(piece)
    const least = Math.min(...anchors.map(off))
    return anchors.filter((anchor) => off(anchor) < least + 0.05)
  }

  /** The place of the motif worked on that a phrase begins with. */
  private ownPlaces(piece: PlacedPiece, name: string): readonly Anchor[] {
    const { anchors } = this.account(piece)
    const [, part, side] = /^place (\d+) of side (\d+)$/.exec(name) ?? []
    const numbered = (n: number, kinds: readonly string[]): Anchor[] =>
      anchors.filter((anchor) => kinds.includes(anchor.kind) && this.number(piece, anchor) === n)
    if (part) return numbered(Number(side), ['side']).filter(({ id }) => id.endsWith(`-${part}`))
    const [, kind, n] = /^(petal|corner|side) (\d+)$/.exec(name) ?? []
    if (kind) return numbered(Number(n), kind === 'side' ? ['side'] : ['tip', 'corner'])
    if (name.startsWith('at ')) return this.byClock(piece, name)
    if (/^mark \d/.test(name)) return this.byMark(piece, name)
    throw new Error(`what is “${name}”?`)
  }

  private taken = (piece: PlacedPiece): readonly Made[] => this.made.get(piece.id) ?? []

  /** The place of a motif so many free petals to a side of where another is joined. */
  private countedPlace(host: PlacedPiece, from: string, steps: number, side: string): Anchor {
    const { anchors } = this.account(host)
    const isLeading = ({ kind }: Anchor): boolean => kind === 'tip' || kind === 'corner'
    const leading = anchors.filter(isLeading)
    const count = leading.length
    // Looking outward, left is counter-clockwise: the way a right hand works.
    const onward = (side === 'left') === (this.plan.settled.hand !== 'left') ? 1 : -1
    const taken = this.taken(host).filter(({ anchor }) => isLeading(anchor))
    const busy = new Set(taken.map(({ anchor }) => anchor.petal))
    const found = new Set<Anchor>()
    for (const { anchor, label } of taken) {
      if (label !== from) continue
      const petals = Array.from(
        { length: steps },
        (_, i) => ((anchor.petal - 1 + onward * (i + 1) + 2 * count) % count) + 1,
      )
      if (petals.every((petal) => !busy.has(petal)))
        found.add(leading.find(({ petal }) => petal === petals.at(-1))!)
    }
    if (found.size !== 1)
      throw new Error(`${found.size} places are ${steps} to the ${side} of ${from} on ${host.label}`)
    return [...found][0]!
  }

  /** The places of a motif that just these are joined to; of two the left or the right one, as it looks outward. */
  private sharedPlaces(
    host: PlacedPiece,
    others: readonly string[],
    side: string | undefined,
  ): readonly Anchor[] {
    const { anchors } = this.account(host)
    const found = anchors.filter(({ id, kind }) => {
      // Places along a side lie opposite what they meet.
      if (kind === 'side' || kind === 'shoulder') return false
      const there = this.spaces.get(`${host.id} ${id}`)?.slice(1) ?? []
      return [...new Set(there.map(({ piece }) => piece.label))].sort().join() === others.join()
    })
    if (side && found.length === 2) {
      const count = anchors.reduce((most, { petal }) => Math.max(most, petal), 1)
      const [one, other] = found as [Anchor, Anchor]
      const isOnward = (other.petal - one.petal + count) % count <= count / 2
      const isLeft = isOnward === (this.plan.settled.hand !== 'left')
      return [(side === 'left') === isLeft ? other : one]
    }
    return found
  }

  /** Places of a motif that lie nearest to others. */
  private opposite(own: PlacedPiece, host: PlacedPiece, anchor: Anchor): Anchor {
    const here = this.at(own, anchor)
    const once = this.plan.round?.circumference ?? 0
    const far = (other: Anchor): number => {
      const there = this.at(host, other)
      return Math.min(
        ...[0, once, -once].map((more) => Math.hypot(there.x + more - here.x, there.y - here.y)),
      )
    }
    return this.account(host).anchors.reduce((best, each) => (far(each) < far(best) ? each : best))
  }

  private hostPlace(own: PlacedPiece, anchor: Anchor, host: PlacedPiece, told: string): readonly Anchor[] {
    const counted =
      /^, (\d+|next)(?:nd|rd|th|) ?free (?:petal|corner) to the (left|right) of (\d+|the one just joined)$/.exec(
        told,
      )
    if (counted) {
      const [, steps, side, from] = counted
      const place = this.countedPlace(
        host,
        from === 'the one just joined' ? own.label : from!,
        steps === 'next' ? 1 : Number(steps),
        side!,
      )
      return [place]
    }
    const mark = /^, at its mark (\d+)$/.exec(told)
    if (mark) return this.byMark(host, mark[1]!)
    const clock = /^, at its (.+)$/.exec(told)
    if (clock) return this.byClock(host, clock[1]!)
    if (told === ' that lies opposite') return [this.opposite(own, host, anchor)]
    throw new Error(`where is “${told}”?`)
  }

  /** Works one step by its words. `any` answers where it is left free: any petal of a motif that nothing is joined to. */
  follow(label: string, words: string, any: (anchor: string) => string): FollowedJoin[] {
    const own = this.piece(label)
    const joins: FollowedJoin[] = []
    const join = (anchors: readonly Anchor[], host: PlacedPiece, places: readonly Anchor[]): void => {
      const ids = (list: readonly Anchor[]): string[] => list.map(({ id }) => id)
      joins.push({ anchors: ids(anchors), host: host.id, places: ids(places) })
      const [[anchor], [place]] = [anchors, places] as [[Anchor], [Anchor]]
      const key = `${host.id} ${place.id}`
      const there = this.spaces.get(key) ?? [{ piece: host, anchor: place }]
      for (const other of there) {
        this.note(own, anchor, other.piece.label)
        this.note(other.piece, other.anchor, label)
      }
      this.spaces.set(key, [...there, { piece: own, anchor }])
    }
    const plain = words.replace(/\.$/, '').replace(/^./, (letter) => letter.toLowerCase())
    const seam = /^(?:sew|crochet) (.*)$/.exec(plain)
    const along = (name: string, label: string): void => {
      const host = this.piece(label)
      const middle = this.ownPlaces(own, name).find(({ id }) => id.endsWith('-2'))!
      join([middle], host, [this.opposite(own, host, middle)])
    }
    const all = /^join stitch for stitch along each of its \w+ sides: (.*)$/.exec(plain)
    if (all) {
      for (const [, name, host] of all[1]!.matchAll(/(side \d+) to (?:motif )?(\d+)/g)) along(name!, host!)
      return joins
    }
    for (const phrase of (seam?.[1] ?? plain).split('; ')) {
      if (
        /^work .* without joining(, beginning (anywhere|at any of them))?$|^lay it in its place$/.test(phrase)
      )
        continue
      if (seam) {
        const [, name, hosts] = /^(.+) to motifs? ([\d, and]+)$/.exec(phrase)!
        for (const anchor of this.ownPlaces(own, name!))
          for (const host of hosts!.match(/\d+/g)!)
            joins.push({ anchors: [anchor.id], host: this.piece(host).id, places: [] })
        continue
      }
      const [, name, told] = /^(.+?): join (.+)$/.exec(phrase) ?? []
      if (!name || !told) throw new Error(`${label}: what does “${phrase}” mean?`)
      const whole = /^stitch for stitch along its whole length to (\d+)$/.exec(told)
      if (whole) {
        along(name, whole[1]!)
        continue
      }
      const anchors = this.ownPlaces(own, name)
      const same =
        /^into the (?:(left|right)-hand )?space shared by ([\d, and]+?)(?:, seen from (\d+))?$/.exec(told)
      const free = /^to any free (?:petal|corner) of (\d+)$/.exec(told)
      const side =
        /^to (\d+) (?:evenly along the side|at \d+ places, each to the one that lies opposite)$/.exec(told)
      const one = /^to (?:the place of )?(\d+)(.*)$/.exec(told)
      if (side) {
        const host = this.piece(side[1]!)
        const meets = any('side').split(' ')
        const here = anchors.filter(({ id }) => meets.includes(id))
        const near = here.map((anchor) => this.opposite(own, host, anchor))
        // Evenly is at all the places that a side has.
        if (told.endsWith('along the side') && here.length < anchors.length)
          throw new Error(`${label}: its side is joined at ${here.length} of ${anchors.length} places`)
        here.forEach((anchor, i) => join([anchor], host, [near[i]!]))
        continue
      }
      const [anchor] = anchors as [Anchor]
      if (same) {
        const meeting = same[2]!.match(/\d+/g)!
        // Nobody says who was there first: it is the one that the others were joined to.
        const found = (same[3] ? [same[3]] : meeting).flatMap((label) => {
          const host = this.piece(label)
          const others = meeting.filter((other) => other !== label).sort()
          return this.sharedPlaces(host, others, same[1]).map((place) => ({ host, place }))
        })
        if (found.length !== 1) throw new Error(`${label}: ${meeting.join()} meet at ${found.length} places`)
        join([anchor], found[0]!.host, [found[0]!.place])
      } else if (free) {
        const host = this.piece(free[1]!)
        if (this.taken(host).length > 0)
          throw new Error(`${label}: not every free petal of ${host.label} is alike`)
        join([anchor], host, [this.account(host).anchors.find(({ id }) => id === any(anchor.id))!])
      } else if (one) {
        const host = this.piece(one[1]!)
        join(anchors, host, this.hostPlace(own, anchor, host, one[2]!))
      } else throw new Error(`${label}: what does “${phrase}” mean?`)
    }
    return joins
  }

  private note(piece: PlacedPiece, anchor: Anchor, label: string): void {
    const list = this.made.get(piece.id)
    if (list) list.push({ anchor, label })
    else this.made.set(piece.id, [{ anchor, label }])
  }
}
