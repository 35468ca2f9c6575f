/**
 * Names that are written from right to left go their own way within what the window says: numbers and words behind
 * them stay where they are (UAX #9). Texts come from many rooms, the engine's findings among them; so this is done
 * where they are shown, in the page itself, and only where a project has such names.
 */

/** What people type in is theirs; Svelte compares with what it wrote, not with what stands there. */
const isOurs = (node: Node): node is Text =>
  node.nodeType === Node.TEXT_NODE && !node.parentElement?.closest('textarea, style, script')

/** Texts in and under a node, now and as they change; answers the way to stop. */
export function inTheirOwnWay(root: Node, isolate: (text: string) => string): () => void {
  function set(node: Text): void {
    const next = isolate(node.data)
    if (next !== node.data) node.data = next
  }
  function walk(node: Node): void {
    if (isOurs(node)) return set(node)
    const texts = document.createTreeWalker(node, NodeFilter.SHOW_TEXT)
    for (let at = texts.nextNode(); at; at = texts.nextNode()) if (isOurs(at)) set(at)
  }
  walk(root)
  const watch = new MutationObserver((changes) => {
    for (const { type, target, addedNodes } of changes)
      if (type === 'characterData') walk(target)
      else addedNodes.forEach(walk)
  })
  watch.observe(root, { subtree: true, childList: true, characterData: true })
  return () => watch.disconnect()
}
