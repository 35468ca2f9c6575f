/**
 * Who may ask a layout or a plan of which kind it is. Everybody else asks for the layout as that kind (`garlandOf`) or
 * gives an answer for every kind (`byKind`, a record by kind), so that a new kind does not compile until it has one.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
/** Where the kinds are at home. */
const HOMES = ['shared-types/', 'src-core/plans/', 'src-renderer/kinds/']
const files = ['shared-types', 'src-core', 'src-main', 'src-renderer']
  .flatMap((room) =>
    readdirSync(join(root, room), { recursive: true, encoding: 'utf8' }).map((name) => join(room, name)),
  )
  .filter((name) => /\.(ts|svelte)$/.test(name) && !HOMES.some((home) => name.startsWith(home)))

const KIND = "'(?:blanket|garland|applique)'"
/** A kind that is compared, in whichever order, or the kind of a layout that is read. */
const ASKED = new RegExp(
  `[!=]==? ${KIND}|${KIND} [!=]==?|case ${KIND}|switch \\(.*plan\\.kind|(?<!')layout\\)?[?!]?\\.kind\\b`,
)
/** What only one kind of plan has, taken for a sign of its kind. */
const TAKEN_FOR =
  /!.*\bplan\??\.(?:garland|panel)\b|\bplan\??\.(?:garland|panel)(?: [?&|!=]|\))|\{[^}]*\b(?:garland|panel)\b[^}]*\}(?:: Plan\b| = (?:\w+\.)*plan\b)/

const linesWith = (pattern: RegExp): Record<string, number> =>
  Object.fromEntries(
    files.flatMap((name) => {
      const found = readFileSync(join(root, name), 'utf8')
        .split('\n')
        .filter((line) => pattern.test(line) && !/^\s*(?:\*|\/\/|\/\*)/.test(line))
      return found.length > 0 ? [[name, found.length]] : []
    }),
  )

describe('kinds of layout', () => {
  it('are asked for nowhere but where they are at home', () => {
    expect(linesWith(ASKED)).toEqual({
      // It hands a layout to its planner.
      'src-core/plan.ts': 1,
      // It fills in the defaults of each kind.
      'src-core/settled.ts': 4,
    })
  })

  it('are not guessed from what a plan has, but in these places', () => {
    expect(linesWith(TAKEN_FOR)).toEqual({
      // Rooms of one kind, and lists that there are or are not.
      'src-core/figures/applique-ground.ts': 1,
      'src-main/command/commands/arrange.ts': 1,
      'src-main/paper/lists.ts': 2,
      'src-renderer/drawing/gaps.ts': 1,
      'src-renderer/drawing/handling.ts': 1,
      'src-renderer/places/arrangement/garland/GarlandFields.svelte': 1,
      'src-renderer/places/arrangement/garland/SpacingFields.svelte': 1,
      // The drawing draws what is there, a panel or a cord.
      'src-renderer/drawing/faults.ts': 2,
      'src-renderer/drawing/ground.ts': 1,
      'src-renderer/drawing/map-drawing.ts': 1,
      'src-renderer/drawing/measured.ts': 1,
      'src-renderer/drawing/motif-picture.ts': 1,
    })
  })

  it.each([
    [ASKED, "if (project.layout?.kind === 'garland') return"],
    [ASKED, "    case 'applique':"],
    [ASKED, "const isOne = 'blanket' === kind"],
    [ASKED, '  switch (layout.kind) {'],
    [TAKEN_FOR, '  if (plan.garland) return one(plan.garland)'],
    [TAKEN_FOR, 'const turn = plan.panel ? 0 : 1'],
    [TAKEN_FOR, 'const hasMap = !plan.panel'],
    [TAKEN_FOR, '  const { panel, garland } = job.plan'],
    [TAKEN_FOR, 'function measuredOf({ size, garland }: Plan): Measured {'],
  ])('%s finds it: %s', (pattern, line) => {
    expect(pattern.test(line)).toBe(true)
  })
})
