import type { CatalogueEntry } from './catalogue'

/** The file itself and what refers to what in it. */
export const FILE_FINDINGS = {
  'file/too-large': {
    severity: 'error',
    message: 'too large to plan: {received}; at most {most}.',
    mend: 'Take out what is not used, or plan it in several projects.',
  },
  'file/out-of-bounds': {
    severity: 'warning',
    message: '{what}: found {received}, expected {least} to {most}.',
    mend: 'Enter a number within these bounds.',
  },
  'file/not-whole': {
    severity: 'warning',
    message: '{what}: found {received}, expected a whole number from {least} to {most}.',
    mend: 'Enter a whole number.',
  },
  'file/invalid-value': {
    severity: 'error',
    message: 'found {received}, expected {expected}.',
    mend: 'Correct the value at this place.',
  },
  'file/more-invalid-values': {
    severity: 'error',
    message: '{count} more {count|value|values} cannot be right.',
    mend: 'Correct those that are listed first.',
  },
  'file/many-invalid-values': {
    severity: 'error',
    message: 'more than {count} more {count|value|values} cannot be right.',
    mend: 'Correct those that are listed first.',
  },
  'file/unknown-yarn': {
    severity: 'error',
    message: "there is no yarn '{id}'.",
    mend: 'Add the yarn, or name one that is in the list.',
  },
  'file/unknown-motif': {
    severity: 'error',
    message: "there is no motif '{id}'.",
    mend: 'Add the motif, or name one that is in the list.',
  },
  'file/unknown-colourway': {
    severity: 'error',
    message: "there is no colourway '{id}'.",
    mend: 'Add the colourway, or name one that is in the list.',
  },
  'file/unknown-cell': {
    severity: 'warning',
    message: "found no motif at '{id}' in this arrangement.",
    mend: 'Make the arrangement as large as that again, or clear what was painted there.',
  },
  'file/unknown-slot': {
    severity: 'warning',
    message: "the motif has no colour '{slot}'; it has {known}.",
    mend: "Use one of the motif's own colour names.",
  },
  'file/missing-slot': {
    severity: 'warning',
    message: "nothing says which yarn the motif's colour '{slot}' is worked in.",
    mend: 'Choose a yarn for it in this colourway.',
  },
  'file/duplicate-id': {
    severity: 'error',
    message: "the id '{id}' is used twice.",
    mend: 'Give each of them an id of its own.',
  },
} as const satisfies Record<string, CatalogueEntry>
