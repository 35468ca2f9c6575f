/** Reading rounds is the longest part of a small plan: each text is read once, whoever asks for it. */
import { afterAll, expect, it, vi } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import * as read from '../../../src-core/notation/read'
import { listExamples } from '../../../src-main/documents'
import { renderCharts, renderMap } from '../../../src-main/paper'
import { listCsv } from '../../../src-main/paper/lists'

// Files share modules: this one gets its own, which have read nothing yet, and leaves none behind.
vi.hoisted(() => vi.resetModules())
vi.mock('../../../src-core/notation/read', async (importOriginal) => {
  const original = await importOriginal<typeof read>()
  return { ...original, readRounds: vi.fn(original.readRounds) }
})
afterAll(() => {
  vi.doUnmock('../../../src-core/notation/read')
  vi.resetModules()
})

const DATE = new Date('2026-11-26T10:00:00Z')
const written = listExamples()
  .map(({ name, text }) => ({ name, project: JSON.parse(text) as Project }))
  .filter(({ project }) => project.motifs?.some(({ kind }) => kind === 'rounds'))

it.each(written)('$name: plan, map, lists and charts read each motif once', async ({ project }) => {
  const reading = vi.mocked(read.readRounds)
  reading.mockClear()
  const plan = planProject(project)
  await renderMap(plan, { date: DATE, version: '0' })
  listCsv('materials', plan)
  const motifs = plan.settled.motifs.flatMap((motif) => (motif.kind === 'rounds' ? [motif] : []))
  const requests = motifs.map((motif) => ({ settled: plan.settled, motif }))
  await renderCharts(requests, { date: DATE, version: '0' })
  const texts = reading.mock.calls.map(([text]) => text)
  expect(texts.length).toBeGreaterThan(0)
  expect(texts).toHaveLength(new Set(texts).size)
  // A joining round that was put in words is another text: it is read back once.
  const own = texts.filter((text) => !/ of neighbou?r\b/.test(text))
  expect(own.length).toBeLessThanOrEqual(motifs.length)
})
