/** Figures with a length and a width: what they are called, and how their measures are told. */
import type { FigureForm, MotifAccount } from '../../shared-types/plan-motif'
import type { Millimetres } from '../units/quantity'

const NAMES: Readonly<Record<FigureForm, readonly [one: string, several: string]>> = {
  oval: ['oval', 'ovals'],
  heart: ['heart', 'hearts'],
  block: ['block', 'blocks'],
  triangle: ['triangle', 'triangles'],
  'half-circle': ['half circle', 'half circles'],
  'half-hexagon': ['half hexagon', 'half hexagons'],
  'half-octagon': ['half octagon', 'half octagons'],
  'quarter-circle': ['quarter circle', 'quarter circles'],
}

/** "leaf", "hearts". */
export function formName({ form }: Pick<MotifAccount, 'form'>, many: boolean): string {
  const [one, several] = form ? NAMES[form] : ['leaf', 'leaves']
  return many ? several : one
}

/** Whether it is measured as it stands, wide and high; leaves and ovals are long and wide. */
export const stands = ({ form }: Pick<MotifAccount, 'form'>): boolean => form !== undefined && form !== 'oval'

/** Both measures with their names, small, the one that it is known by first. */
export function figureSizes(
  account: Pick<MotifAccount, 'form' | 'overTips' | 'overValleys'>,
): readonly (readonly ['length' | 'width' | 'height', Millimetres])[] {
  const { overTips, overValleys } = account
  return stands(account)
    ? [
        ['width', overValleys],
        ['height', overTips],
      ]
    : [
        ['length', overTips],
        ['width', overValleys],
      ]
}

/** The measure that it is known by: 70 mm, "long"; 60 mm, "wide". */
export const figureLead = (
  account: Pick<MotifAccount, 'form' | 'overTips' | 'overValleys'>,
): readonly [Millimetres, 'long' | 'wide'] =>
  stands(account) ? [account.overValleys, 'wide'] : [account.overTips, 'long']
