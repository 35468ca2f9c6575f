/** Where JSON text breaks, and how. The engine's own parser does not always tell the place. */
import { parse, printParseErrorCode } from 'jsonc-parser'
import type { ParseError } from 'jsonc-parser'

const WORDS: Readonly<Record<string, string>> = {
  InvalidSymbol: 'this is not a value.',
  InvalidNumberFormat: 'this is not a number.',
  PropertyNameExpected: 'a name in double quotes is expected.',
  ValueExpected: 'a value is expected.',
  ColonExpected: 'a colon is expected.',
  CommaExpected: 'a comma is expected.',
  CloseBraceExpected: 'a closing } is expected.',
  CloseBracketExpected: 'a closing ] is expected.',
  EndOfFileExpected: 'nothing more is expected.',
  InvalidCommentToken: 'comments are not allowed.',
  UnexpectedEndOfComment: 'comments are not allowed.',
  UnexpectedEndOfString: 'this text has no closing quote.',
  UnexpectedEndOfNumber: 'this number is cut off.',
  InvalidUnicode: 'this \\u escape is not valid.',
  InvalidEscapeCharacter: 'this backslash escape is not valid.',
  InvalidCharacter: 'this character is not allowed in a text; it must be escaped.',
}

interface JsonBreak {
  /** Both from 1. */
  readonly line: number
  readonly column: number
  readonly detail: string
}

/** The first place at which `text`, known not to be JSON, breaks; nesting must be limited before. */
export function findJsonBreak(text: string): JsonBreak {
  if (text.trim() === '') return { line: 1, column: 1, detail: 'the file is empty.' }
  const errors: ParseError[] = []
  parse(text, errors, { disallowComments: true, allowTrailingComma: false })
  const first = errors[0]
  if (!first) return { ...placeOf(text, text.length), detail: 'this is not JSON.' }
  if (first.offset >= text.trimEnd().length)
    return { ...placeOf(text, text.length), detail: 'the file ends too early.' }
  return {
    ...placeOf(text, first.offset),
    detail: WORDS[printParseErrorCode(first.error)] ?? 'this is not JSON.',
  }
}

/** Line and column, both from 1, of an offset. */
function placeOf(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset).split(/\r\n|\r|\n/)
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 }
}
