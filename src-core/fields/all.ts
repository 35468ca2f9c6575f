/** Every field of the project, in the order of the docs. */
import { CLEARANCE, ITEM, PANEL } from './applique'
import { BLANKET } from './blanket'
import type { Field } from './field'
import { GARLAND, PART } from './garland'
import { JOINING } from './joining'
import { EXTRA, KIT } from './kit'
import { ACROSS, FOUNDATION, GAUGE, MEASURE, MOTIF, WEIGHT } from './motif'
import { ALLOWANCE, PACK, YARN, YARN_LEFT } from './yarn'

export const FIELDS: readonly Field[] = [
  ...[
    YARN,
    YARN_LEFT,
    PACK,
    MOTIF,
    MEASURE,
    { ACROSS },
    FOUNDATION,
    GAUGE,
    WEIGHT,
    BLANKET,
    GARLAND,
    PART,
    PANEL,
  ],
  ...[{ CLEARANCE }, ITEM, KIT, EXTRA, JOINING, ALLOWANCE],
].flatMap((fields): Field[] => Object.values(fields))
