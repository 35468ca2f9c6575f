import type { CatalogueEntry } from './catalogue'

/** Kits: the run, what is bought for it, and its price. */
export const KIT_FINDINGS = {
  'kit/value': {
    severity: 'error',
    message: "{what}: found '{received}', expected {expected}.",
    mend: 'Correct it; until then there is no account of the kits.',
  },
  'kit/margin': {
    severity: 'error',
    message:
      'a margin of {margin} % and fees of {fees} % of the price before tax leave none of it to cover the cost.',
    mend: 'Enter a margin and a share of fees that stay under 100 % together.',
  },
  'kit/no-price': {
    severity: 'warning',
    message: 'the cost of a kit is missing: no price is known for {what}.',
    mend: 'Enter the missing prices.',
  },
  'kit/not-counted': {
    severity: 'warning',
    message: '{yarn} is not in the kits: its grams are not known.',
    mend: 'Enter grams and metres from the {ball} band, or weigh the motifs.',
  },
  'kit/pack': {
    severity: 'warning',
    message: '{yarn}: a pack of {grams} cannot be bought and is left out.',
    mend: 'Enter its grams, 0.1 to 25,000, to a tenth of a gram, and its price from 0 on.',
  },
  'kit/run-too-large': {
    severity: 'error',
    message: '{yarn}: {grams} for one batch are more than can be calculated.',
    mend: 'Plan a smaller batch.',
  },
  'kit/no-instructions': {
    severity: 'warning',
    message:
      '{motif}: it has neither written rounds nor instructions, so nobody who gets the kit can work it.',
    mend: 'Type its instructions under Motif, or write its rounds.',
  },
  'kit/pattern': {
    severity: 'warning',
    message: 'the kit includes the pattern of {by}, and their permission is not ticked yet.',
    mend: 'Ask for permission in writing, then tick at Kit that {by} allows it.',
  },
} as const satisfies Record<string, CatalogueEntry>
