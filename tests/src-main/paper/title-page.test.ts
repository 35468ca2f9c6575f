/** The title page of a pattern and the house style: what is told, where, in which colour, and what is refused. */
import { decode, encode } from 'fast-png'
import { PDFDocument, PDFName, PDFRawStream } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { NO_HOUSE } from '../../../shared-types/house'
import type { House } from '../../../shared-types/house'
import { SKILLS } from '../../../shared-types/project'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { mapPages, renderMap } from '../../../src-main/paper/index'
import { logoOf, normalLogo } from '../../../src-main/paper/logo'
import { SKILL_WORDS } from '../../../src-main/paper/words-title'
import { readSheets } from './checker/read-sheets'
import { EXAMPLES, planOf } from './examples'
import { DATE, flowers, VERSION } from './projects'

const options = { date: DATE, version: VERSION } as const
const PATTERN: Project['pattern'] = {
  line: 'Worked from what is left over',
  skill: 'easy',
  copyright: '© 2026 Wren Hollis. For your own use.',
}
const published = (): Project => ({
  ...flowers({ columns: 4, rows: 5 }),
  title: 'Tidewrack throw',
  designer: 'Wren Hollis',
  pattern: PATTERN,
})

/** A red square beside a half transparent blue one, as a file of eight bits. */
const squares = (): Uint8Array => {
  const [width, height] = [20, 10]
  const data = new Uint8Array(width * height * 4)
  for (let i = 0; i < width * height; i++)
    data.set(i % width < 10 ? [200, 0, 0, 255] : [0, 0, 200, 128], 4 * i)
  return encode({ width, height, channels: 4, depth: 8, data })
}
const house = async (change: Partial<House> = {}): Promise<House> => ({
  ...NO_HOUSE,
  name: 'Larkspur Yarns',
  address: '12 Quay Street, Arbroath\nlarkspur.example',
  accent: '#2f5d50',
  logo: await normalLogo(squares()),
  ...change,
})

