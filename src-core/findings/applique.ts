import type { CatalogueEntry } from './catalogue'

/** Appliqué: the panel, what is laid on it, and the distances between. */
export const APPLIQUE_FINDINGS = {
  'applique/panel-size': {
    severity: 'error',
    message: '{what} of the panel: found {received}, expected {least} to {most}.',
    mend: 'Enter the size of the panel with its seam allowance.',
  },
  'applique/allowance': {
    severity: 'error',
    message: 'a seam allowance of {received} is not from 0 to {most}.',
    mend: 'Enter how much of the edge goes into the seam.',
  },
  'applique/allowance-takes-all': {
    severity: 'error',
    message: 'a seam allowance of {allowance} leaves nothing of the panel.',
    mend: 'Take a larger panel or a narrower allowance.',
  },
  'applique/clearance': {
    severity: 'error',
    message: 'a distance of {received} between items is not from 0 to {most}.',
    mend: 'Enter how far apart the outlines of two items must be.',
  },
  'applique/path-missing': {
    severity: 'error',
    message: 'the panel follows an outline, but has neither path data nor a list of points.',
    mend: 'Give it path data in mm ("M 0 0 H 300 V 200 H 0 Z") or points as [x, y].',
  },
  'applique/path-markup': {
    severity: 'error',
    message: 'this is part of a document (tags, quotes or entities), not path data. None of it was used.',
    mend: 'Paste only what is between the quotes of d="…" in one path.',
  },
  'applique/path-too-long': {
    severity: 'error',
    message: 'the path data has {received} characters; at most {most} can be read.',
    mend: 'Simplify the path in the program that drew it.',
  },
  'applique/path-too-many-points': {
    severity: 'error',
    message: 'the outline comes out with more than {most} corners.',
    mend: 'Simplify the path in the program that drew it, and check that it is drawn in mm.',
  },
  'applique/path-unreadable': {
    severity: 'error',
    message: "the path data cannot be read at character {at} ('{found}').",
    mend: 'Check it there, or save the path again in the program that drew it.',
  },
  'applique/path-number': {
    severity: 'error',
    message: 'the outline has a number that is not a place on a panel: more than {most}, or none at all.',
    mend: 'Check the numbers, and that the path is drawn in mm.',
  },
  'applique/path-pieces': {
    severity: 'error',
    message: 'the path has {pieces} {pieces|piece|pieces}; a panel is one piece without holes.',
    mend: 'Keep only the outer line.',
  },
  'applique/path-flat': {
    severity: 'error',
    message: 'the outline has no area: {points} different {points|corner|corners}.',
    mend: 'Give it at least three corners that are not in one line.',
  },
  'applique/path-crosses': {
    severity: 'error',
    message: 'the outline crosses or touches itself near {x} from the left and {y} from the top.',
    mend: 'Draw a line that runs round the panel once.',
  },
  'applique/path-open': {
    severity: 'note',
    message: 'the outline is not closed; a straight line of {gap} closes it.',
    mend: 'End the path with Z if that is what is meant, or draw it to its end.',
  },
  'applique/svg-too-long': {
    severity: 'error',
    message: 'the SVG file has {received} characters; at most {most} can be read. None of it was used.',
    mend: 'Save just the outline of the panel in a file of its own.',
  },
  'applique/svg-script': {
    severity: 'error',
    message: "the SVG file contains a program ('{what}'). None of it was run or used.",
    mend: 'Save it as plain SVG in the program that drew it, or paste the path data alone.',
  },
  'applique/svg-entities': {
    severity: 'error',
    message: 'the SVG file declares entities of its own. None of them was expanded or used.',
    mend: 'Save it as plain SVG in the program that drew it, or paste the path data alone.',
  },
  'applique/svg-too-full': {
    severity: 'error',
    message:
      'the SVG file has more elements, deeper ones or more lines than are read ({elements}, {depth} and {lines}).',
    mend: 'Save just the outline of the panel in a file of its own.',
  },
  'applique/svg-unreadable': {
    severity: 'error',
    message: 'the file is not a whole SVG: it cannot be read at line {line}, column {column}.',
    mend: 'Save it again in the program that drew it. Path data alone is pasted, not chosen as a file.',
  },
  'applique/svg-none': {
    severity: 'error',
    message: 'the file is not an SVG drawing.',
    mend: 'Choose a file that a drawing program saved as SVG.',
  },
  'applique/svg-no-lines': {
    severity: 'error',
    message: 'the SVG file has no lines in it: no path, rectangle, circle, ellipse or polygon.',
    mend: 'Turn text and pictures into paths in the program that drew it.',
  },
  'applique/svg-no-size': {
    severity: 'error',
    message: 'the SVG file does not say how large it is: its size is not in mm, cm, inches or points.',
    mend: 'Say how many mm one unit of the drawing is.',
  },
  'applique/svg-line': {
    severity: 'error',
    message: 'in {element}: {trouble}',
    mend: 'Fix it in the program that drew it, or take it out of the file.',
  },
  'applique/line-pieces': {
    severity: 'error',
    message: 'the path has {pieces} {pieces|piece|pieces}; a row follows one line.',
    mend: 'Keep one of them.',
  },
  'applique/no-panel': {
    severity: 'error',
    message: 'there is no panel to place anything on.',
    mend: 'Fix the panel first.',
  },
  'applique/room': {
    severity: 'warning',
    message: 'you asked for {asked}; there is room for {room}.',
    mend: 'Ask for fewer, use a smaller motif or a larger panel, or let them lie closer together.',
  },
  'applique/nothing-laid': {
    severity: 'error',
    message: 'there was no room: nothing was placed.',
    mend: 'Reduce the distance, or use smaller or fewer motifs.',
  },
  'applique/no-items': {
    severity: 'note',
    message: 'nothing is placed on the panel yet.',
    mend: 'Place a motif on it, or a wreath, a row, a spray or a scatter.',
  },
  'applique/too-many': {
    severity: 'error',
    message: '{received} items are more than the {most} that one panel can hold here.',
    mend: 'Plan a part of it, or use larger motifs.',
  },
  'applique/no-motif': {
    severity: 'error',
    message: 'the item does not say which motif it is.',
    mend: 'Choose one of the motifs.',
  },
  'applique/no-place': {
    severity: 'error',
    message: 'the item lies at {x}, {y}, which is not near the panel.',
    mend: 'Enter how far its centre is from the left and from the top of the panel.',
  },
  'applique/other-motif': {
    severity: 'warning',
    message: "colourway '{colourway}' is for another motif.",
    mend: 'Choose a colourway of this motif.',
  },
  'applique/outside': {
    severity: 'error',
    message: '{item} sticks out of the panel by {by}.',
    mend: 'Move it inward.',
  },
  'applique/in-allowance': {
    severity: 'error',
    message: '{item} reaches {by} into the seam allowance of {allowance}.',
    mend: 'Move it inward by that much: what lies in the allowance is sewn into the seam.',
  },
  'applique/overlap': {
    severity: 'error',
    message: '{first} and {second} overlap.',
    mend: 'Move one of them, or allow items to lie on each other.',
  },
  'applique/kept-apart': {
    severity: 'note',
    message: 'item {item} stays where it was: it would overlap item {other}, and overlaps are not allowed.',
    mend: 'Leave room between them, or allow overlaps at Arrangement.',
  },
  'applique/too-close': {
    severity: 'warning',
    message: '{first} and {second} are {distance} apart; the minimum gap is {least}.',
    mend: 'Move one of them, or reduce the minimum gap.',
  },
  'applique/more-pairs': {
    severity: 'note',
    message: '{count} more {count|pair of items overlaps or is|pairs of items overlap or are} too close.',
    mend: 'Fix the ones that are listed first.',
  },
  'applique/heap': {
    severity: 'warning',
    message: 'more than {most} pairs of items overlap or are too close; the rest were not checked.',
    mend: 'Move the items apart.',
  },
  'applique/wrong-side': {
    severity: 'note',
    message: '{items}: wrong side up.',
    mend: 'If the wrong side should not show, place it right side up and rotate it instead.',
  },
} as const satisfies Record<string, CatalogueEntry>
