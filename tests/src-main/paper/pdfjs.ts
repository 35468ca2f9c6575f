/**
 * pdf.js, with which tests read files back. Its build for Node puts functions of its own in the place of the engine's
 * (`push` among them, many times slower) for all that the process runs, the program under test too: each goes back to
 * its place. It inflates every stream in a thread, which for hundreds of small ones takes longer than doing it itself.
 */
const holders = [Array.prototype, Function.prototype, JSON, Number]
const natives = holders.map((holder) => Object.getOwnPropertyDescriptors(holder))

export const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs')
// Reading would load it, and change everything once more.
await import('pdfjs-dist/legacy/build/pdf.worker.mjs')

holders.forEach((holder, i) => {
  for (const [name, native] of Object.entries(natives[i]!))
    if (native.configurable) Object.defineProperty(holder, name, native)
})
Reflect.deleteProperty(globalThis, 'DecompressionStream')
