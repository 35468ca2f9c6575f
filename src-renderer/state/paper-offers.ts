/** What can be printed and listed of a project, by what it is made into and whether it is sold as a kit. */
import type { Plan } from '../../shared-types/plan'
import type { ListName, OptionalPage, SheetName } from '../../shared-types/sheets'
import { OPTIONAL_PAGES } from '../../shared-types/sheets'
import { hasBegun } from '../../src-core/progress/words'
import { motifsAlone } from '../../src-core/plans/alone'
import { firstOf } from '../../src-core/telling'
import type { PaperOfKind } from '../kinds/kind'

/** What to put it together by, or one of the sheets of its kit. */
export type Offer = 'main' | Exclude<SheetName, 'title'>

interface OfferWords {
  readonly label: string
  /** "Export … as PDF", "Print …". */
  readonly what: string
}

const PATTERN: OfferWords = { label: 'Pattern of one motif', what: 'the pattern' }

const OF_KITS: Readonly<Record<Exclude<Offer, 'main' | 'map' | 'pattern'>, OfferWords>> = {
  card: { label: 'Kit card alone', what: 'the kit card' },
  packing: { label: 'Packing list, for the seller', what: 'the packing list' },
  labels: { label: 'Labels', what: 'the labels' },
}

/** Offers of a project, in the order in which they are needed. */
export function offersOf(
  { label, what, toPutIn, alone }: PaperOfKind,
  plan: Plan,
): readonly (OfferWords & { readonly value: Offer })[] {
  const pattern = motifsAlone(plan.settled).length > 0 ? [{ value: 'pattern' as const, ...PATTERN }] : []
  if (!plan.kit) return [{ value: 'main', label, what }, ...pattern]
  const main = { value: 'main' as const, ...toPutIn }
  const own = alone === undefined ? [] : [{ value: 'map' as const, label: alone, what }]
  const kit = (['card', 'packing', 'labels'] as const).map((value) => ({ value, ...OF_KITS[value] }))
  return [main, ...own, ...kit, ...pattern]
}

/** The sheets that an offer prints; undefined where it is everything. */
export function sheetsOf(offer: Offer, plan: Plan): readonly SheetName[] | undefined {
  if (offer !== 'main') return [offer]
  return plan.kit ? ['card', 'map'] : undefined
}

/** Whether an offer prints what it is put together by. */
export const isMade = (offer: Offer): boolean => offer === 'main' || offer === 'map'

/** Pages that can be left out, in the order in which they are printed. */
export const PAGE_WORDS: Readonly<Record<OptionalPage, string>> = {
  order: 'Order of work',
  materials: 'Materials',
  motif: 'The motif and its rounds',
  progress: 'Progress, once work has begun',
}

/** Those that a project has. */
export const optionalPagesOf = (plan: Plan): OptionalPage[] =>
  OPTIONAL_PAGES.filter(
    (page) =>
      (page !== 'order' || firstOf(plan, 'order', 1).length > 0) &&
      (page !== 'progress' || hasBegun(plan.progress)),
  )

/** Lists for a spreadsheet. */
export function listsOf({ list }: PaperOfKind, plan: Plan): readonly { list: ListName; label: string }[] {
  return [
    { list: 'materials', label: 'Materials' },
    list,
    ...(plan.kit
      ? ([
          { list: 'kit', label: 'Winding and cutting' },
          { list: 'purchase', label: 'Purchases' },
        ] as const)
      : []),
  ]
}
