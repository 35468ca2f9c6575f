/**
 * The script of the page for a phone, as text that another module can import: the page is one file, so its script
 * is built in one piece when the program is.
 */
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { bundledPackages } from './bundled.mjs'

const NAME = 'virtual:phone-script'
const source = fileURLToPath(new URL('../src-main/phone/client/main.ts', import.meta.url))

/** Phones of the last five years. */
const TARGET = ['chrome93', 'safari15', 'firefox92']

/** @returns {Promise<string>} */
async function builtScript(bundled) {
  const made = await build({
    configFile: false,
    logLevel: 'silent',
    publicDir: false,
    plugins: [bundledPackages(bundled)],
    build: {
      write: false,
      target: TARGET,
      minify: true,
      rolldownOptions: { input: { phone: source }, output: { format: 'iife' } },
    },
  })
  const output = [made].flat().flatMap((result) => ('output' in result ? result.output : []))
  const script = output.find((entry) => entry.type === 'chunk')
  if (output.length !== 1 || script?.type !== 'chunk')
    throw new Error('the script of the phone is not one piece')
  // An end tag would end the script element.
  return script.code.replace(/<\/script/gi, '<\\/script')
}

/** Gives `virtual:phone-script` to whoever imports it. */
export function phoneScript() {
  const bundled = new Set()
  return {
    name: 'petalyard:phone-script',
    // What of others is in it, for the build around it.
    api: { bundled },
    resolveId: (id) => (id === NAME ? `\0${NAME}` : null),
    load: async (id) =>
      id === `\0${NAME}` ? `export default ${JSON.stringify(await builtScript(bundled))}` : null,
  }
}
