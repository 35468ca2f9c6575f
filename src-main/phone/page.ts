/**
 * The map as one file for a phone: it loads nothing, tells nobody, and works without a network. The drawing is the
 * one that is printed; motifs are marked as made on the phone and brought home as a short text.
 */
import { createHash } from 'node:crypto'
import type { Plan } from '../../shared-types/plan'
import { wholePicture } from '../../src-core/figures/whole-picture'
import { projectSentence, sentenceText } from '../../src-core/figures/sentence'
import { cautions } from '../paper/words'
import { escaped } from '../paper/svg'
import script from 'virtual:phone-script'
import { motifParts } from './motifs'
import { borderPart } from './border'
import { joiningPart } from './joining'
import { phoneData } from './data'
import type { PhoneData } from './data'
import { packed } from './packed'
import { writeDrawing } from './drawing'
import style from './style.css?raw'
import { PHONE_WORDS as WORDS, progressWords } from './words'

export interface PhonePageOptions {
  /** Version of the program. */
  readonly version: string
}

/** The page as HTML. Same plan: same bytes. */
export function phonePage(plan: Plan, { version }: PhonePageOptions): string {
  const { settled } = plan
  const terms = settled.sheet.terms
  // Marks change on the phone: the page draws them itself.
  const unmarked: Plan = { ...plan, marks: { made: [], joined: [] } }
  const drawing = wholePicture(unmarked, { look: 'colour', numbered: true })
  // Marks stay with the project when its page is written anew.
  const key = hash(`${settled.title}|${settled.designer}|${plan.kind}`).slice(0, 16)
  const data = phoneData(plan, drawing, `petalyard ${key}`)
  const title = escaped(settled.title || 'Petalyard')
  const { definitions, items, runs } = writeDrawing(drawing)
  const made = new Set(data.made)
  const ticked = data.pieces.filter(({ id }) => made.has(id)).length
  const markable = data.pieces.filter(({ id }) => id !== '').length
  const { width, height } = data
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${hash(script, 'base64')}'`,
    `style-src 'sha256-${hash(style, 'base64')}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')
  return `<!doctype html>
<html lang="${terms === 'UK' ? 'en-GB' : 'en-US'}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<meta name="generator" content="Petalyard ${escaped(version)}">
<title>${title}</title>
<style>${style}</style>
</head>
<body>
<header>
<h1>${title}</h1>
<p id="progress" role="status">${progressWords(data.pieces, ticked)}</p>
<progress id="bar" max="${Math.max(1, markable)}" value="${ticked}" aria-hidden="true"></progress>
</header>
<noscript><p>${WORDS.noScript}</p></noscript>
<main>
<section class="map-part">
<div id="map" tabindex="0" role="application" aria-label="${WORDS.map}" aria-describedby="where">
<svg id="whole" viewBox="0 0 ${width} ${height}" preserveAspectRatio="xMidYMid meet" aria-hidden="true" focusable="false">
<defs>
${definitions.join('\n')}
</defs>
<g id="drawing" stroke-linejoin="round">
<rect width="${width}" height="${height}" fill="#ffffff"/>
${items}
</g>
<g id="marks"></g>
<circle id="ring" r="0" fill="none"/>
</svg>
</div>
<div class="tools">
<button type="button" id="closer" aria-label="${WORDS.zoomIn}">+</button>
<button type="button" id="wider" aria-label="${WORDS.zoomOut}">−</button>
<button type="button" id="everything">${WORDS.whole}</button>
</div>
</section>
<section id="card" class="card">
<div id="where" aria-live="polite"><p>${WORDS.first}</p></div>
<div id="about" hidden>
<svg id="picture" role="img" aria-label=""><use href="#drawing"/><g id="petals"></g></svg>
<ul id="words"></ul>
<p class="tick"><label><input type="checkbox" id="made"> ${WORDS.made}</label></p>
</div>
<div class="steps">
<button type="button" id="previous">${WORDS.previous}</button>
<button type="button" id="next-to-make">${WORDS.nextToMake}</button>
<button type="button" id="next">${WORDS.next}</button>
</div>
</section>
<section>
<h2>${WORDS.all}</h2>
<div id="list"></div>
</section>
<section>
<h2>${WORDS.key(terms)}</h2>
<p>${WORDS.keyRemark(terms)}</p>
${keyList(data)}
</section>
${joiningPart(plan, terms)}${motifParts(plan, terms)}${borderPart(plan, terms)}<section>
<h2>${WORDS.home}</h2>
<p>${WORDS.homeRemark}</p>
<textarea id="home" readonly rows="4" aria-label="${WORDS.homeText}"></textarea>
<div class="buttons"><button type="button" id="copy">${WORDS.copy}</button>
<button type="button" id="clear">${WORDS.clear}</button></div>
<p id="said" role="status"></p>
</section>
${cautionPart(plan)}<footer><p>${escaped(sentenceText(projectSentence(plan, terms)))}</p></footer>
</main>
<script type="application/json" id="data">${packed(data, runs)}</script>
<script>${script}</script>
</body>
</html>
`
}

function keyList({ ways }: PhoneData): string {
  const entries = ways.map(({ code, name, yarns, colours }) => {
    const step = 24 / Math.max(1, colours.length)
    const bars = colours.map(
      (colour, i) => `<rect x="${i * step}" width="${step}" height="24" fill="${escaped(colour)}"/>`,
    )
    const words = [code, name, yarns].filter(Boolean).map(escaped).join(' · ')
    return `<li><svg width="24" height="24" aria-hidden="true" focusable="false">${bars.join('')}</svg> ${words}</li>`
  })
  return `<ul class="key">\n${entries.join('\n')}\n</ul>`
}

function cautionPart({ settled }: Plan): string {
  const list = cautions(settled, settled.sheet.terms)
  if (list.length === 0) return ''
  const parts = list.map(({ title, text }) => `<h3>${escaped(title)}</h3>\n<p>${escaped(text)}</p>`)
  return `<section>\n<h2>${WORDS.cautions}</h2>\n${parts.join('\n')}\n</section>\n`
}

const hash = (text: string, as: 'hex' | 'base64' = 'hex'): string =>
  createHash('sha256').update(text, 'utf8').digest(as)
