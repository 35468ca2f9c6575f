/** What a sandboxed preload may ask for; with anything else the window would stay white. */
const ALLOWED = new Set(['electron', 'events', 'timers', 'url', 'node:events', 'node:timers', 'node:url'])
const ASKED = /\brequire\(\s*(["'`])(.+?)\1\s*\)|\bimport\s*\(|\brequire\(\s*[^"'`\s]/g

/** What the text of a built preload asks for and its sandbox lacks, each once. */
export function preloadStrangers(text) {
  const asked = [...text.matchAll(ASKED)].map((match) => match[2] ?? match[0].trim())
  return [...new Set(asked.filter((name) => !ALLOWED.has(name)))]
}
