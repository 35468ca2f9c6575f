/** Every list for a spreadsheet by its name, or null where the project has none of it. */
import type { Plan } from '../../shared-types/plan'
import type { ListName } from '../../shared-types/sheets'
import { orderCsv, yarnCsv } from './csv'
import { itemsCsv } from './csv-items'
import { cordCsv, kitCsv, purchaseCsv } from './csv-kit'

export function listCsv(list: ListName, plan: Plan): string | null {
  switch (list) {
    case 'materials':
      return yarnCsv(plan)
    case 'order':
      return orderCsv(plan)
    case 'cord':
      return plan.garland ? cordCsv(plan) : null
    case 'items':
      return plan.panel ? itemsCsv(plan) : null
    case 'kit':
      return plan.kit ? kitCsv(plan.settled, plan.kit) : null
    case 'purchase':
      return plan.kit ? purchaseCsv(plan.settled, plan.kit) : null
  }
}

/** What each list is for, for those who ask for one that there is none of. */
export const LIST_OWNERS: Readonly<Partial<Record<ListName, string>>> = {
  cord: 'garlands that can be planned',
  items: 'appliqués that can be planned',
  kit: 'layouts with a kit',
  purchase: 'layouts with a kit',
}
