/** Every text that people may read, with its place: literals of TypeScript, markup of Svelte, prose of pages. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parse } from 'svelte/compiler'
import ts from 'typescript'

const root = fileURLToPath(new URL('..', import.meta.url))

export interface Text {
  readonly path: string
  readonly line: number
  readonly text: string
  /** It goes through the room of spelling before anybody reads it. */
  readonly spelled?: boolean
}

/** What spells a text for its reader, as a tag or as a function. */
const SPELLERS = /^(say|saying|spelled|spelledValue|inSpelling)$/

const ROOMS = ['src-core', 'src-main', 'src-renderer', 'shared-types']

/** Pages that people read; those for who changes the program are not among them. */
const isForPeople = (path: string): boolean => !/^docs\/(decisions\/|architecture\.md|words\.md)/.test(path)

function* filesIn(folder: string): Generator<string> {
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = `${folder}/${entry.name}`
    if (entry.isDirectory()) yield* filesIn(path)
    else yield path
  }
}

const lineAt = (source: string, offset: number): number => source.slice(0, offset).split('\n').length

/** A word without a blank and in lower case is a key of the program, unless it is markup. */
const isProse = (text: string): boolean => /[A-Za-z]/.test(text) && !/^[a-z][\w./:#-]*$/.test(text.trim())

/** Where a literal is compared, imported, a key or a type, nobody reads it. */
function isForTheProgram({ parent }: ts.Node): boolean {
  return (
    ts.isImportDeclaration(parent) ||
    ts.isExportDeclaration(parent) ||
    ts.isLiteralTypeNode(parent) ||
    ts.isElementAccessExpression(parent) ||
    (ts.isNewExpression(parent) && parent.expression.getText() === 'RegExp')
  )
}

/** Whether a literal stands in a tag or a call that spells it: say`…`, saying(terms)`…`, spelled('…'). */
function isSpelled(node: ts.Node): boolean {
  const spells = (called: ts.Expression): boolean =>
    ts.isCallExpression(called) ? spells(called.expression) : SPELLERS.test(called.getText())
  for (let at = node.parent; at && !ts.isStatement(at) && !ts.isFunctionLike(at); at = at.parent) {
    if (ts.isTaggedTemplateExpression(at)) return spells(at.tag)
    if (ts.isCallExpression(at) && spells(at.expression)) return true
  }
  return false
}

function textsOfScript(path: string, source: string): Text[] {
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true)
  const found: Text[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) {
      if (isProse(node.text) && !isForTheProgram(node))
        found.push({
          path,
          line: file.getLineAndCharacterOfPosition(node.getStart()).line + 1,
          text: node.text,
          spelled: isSpelled(node),
        })
    }
    ts.forEachChild(node, visit)
  }
  visit(file)
  return found
}

/** What of an attribute's value is for the program alone. */
const SILENT = new Set([
  'class',
  'style',
  'id',
  'for',
  'd',
  'href',
  'type',
  'role',
  'name',
  'viewBox',
  'points',
  'transform',
])

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null

function textsOfMarkup(path: string, source: string): Text[] {
  const found: Text[] = []
  let spelled = 0
  const keep = (text: unknown, node: Readonly<Record<string, unknown>>, isMarkup = false): void => {
    if (typeof text !== 'string' || typeof node.start !== 'number') return
    if (isMarkup ? /[A-Za-z]/.test(text) : isProse(text))
      found.push({ path, line: lineAt(source, node.start), text, spelled: spelled > 0 })
  }
  const nameOf = (called: unknown): string => {
    if (!isObject(called)) return ''
    return called.type === 'CallExpression' ? nameOf(called.callee) : String(called.name ?? '')
  }
  const visit = (node: unknown): void => {
    if (Array.isArray(node)) return node.forEach(visit)
    if (!isObject(node)) return
    const { type } = node
    if (type === 'StyleSheet' || type === 'Comment' || type === 'ImportDeclaration') return
    if (typeof type === 'string' && type.startsWith('TS') && !/^TS(As|Satisfies|NonNull)/.test(type)) return
    if (type === 'Attribute' && SILENT.has(String(node.name))) return
    const spells = SPELLERS.test(
      nameOf(type === 'TaggedTemplateExpression' ? node.tag : type === 'CallExpression' ? node.callee : null),
    )
    if (spells) spelled++
    if (type === 'Text') keep(node.data, node, true)
    if (type === 'Literal') keep(node.value, node)
    if (type === 'TemplateElement' && isObject(node.value)) keep(node.value.cooked, node)
    for (const [key, child] of Object.entries(node))
      if (key !== 'comments' && key !== 'leadingComments' && key !== 'trailingComments') visit(child)
    if (spells) spelled--
  }
  visit(parse(source, { modern: true }))
  return found
}

/** Prose by paragraph, without what stands as code. */
const textsOfPage = (path: string, source: string): Text[] =>
  source
    .replace(/^```[\s\S]*?^```/gm, (code) => code.replace(/[^\n]/g, ''))
    .replace(/`[^`\n]*`/g, '``')
    .replace(/\]\([^)\n]*\)/g, ']')
    .split('\n')
    .map((text, index) => ({ path, line: index + 1, text }))

function textsOf(path: string): Text[] {
  const source = readFileSync(join(root, path), 'utf8')
  if (path.endsWith('.svelte')) return textsOfMarkup(path, source)
  return path.endsWith('.md') ? textsOfPage(path, source) : textsOfScript(path, source)
}

/** All of them. */
export function textsForPeople(): Text[] {
  const paths = ROOMS.flatMap((room) => [...filesIn(room)]).filter((path) =>
    /(?<!\.d)\.(ts|svelte)$/.test(path),
  )
  const pages = ['README.md', ...[...filesIn('docs')].filter((path) => path.endsWith('.md'))].filter(
    isForPeople,
  )
  return [...paths, ...pages].flatMap(textsOf)
}

/** A page of the project as it stands. */
export const pageText = (path: string): string => readFileSync(join(root, path), 'utf8')