describe('the title page', () => {
  it('is the first page, where the project or the house asks for it', async () => {
    const first = (project: Project, more = {}) => mapPages(planProject(project), { ...options, ...more })[0]!
    const own = published()
    expect(first(own).section).toBe('overview')
    expect(first({ ...own, sheet: { titlePage: true } }).section).toBe('title')
    const withPage = await house({ titlePage: true })
    expect(first(own, { house: withPage }).section).toBe('title')
    // The project has the last word.
    expect(first({ ...own, sheet: { titlePage: false } }, { house: withPage }).section).toBe('overview')
    expect(first(own, { sheets: ['title'] }).section).toBe('title')
  })

  it('is followed by the pages that the house wants; notes and cautions find another place', () => {
    const own: Project = { ...published(), notes: 'Block before you join.\n'.repeat(3) }
    const told = (leaveOut: House['leaveOut']) => {
      const pages = mapPages(planProject(own), { ...options, house: { ...NO_HOUSE, leaveOut } })
      const texts = pages
        .flatMap(({ figure }) => figure.items)
        .map((item) => ('text' in item ? item.text : ''))
      return { sections: new Set(pages.flatMap(({ sections }) => sections)), words: texts.join(' ') }
    }
    const [all, lean] = [told([]), told(['order', 'materials', 'motif', 'progress'])]
    expect([...all.sections]).toEqual(expect.arrayContaining(['overview', 'order', 'materials', 'motif']))
    for (const section of ['order', 'materials', 'motif', 'progress'] as const)
      expect(lean.sections.has(section)).toBe(false)
    expect(lean.words).toContain('Block before you join.')
    expect(lean.sections.has('overview')).toBe(true)
  })

  it('is followed by the cautions, whatever the house leaves out', () => {
    const all = EXAMPLES.map(({ project }) => project)
    const cautioned = all.filter(({ forChild, layout }) => forChild === true || layout?.kind === 'applique')
    expect(cautioned.length).toBeGreaterThan(1)
    for (const project of cautioned) {
      const pages = mapPages(planOf(project), {
        ...options,
        leaveOut: ['order', 'materials', 'motif', 'progress'],
      })
      const texts = pages
        .flatMap(({ figure }) => figure.items)
        .map((item) => ('text' in item ? item.text : ''))
      expect(texts, project.title).toContain('Take care')
    }
  })

  it('tells what it is, whose, what it takes, and where everything stands', async () => {
    const plan = planProject(published())
    const bytes = await renderMap(plan, { ...options, sheets: ['title', 'map'], house: await house() })
    const [title, ...behind] = await readSheets(bytes)
    for (const words of [
      'Tidewrack throw',
      'Worked from what is left over',
      'Designed by Wren Hollis',
      'Skill level Easy',
      'Finished size',
      'Hook',
      'Gauge',
      'Written in US terms, right-handed',
      'Larkspur Yarns',
      '12 Quay Street, Arbroath',
      'larkspur.example',
      '© 2026 Wren Hollis. For your own use.',
    ])
      // prettier-ignore
      expect(title!.words.replace(/\s+/g, ' ')).toContain(words)
    expect(plan.yarns.length).toBeGreaterThan(2)
    for (const { id } of plan.yarns)
      expect(title!.words).toContain(`${plan.settled.yarns.find((yarn) => yarn.id === id)!.name}: `)
    // What a buyer takes to the shop: whole skeins, but where nobody entered what one weighs.
    for (const { id, balls, assumed } of plan.yarns) {
      const name = plan.settled.yarns.find((yarn) => yarn.id === id)!.name
      const told = new RegExp(`${name}: [^:]*?, ${balls} skeins?\\b`)
      if (balls !== null && !assumed?.includes('balls')) expect(title!.words).toMatch(told)
    }
    expect(plan.yarns.some(({ balls }) => balls !== null)).toBe(true)
    // Each part stands on the page that is told.
    const pages = mapPages(plan, { ...options, sheets: ['title', 'map'] })
    expect(pages).toHaveLength(behind.length + 1)
    const sections = [...new Set(pages.slice(1).map(({ section }) => section))]
    for (const section of sections) {
      const page = pages.find((each) => each.section === section)!
      expect(title!.words.replace(/\s+/g, ' ')).toContain(`${page.name.split(',')[0]} ${page.number}`)
    }
  })

  it('says nothing of what nobody told', async () => {
    const { pattern: _, designer: __, ...bare } = published()
    const bytes = await renderMap(planProject(bare), { ...options, sheets: ['title'] })
    const [title] = await readSheets(bytes)
    expect(title!.words).not.toMatch(/Skill|Designed|©|Inside|undefined/)
  })

  it('has its colour and its logo in colour, and is grey in ink', async () => {
    const plan = planProject({ ...published(), sheet: { titlePage: true } })
    const given = await house()
    const draw = (style: 'colour' | 'ink') =>
      mapPages(plan, { ...options, style, house: given })[0]!.figure.items.flatMap((item) => [item])
    const titleIn = (style: 'colour' | 'ink') =>
      draw(style).find((item) => item.kind === 'text' && item.text === 'Tidewrack throw')
    expect(titleIn('colour')).toMatchObject({ colour: '#2f5d50' })
    expect(titleIn('ink')).toMatchObject({ colour: '#000000' })
    // As light as the colours were (ITU-R BT.709), as transparent as before.
    const logo = draw('ink').find((item) => item.kind === 'image')!
    const { channels, data } = decode(Buffer.from(logo.kind === 'image' ? logo.png : '', 'base64'))
    expect(channels).toBe(2)
    expect([data[0], data[1]]).toEqual([Math.round(0.2126 * 200), 255])
    expect([data[38], data[39]]).toEqual([Math.round(0.0722 * 200), 128])
    // A colour that could not be read on paper is left to the bar.
    const pale = mapPages(plan, { ...options, style: 'colour', house: { ...given, accent: '#f2e46b' } })[0]!
    expect(pale.figure.items.find((item) => item.kind === 'text' && item.text === 'Tidewrack throw')).toMatchObject(
      { colour: '#000000' },
    ) // prettier-ignore
  })

  it('puts a logo into the file once, and the same bytes come out twice', async () => {
    const plan = planProject({ ...published(), sheet: { titlePage: true } })
    const write = async () => renderMap(plan, { ...options, style: 'colour', house: await house() })
    const bytes = await write()
    expect(Buffer.from(await write()).equals(Buffer.from(bytes))).toBe(true)
    const file = await PDFDocument.load(bytes, { updateMetadata: false })
    const pictures = [...file.context.enumerateIndirectObjects()].flatMap(([, object]) =>
      object instanceof PDFRawStream && object.dict.get(PDFName.of('Subtype'))?.toString() === '/Image'
        ? [object.dict]
        : [],
    )
    // The colours, and how transparent they are.
    expect(pictures.map((dict) => dict.get(PDFName.of('Width'))?.toString())).toEqual(['20', '20'])
  })

  it('keeps the words whole however long they are, and fills no second page', async () => {
    const long = 'A very long name for a blanket that somebody really wrote '.repeat(6).trim()
    const text = 'Something to tell of it, at length. '.repeat(40)
    const project = published()
    const many = Array.from({ length: 30 }, (_, i) => ({
      id: `y${i}`,
      name: `Shade number ${i}`,
      fibre: 'wool',
    }))
    const plan = planProject({
      ...project,
      title: long,
      yarns: [...(project.yarns ?? []), ...many],
      pattern: { line: text, skill: 'complex', copyright: text },
    })
    const pages = mapPages(plan, {
      ...options,
      sheets: ['title'],
      house: await house({ address: text.slice(0, 600) }),
    })
    expect(pages).toHaveLength(1)
    const { figure } = pages[0]!
    for (const item of figure.items) {
      if (item.kind !== 'text') continue
      expect(item.y).toBeLessThan(figure.height - 10)
      expect(item.x).toBeGreaterThanOrEqual(12)
    }
  })

  it('of every example fits its page, with a picture that is worth having', async () => {
    for (const { project } of EXAMPLES) {
      const plan = planOf(project)
      const { figure } = mapPages(plan, { ...options, sheets: ['title', 'map'] })[0]!
      const picture = figure.items.find((item) => item.kind === 'group' && item.matrix?.[0] !== 1)
      expect(picture).toBeDefined()
      expect(Math.max(...figure.items.map((item) => (item.kind === 'text' ? item.y : 0)))).toBeLessThan(
        figure.height - 12,
      )
    }
  })

  it('names the four project levels (§project-levels)', () => {
    expect(SKILLS.map((skill) => SKILL_WORDS[skill])).toEqual(['Basic', 'Easy', 'Intermediate', 'Complex'])
  })
})

