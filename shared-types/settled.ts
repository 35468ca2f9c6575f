/** A project of which nothing is open any more: what `settled` of the engine makes of it. */
import type { Finding } from './finding'
import type {
  AppliqueLayout,
  BlanketLayout,
  Colourway,
  GarlandLayout,
  Hand,
  Joining,
  JoinRule,
  Motif,
  Order,
  Paper,
  Project,
  Seam,
  SheetStyle,
  Skill,
  Terms,
  UnitSystem,
  Yarn,
} from './project'

/** Fields of `Fields` that are there, whatever the file says. */
type Filled<Fields, Key extends keyof Fields> = Fields & { [Name in Key]-?: NonNullable<Fields[Name]> }

export type SettledJoining = Joining & { rule: JoinRule; seam: Seam; bridgeChains: number; gap: number }

export type SettledBlanket = Filled<
  BlanketLayout,
  | 'arrangement'
  | 'alternateRows'
  | 'turn'
  | 'alternateTurn'
  | 'halves'
  | 'inTheRound'
  | 'closedEnds'
  | 'cells'
> & { blocking: { width: number; height: number } }

export type SettledGarland = Filled<GarlandLayout, 'items' | 'symmetric'> & {
  cord: Filled<NonNullable<GarlandLayout['cord']>, 'ties' | 'worked'>
  spacing: Filled<NonNullable<GarlandLayout['spacing']>, 'between'>
  hang: Filled<NonNullable<GarlandLayout['hang']>, 'way' | 'by'>
}

export type SettledApplique = Filled<AppliqueLayout, 'items' | 'clearance' | 'overlaps'> & {
  panel: Filled<NonNullable<AppliqueLayout['panel']>, 'shape' | 'allowance'>
}

export type SettledLayout = SettledBlanket | SettledGarland | SettledApplique

export type Settled = Project & {
  title: string
  designer: string
  notes: string
  pattern: { line: string; skill?: Skill | undefined; copyright: string }
  units: UnitSystem
  terms: Terms
  hand: Hand
  forChild: boolean
  currency: string
  yarns: Yarn[]
  /** With the gauge that each is worked in. */
  motifs: Motif[]
  colourways: Colourway[]
  layout?: SettledLayout | undefined
  joining: SettledJoining
  order: Order
  allowance: { wastePercent: number; tail: number }
  sheet: { paper: Paper; style: SheetStyle; terms: Terms; titlePage?: boolean | undefined }
  /** What was refused, and what stands for it. */
  refused: readonly Finding[]
}
