/** Reads a garland's fields: every number within its limits, or a finding. */
import type { Finding } from '../../../shared-types/finding'
import type { GarlandLayout } from '../../../shared-types/project'
import { isWithin } from '../../fields/field'
import { GARLAND } from '../../fields/garland'
import type { GarlandField } from '../../fields/garland'
import { finding, findingOf, said } from '../../findings/finding'
import type { Said } from '../../findings/finding'
import { boundValues, lengthValue } from '../../findings/quantities'
import { catenaryFromDrop, catenaryFromLength, catenaryFromLengthAndDrop } from '../../geometry/catenary'
import type { Catenary } from '../../geometry/catenary'
import { formatLength, formatNumber } from '../../units/format'
import type { UnitSystem } from '../../../shared-types/project'
import type { Millimetres } from '../../units/quantity'
import { HANGS_BY, SAME_LENGTH } from './constants'
import { DEFAULTS } from '../../settled'

/** A number of the file within its limits; null with a finding where it is not, undefined where there is none. */
export class GarlandReader {
  readonly findings: Finding[] = []

  /** A field of the garland, or another length that is bounded as that field is, with what it is called then. */
  within(
    value: number | undefined,
    field: GarlandField,
    where: string = field.path,
    what: string = field.what,
  ): number | null | undefined {
    if (value === undefined) return undefined
    const { least, most, kind, code } = field
    if (isWithin(value, field)) return value
    const told =
      kind === 'count'
        ? { received: formatNumber(value, 3), least: formatNumber(least), most: formatNumber(most) }
        : { received: lengthValue(value), ...boundValues(field) }
    this.findings.push(finding(code, where, { what, ...told }))
    return null
  }
}

/** The swags that a garland hangs in. */
export interface Swags {
  readonly count: number
  /** One of them. */
  readonly cord: Catenary
}

export interface Hung {
  readonly swags: Swags | null
  /** Length between the ties; null where it follows from spacing and count. */
  readonly length: Millimetres | null
}

/**
 * M51: swags and the length of the cord, each from the other: span and drop give the cord, cord and span give
 * the drop, cord and drop give the span. Null where something cannot be read, with findings.
 */
export function readHanging(layout: GarlandLayout, reader: GarlandReader, units: UnitSystem): Hung | null {
  const { swags } = layout
  const length = reader.within(layout.cord?.length, GARLAND.length)
  const count = reader.within(swags?.count, GARLAND.swags)
  const span = reader.within(swags?.span, GARLAND.span)
  const drop = reader.within(swags?.drop, GARLAND.drop)
  if ([length, count, span, drop].includes(null)) return null
  const straight = span === undefined && drop === undefined
  if (straight) return { swags: null, length: length ?? null }
  const each = count ?? DEFAULTS.swags.count
  const cord = hangCord(span ?? undefined, drop ?? undefined, length && length / each, reader, units)
  if (!cord) return null
  const follows = each * cord.length
  if (follows > GARLAND.length.most) {
    reader.within(follows, GARLAND.length, 'layout.swags', 'the cord that follows')
    return null
  }
  if (length && Math.abs(length - follows) > SAME_LENGTH) {
    const values = { entered: formatLength(length, units), follows: formatLength(follows, units) }
    reader.findings.push(finding('garland/length-follows', 'layout.cord.length', values))
  }
  return { swags: { count: each, cord }, length: follows }
}

function hangCord(
  span: number | undefined,
  drop: number | undefined,
  length: number | null | undefined,
  reader: GarlandReader,
  units: UnitSystem,
): Catenary | null {
  const told = (mm: number): string => formatLength(mm, units)
  const refuse = (refused: Said) => {
    reader.findings.push(findingOf(refused, 'layout.swags'))
    return null
  }
  if (span !== undefined && drop !== undefined) return catenaryFromDrop(span, drop)
  if (span !== undefined && length) {
    if (length >= span) return catenaryFromLength(span, length)
    return refuse(said('garland/cord-too-short', { length: told(length), span: told(span) }))
  }
  if (drop !== undefined && length) {
    // A cord that hangs straight down and up again spans nothing.
    const cord = length > 2 * drop ? catenaryFromLengthAndDrop(length, drop) : null
    if (cord && cord.span >= GARLAND.span.least) return cord
    return refuse(said('garland/drop-too-deep', { length: told(length), drop: told(drop) }))
  }
  reader.findings.push(finding('garland/swags-open', 'layout.swags'))
  return null
}

export interface HangWay {
  readonly along: boolean
  readonly by: 1 | 2
  readonly chains: number | null
}

/** How motifs hang; what cannot be read is as usual, with a finding. */
export function readWay(layout: GarlandLayout, reader: GarlandReader): HangWay {
  const { hang } = layout
  const by = reader.within(hang?.by, GARLAND.by)
  const chains = reader.within(hang?.chains, GARLAND.chainsBetween)
  return {
    along: hang?.way === 'along',
    by: by === 1 ? 1 : HANGS_BY,
    chains: chains ?? null,
  }
}
