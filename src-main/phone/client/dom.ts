/** Elements of the page by their ids, of the kind that they must be. */
type Kind<Element> = abstract new () => Element

export function byId<Own extends Element>(id: string, kind: Kind<Own>): Own {
  const found = document.getElementById(id)
  if (!(found instanceof kind)) throw new Error(`no ${id} on the page`)
  return found
}

export const text = (element: Element): string => element.textContent ?? ''

const SVG = 'http://www.w3.org/2000/svg'

/** An element of a drawing with its attributes. */
export function drawn(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const element = document.createElementNS(SVG, name)
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value))
  return element
}

/** An element with text in it. */
export function written<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  words: string,
  className = '',
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name)
  element.textContent = words
  if (className !== '') element.className = className
  return element
}
