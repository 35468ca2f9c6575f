import type { CatalogueEntry } from './catalogue'

/** What stands beside a number field that cannot be read; the last good value stays in force. */
export const NUMBER_FINDINGS = {
  'numbers/empty': {
    severity: 'error',
    message: 'nothing is entered; {expected} is expected.',
    mend: 'Enter a number.',
  },
  'numbers/too-long': {
    severity: 'error',
    message: 'this is too long for a number.',
    mend: 'Enter a number or a short sum.',
  },
  'numbers/unreadable': {
    severity: 'error',
    message: "'{text}' cannot be read as a number.",
    mend: 'Enter a number such as 9.5 or 9,5, with a unit if you like, or a sum such as 12 * 9.5.',
  },
  'numbers/unknown-unit': {
    severity: 'error',
    message: "found '{word}', expected {expected}.",
    mend: 'Use a unit such as mm, cm, in, g, oz, m, yd or min.',
  },
  'numbers/other-unit': {
    severity: 'error',
    message: "'{word}' is the unit of {other}; {expected} is expected.",
    mend: 'Use a unit that fits this field.',
  },
  'numbers/mixed': {
    severity: 'error',
    message: "in '{text}' some numbers have a unit and others have none.",
    mend: 'Give every number its unit, or write one unit at the end for all.',
  },
  'numbers/wrong-dimension': {
    severity: 'error',
    message: "'{text}' does not come out as {expected}.",
    mend: 'Multiply and divide by plain numbers.',
  },
  'numbers/dashed-fraction': {
    severity: 'error',
    message: "'{text}' can be read as a fraction or as a subtraction.",
    mend: 'Write 1 1/2 for one and a half, or leave blanks round the minus sign.',
  },
  'numbers/two-currencies': {
    severity: 'error',
    message: "'{text}' names more than one currency.",
    mend: "Enter amounts in the project's own currency.",
  },
  'numbers/other-currency': {
    severity: 'error',
    message: "'{word}' is not {currency}, which this project counts in. The currency stands in the settings.",
    mend: 'Enter the amount in {currency}, or change the currency in the settings.',
  },
  'numbers/divided-by-zero': {
    severity: 'error',
    message: 'a division by zero has no answer.',
    mend: 'Divide by another number.',
  },
  'numbers/not-whole': {
    severity: 'error',
    message: '{received} is not a whole number.',
    mend: 'Enter a whole number.',
  },
  'numbers/too-small': {
    severity: 'error',
    message: 'the least that works here is {least}.',
    mend: 'Enter a larger number.',
  },
  'numbers/too-large': {
    severity: 'error',
    message: 'the most that works here is {most}.',
    mend: 'Enter a smaller number.',
  },
} as const satisfies Record<string, CatalogueEntry>
