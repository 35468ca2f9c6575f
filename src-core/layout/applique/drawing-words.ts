/** Why path data or an SVG file is not taken, as a code of the catalogue with its values. */
import type { Finding } from '../../../shared-types/finding'
import { findingOf, said } from '../../findings/finding'
import type { Said } from '../../findings/finding'
import { mostValue } from '../../findings/quantities'
import { MOST_DEPTH, MOST_ELEMENTS, MOST_FILE_CHARACTERS, MOST_LINES } from '../../geometry/svg-file'
import type { FileTrouble } from '../../geometry/svg-file'
import { MOST_COORDINATE, MOST_PATH_CHARACTERS, MOST_PATH_POINTS } from '../../geometry/svg-path'
import type { PathTrouble } from '../../geometry/svg-path'
import { formatNumber } from '../../units/format'

export type Refusal = Said
export const refusal = said

/** What is wrong with path data. */
export function pathRefusal(trouble: PathTrouble): Refusal {
  switch (trouble.kind) {
    case 'empty':
      return refusal('applique/path-missing', {})
    case 'too-long':
      return refusal('applique/path-too-long', {
        received: formatNumber(trouble.characters),
        most: formatNumber(MOST_PATH_CHARACTERS),
      })
    case 'markup':
      return refusal('applique/path-markup', {})
    case 'unreadable':
      return refusal('applique/path-unreadable', { at: formatNumber(trouble.at), found: trouble.found })
    case 'number':
      return refusal('applique/path-number', { most: mostValue(MOST_COORDINATE) })
    case 'too-many-points':
      return refusal('applique/path-too-many-points', { most: formatNumber(MOST_PATH_POINTS) })
  }
}

/** What is wrong with an SVG file. */
export function svgRefusal(trouble: FileTrouble): Refusal {
  switch (trouble.kind) {
    case 'file-too-long':
      return refusal('applique/svg-too-long', {
        received: formatNumber(trouble.characters),
        most: formatNumber(MOST_FILE_CHARACTERS),
      })
    case 'script':
      return refusal('applique/svg-script', { what: trouble.what })
    case 'entities':
      return refusal('applique/svg-entities', {})
    case 'too-full':
      return refusal('applique/svg-too-full', {
        elements: formatNumber(MOST_ELEMENTS),
        depth: formatNumber(MOST_DEPTH),
        lines: formatNumber(MOST_LINES),
      })
    case 'no-xml':
      return refusal('applique/svg-unreadable', {
        line: formatNumber(trouble.line),
        column: formatNumber(trouble.column),
      })
    case 'no-svg':
      return refusal('applique/svg-none', {})
    case 'no-lines':
      return refusal('applique/svg-no-lines', {})
    case 'in-element': {
      const { message } = findingOf(pathRefusal(trouble.trouble), '')
      return refusal('applique/svg-line', { element: trouble.element, trouble: message })
    }
  }
}

/** A refusal as a finding about `where`: a file's name, or a path into the project. */
export const findingFrom: (refusal: Refusal, where: string) => Finding = findingOf
