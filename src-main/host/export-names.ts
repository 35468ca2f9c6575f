/** What exports are called, and which kind of file each is. */
import type { ExportRequest } from '../../shared-types/bridge'
import type { PictureSubject } from '../../shared-types/pictures'
import type { Project } from '../../shared-types/project'
import type { ListName, SheetName } from '../../shared-types/sheets'
import type { LayoutKind } from '../../src-core/plans/layouts'
import { layoutKindOf } from '../../src-core/plans/layouts'
import { shortenedTo } from '../documents/byte-length'
import type { FileType } from './ports'

/** Bytes of a project's name in the names of its exports: what each of them is must not be cut off. */
const LONGEST_BEFORE_SUFFIX = 160

const EXPORTS = {
  title: { type: 'pdf', suffix: 'title page' },
  map: { type: 'pdf', suffix: 'map' },
  cardAndMap: { type: 'pdf', suffix: 'card and map' },
  garland: { type: 'pdf', suffix: 'card and list' },
  template: { type: 'pdf', suffix: 'template' },
  cardAndTemplate: { type: 'pdf', suffix: 'card and template' },
  mirrored: { type: 'pdf', suffix: 'mirrored template' },
  pattern: { type: 'pdf', suffix: 'pattern' },
  card: { type: 'pdf', suffix: 'kit card' },
  packing: { type: 'pdf', suffix: 'packing list' },
  labels: { type: 'pdf', suffix: 'labels' },
  page: { type: 'html', suffix: 'for a phone' },
  editions: { type: 'zip', suffix: 'editions' },
  materials: { type: 'csv', suffix: 'materials' },
  order: { type: 'csv', suffix: 'working order' },
  cord: { type: 'csv', suffix: 'along the cord' },
  items: { type: 'csv', suffix: 'items' },
  kit: { type: 'csv', suffix: 'winding and cutting' },
  purchase: { type: 'csv', suffix: 'purchases' },
} as const satisfies Record<
  | SheetName
  | ListName
  | 'page'
  | 'editions'
  | 'cardAndMap'
  | 'garland'
  | 'template'
  | 'cardAndTemplate'
  | 'mirrored',
  { type: FileType; suffix: string }
>

/** What a picture is called, behind the name of its project. */
const PICTURES: Readonly<Record<PictureSubject, string>> = {
  whole: 'picture',
  map: 'drawing',
  motif: 'motif',
  chart: 'chart',
  key: 'key',
}

/** How the name of an export ends, and which kind of file it is. */
function exportEnding(request: ExportRequest): { readonly type: FileType; readonly suffix: string } {
  if (request.kind === 'picture') return { type: request.format, suffix: PICTURES[request.of] }
  return EXPORTS[exportName(request)]
}

/** What a project is put together by, with the card of its kit or without; seen from the back where that is asked for. */
const MAIN_EXPORT: Readonly<Record<LayoutKind, (card: boolean, reverse: boolean) => keyof typeof EXPORTS>> = {
  blanket: (card) => (card ? 'cardAndMap' : 'map'),
  garland: () => 'garland',
  applique: (card, reverse) => (reverse ? 'mirrored' : card ? 'cardAndTemplate' : 'template'),
}

/** What an export is called: one kind of sheet alone by its name, several of them by what they put together. */
function exportName(request: Exclude<ExportRequest, { kind: 'picture' }>): keyof typeof EXPORTS {
  if (request.kind === 'page' || request.kind === 'editions') return request.kind
  if (request.kind === 'table') return request.table
  const [only, ...others] = request.sheets ?? []
  if (only && only !== 'map' && others.length === 0) return only
  // From a text that was checked before.
  const kind = layoutKindOf(JSON.parse(request.text) as Pick<Project, 'layout'>)
  return MAIN_EXPORT[kind](request.sheets?.includes('card') ?? false, request.reverse ?? false)
}

/** The name that an export of a project is offered under, without its ending, and which kind of file it is. */
export function exportFile(
  project: string,
  request: ExportRequest,
): { readonly name: string; readonly type: FileType } {
  const { type, suffix } = exportEnding(request)
  return { name: `${shortenedTo(project, LONGEST_BEFORE_SUFFIX)} ${suffix}`, type }
}