describe('a logo', () => {
  it('is drawn anew: PNG and SVG, nothing of the file but its looks', async () => {
    const secret = 'a comment that says where it was made'
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100"><!-- ${secret} --><rect width="200" height="100" fill="#ff0000"/></svg>`
    const logo = await normalLogo(new TextEncoder().encode(svg))
    expect(Buffer.from(logo.split(',')[1]!, 'base64').toString('latin1')).not.toContain(secret)
    const drawn = logoOf({ logo }, 'colour')!
    expect(drawn.width / drawn.height).toBeCloseTo(2, 2)
    const { data } = decode(Buffer.from(drawn.png, 'base64'))
    expect([...data.slice(0, 4)]).toEqual([255, 0, 0, 255])
    expect(logoOf({ logo: await normalLogo(squares()) }, 'colour')).toMatchObject({ width: 20, height: 10 })
  })

  it('fetches nothing that an SVG names', async () => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="10" height="10"><image width="10" height="10" href="file:///etc/hostname"/><image width="10" height="10" xlink:href="http://127.0.0.1:9/x.png"/></svg>`
    const drawn = logoOf({ logo: await normalLogo(new TextEncoder().encode(svg)) }, 'colour')!
    const { data } = decode(Buffer.from(drawn.png, 'base64'))
    expect(data.every((value) => value === 0)).toBe(true)
  })

  it('runs no script of an SVG, and keeps none', async () => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="10" height="10" onload="globalThis.ran=1"><script>globalThis.ran=1</script><rect width="10" height="10" fill="#00ff00"/></svg>`
    const logo = await normalLogo(new TextEncoder().encode(svg))
    expect('ran' in globalThis).toBe(false)
    // Pixels and nothing else: no text, no part of the file.
    const bytes = Buffer.from(logo.split(',')[1]!, 'base64')
    expect(bytes.toString('latin1')).not.toMatch(/script|onload|svg|tEXt|iTXt|zTXt/)
    expect([...decode(bytes).data.slice(0, 4)]).toEqual([0, 255, 0, 255])
  })

  it('is refused in one line where it is none', async () => {
    const bomb = Buffer.from(squares())
    const many = Array.from({ length: 50_000 }, (_, i) => `a${i}="1"`).join(' ')
    bomb.writeUInt32BE(60_000, 16)
    bomb.writeUInt32BE(60_000, 20)
    for (const [bytes, why] of [
      [new TextEncoder().encode('just words'), /neither a PNG nor an SVG/],
      [bomb, /too many pixels/],
      [Uint8Array.of(0xff, 0xd8, 0xff), /./],
      [new TextEncoder().encode('<svg'), /./],
      [
        new TextEncoder().encode(`<svg xmlns="http://www.w3.org/2000/svg"><g ${many}/></svg>`),
        /too many attributes/,
      ],
      [
        new TextEncoder().encode(
          '<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]><svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><desc>&b;</desc></svg>',
        ),
        /declares entities, which are not read/,
      ],
      [
        new TextEncoder().encode(
          '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100"><filter id="f" x="-1000" y="-1000" width="1e6" height="1e6"><feGaussianBlur stdDeviation="1e6"/><feOffset dx="1"/></filter><rect width="1e9" height="1e9" filter="url(#f)"/></svg>',
        ),
        /^it cannot be drawn$/,
      ],
      [
        new TextEncoder().encode(
          '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><filter id="f"><feTurbulence numOctaves="100000"/></filter><rect width="9" height="9" filter="url(#f)"/></svg>',
        ),
        /^it has an effect that takes too long to draw/,
      ],
    ] as const)
      await expect(normalLogo(bytes)).rejects.toThrow(why)
    // What was kept and came to harm is left out, and nothing else.
    expect(logoOf({ logo: 'data:image/png;base64,AAAA' }, 'ink')).toBeNull()
    expect(logoOf({ logo: `data:image/png;base64,${bomb.toString('base64')}` }, 'colour')).toBeNull()
    expect(
      logoOf(
        { logo: `data:image/png;base64,${Buffer.from(squares().slice(0, 60)).toString('base64')}` },
        'ink',
      ),
    ).toBeNull()
  })
})
