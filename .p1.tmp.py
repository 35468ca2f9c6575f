def sub(path, *pairs):
    s=open(path).read()
    for a,b in pairs:
        assert a in s, (path,a)
        s=s.replace(a,b)
    open(path,'w').write(s)
sub('src-core/motif/ruling.ts',("import type { SizeName } from './stated'\n",""),
("type Shape = MotifAccount['shape']\n","""type Shape = MotifAccount['shape']

/** The measures that a ruler may show of a motif. */
export type MeasureName =
  'overTips' | 'overValleys' | 'across' | 'sideToSide' | 'pointToPoint' | 'length' | 'width'
"""),("SizeName","MeasureName"))
sub('src-renderer/state/edits/motif.ts',("import type { SizeName } from '../../../src-core/motif/stated'\n",""),
("export type MeasureKey = SizeName\n","export type MeasureKey = MeasureName\n"),
("import { alike, MEASURES, shownIn } from '../../../src-core/motif/ruling'\n","import { alike, MEASURES, shownIn } from '../../../src-core/motif/ruling'\nimport type { MeasureName } from '../../../src-core/motif/ruling'\n"))
sub('src-core/page/words.ts',
("export function nowWords(fact: PageFact, project: Project, motif: Motif): string | null {","export function nowWords(\n  fact: PageFact,\n  project: Project,\n  motif: Motif,\n  shape: MotifAccount['shape'] | null,\n): string | null {"),
("""      const measured = (motif.kind === 'rounds' ? motif.measured : motif) ?? {}
      const keys = ['overTips', 'across', 'sideToSide', 'pointToPoint', 'length'] as const
      const key = keys.find((one) => (measured[one] ?? 0) > 0)
      return key === undefined ? null : formatLength(measured[key]!, units)
""","""      const key = leading(motif, shape ?? undefined)
      const measured = (motif.kind === 'rounds' ? motif.measured : motif) ?? {}
      const now = key ? measured[key] : undefined
      return now === undefined ? null : formatLength(now, units)
"""),
("import { laidBlanketOf } from '../plans/layouts'\n","import { leading } from '../motif/ruling'\nimport { laidBlanketOf } from '../plans/layouts'\n"),
("import type { Motif, Project,","import type { MotifAccount } from '../../shared-types/plan'\nimport type { Motif, Project,"))
sub('src-core/page/proposals.ts',("nowWords(fact, project, motif)","nowWords(fact, project, motif, shape)"))
