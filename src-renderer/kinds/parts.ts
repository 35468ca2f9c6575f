/** The components of each kind of layout: its table, its fields in the hand, its fields at the places. */
import type { Component } from 'svelte'
import type { Project } from '../../shared-types/project'
import type { PlacedPiece } from '../../src-core/layout/placed'
import BlanketTable from '../frame/BlanketTable.svelte'
import GarlandTable from '../frame/GarlandTable.svelte'
import HandBlanket from '../frame/HandBlanket.svelte'
import BlanketNotices from '../frame/BlanketNotices.svelte'
import JoinLegend from '../frame/JoinLegend.svelte'
import PanelTable from '../frame/PanelTable.svelte'
import AppliqueFields from '../places/arrangement/applique/AppliqueFields.svelte'
import PanelItem from '../places/arrangement/applique/ItemInHand.svelte'
import BlanketFields from '../places/arrangement/blanket/BlanketFields.svelte'
import CountFields from '../places/arrangement/blanket/CountFields.svelte'
import GarlandFields from '../places/arrangement/garland/GarlandFields.svelte'
import GarlandItem from '../places/arrangement/garland/ItemInHand.svelte'
import SpacingFields from '../places/arrangement/garland/SpacingFields.svelte'
import BlanketColours from '../places/colours/BlanketColours.svelte'
import MotifColours from '../places/colours/MotifColours.svelte'
import BlanketJoins from '../places/joins/BlanketJoins.svelte'
import GarlandJoins from '../places/joins/GarlandJoins.svelte'
import SewnDown from '../places/joins/SewnDown.svelte'
import BlanketQuestions from '../start/BlanketQuestions.svelte'
import GarlandQuestions from '../start/GarlandQuestions.svelte'
import PanelQuestions from '../start/PanelQuestions.svelte'
import type { OwnStart } from '../start/own-start.svelte'
import type { LayoutKind } from '../state/edits/layout-kind'
import { layoutKindOf } from '../state/edits/layout-kind'

/** It asks the window for everything. */
type Plain = Component<Record<string, never>>

interface Parts {
  /** The map as a table. */
  readonly Table: Plain
  /** What can be changed of the motif in the hand. */
  readonly Hand: Component<{ held: PlacedPiece; id: string; isAmongOthers: boolean }>
  /** A line over the map that tells what is wrong with the whole, and mends it; null where there is none. */
  readonly Notice: Plain | null
  /** What its marks on the map mean; null where nothing has to be told. */
  readonly Legend: Plain | null
  /** How many there are: what the sentence opens. */
  readonly Count: Plain
  readonly Arrangement: Plain
  readonly Joins: Plain
  readonly Colours: Plain
  /** What is asked of it at the start. */
  readonly Questions: Component<{ start: OwnStart }>
}

export const PARTS: Readonly<Record<LayoutKind, Parts>> = {
  blanket: {
    Table: BlanketTable,
    Hand: HandBlanket,
    Notice: BlanketNotices,
    Legend: JoinLegend,
    Count: CountFields,
    Arrangement: BlanketFields,
    Joins: BlanketJoins,
    Colours: BlanketColours,
    Questions: BlanketQuestions,
  },
  garland: {
    Table: GarlandTable,
    Hand: GarlandItem,
    Notice: null,
    Legend: null,
    Count: SpacingFields,
    Arrangement: GarlandFields,
    Joins: GarlandJoins,
    Colours: MotifColours,
    Questions: GarlandQuestions,
  },
  applique: {
    Table: PanelTable,
    Hand: PanelItem,
    Notice: null,
    Legend: null,
    Count: CountFields,
    Arrangement: AppliqueFields,
    Joins: SewnDown,
    Colours: MotifColours,
    Questions: PanelQuestions,
  },
}

export const partsOf = (project: Project): Parts => PARTS[layoutKindOf(project)]
