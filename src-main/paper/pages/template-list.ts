/** What lies where: every item with its yarn, size, place and turn, to tick off. */
import type { PlacedMotif } from '../../../shared-types/plan'
import type { TemplateGround } from '../../../src-core/figures/applique-ground'
import { knownSize } from '../../../src-core/motif/ruler'
import { formatNumber, lengthsIn } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { TYPE } from '../setting'
import type { Column, Row } from '../table'
import { Table } from '../table'
import { slotWords } from '../words'
import { boxOf, madeAfter } from '../words-order'
import type { Done } from '../words-order'
import { TEMPLATE_WORDS as WORDS } from '../words-template'

const YARN = 46
const NOTE = 34

/** The list on as many pages as it takes. */
export function templateList(job: Job, ground: TemplateGround): Draft[] {
  const rows = listRows(job, ground)
  if (rows.length === 0) return []
  let sheet = newSheet(job)
  let y = sheet.title(WORDS.list)
  y = sheet.paragraph(WORDS.listIntroduction(ground.reverse, job.terms), sheet.left, y, sheet.inner) + 3
  // A column that says nothing of anything is left out.
  const kept = COLUMNS.map((_, i) => i !== NOTES || rows.some(({ cells }) => cells[i] !== ''))
  const table = new Table(
    sheet,
    COLUMNS.filter((_, i) => kept[i]),
    rows.map(({ cells, ...row }) => ({ ...row, cells: cells.filter((_, i) => kept[i]) })),
    { size: TYPE.list },
  )
  const [section, name] = ['items', WORDS.list] as const
  const drafts: Draft[] = [{ section, name, bookmarks: [WORDS.list], sheet }]
  y = table.draw(sheet, y)
  while (table.goesOn) {
    sheet = newSheet(job)
    drafts.push({ section, name, bookmarks: [], sheet })
    y = table.draw(sheet, sheet.top)
  }
  return [...drafts.slice(0, -1), { ...drafts.at(-1)!, end: y }]
}

/** Which of the columns says what lies on what. */
const NOTES = 2

const COLUMNS: readonly Column[] = WORDS.columns.map((heading, i): Column => ({
  heading,
  align: i < 3 ? 'left' : 'right',
  ...(i === 1 ? { width: YARN } : i === 2 ? { width: NOTE } : {}),
}))

function listRows(job: Job, ground: TemplateGround): Row[] {
  const { plan, units } = job
  const placed = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  const accounts = new Map(plan.accounts.map((account) => [account.id, account]))
  const marks = new Map(job.ground.marks.map((mark) => [mark.id, mark]))
  const [made, joined] = [new Set(plan.marks.made), new Set(plan.marks.joined)]
  const done = (id: string): Done => (joined.has(id) ? 'ticked' : made.has(id) ? 'made' : '')
  const place = lengthsIn(
    units,
    plan.motifs.flatMap(({ x, y }) => [x, y]),
  )
  const size = lengthsIn(units, [...accounts.values()].map(knownSize))
  return ground.items.flatMap(({ id }): Row[] => {
    const item = placed.get(id)
    const account = accounts.get(item?.motif ?? '')
    if (!item || !account) return []
    const mark = marks.get(item.colourway)
    const yarn = mark ? [mark.code, slotWords(mark.slots, job.terms)].filter(Boolean).join(' · ') : ''
    return [
      {
        cells: [
          `${boxOf(done(id))} ${item.label}  ${account.name}${madeAfter(done(id))}`,
          yarn,
          notes(job, item),
          size(knownSize(account)),
          place(item.x),
          place(item.y),
          `${formatNumber(item.turn, 1)}°`,
        ],
      },
    ]
  })
}

/** "wrong side up, on 2 and 5". */
function notes({ plan }: Job, item: PlacedMotif): string {
  const labels = new Map(plan.motifs.map((motif) => [motif.id, motif.label]))
  const below = (plan.overlaps ?? [])
    .filter(({ above }) => above === item.id)
    .map((overlap) => labels.get(overlap.below) ?? '')
  return [
    ...(item.flipped ? [WORDS.wrongSide] : []),
    ...(below.length > 0 ? [WORDS.on(below.join(', '))] : []),
  ].join(', ')
}
