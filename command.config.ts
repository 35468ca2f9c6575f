/**
 * Builds the command line: CommonJS with its lazy parts, to be run by Node without Electron. (As ES modules
 * those libraries would break that ask for `__filename`.)
 */
import { builtinModules } from 'node:module'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'
import { phoneScript } from './scripts/phone-script.mjs'

const builtins = [...builtinModules, ...builtinModules.map((name) => `node:${name}`)]

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  publicDir: false,
  plugins: [phoneScript()],
  ssr: { noExternal: true, target: 'node' },
  build: {
    ssr: 'src-main/command/main.ts',
    outDir: 'out/command',
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    sourcemap: false,
    rolldownOptions: {
      external: builtins,
      output: { format: 'cjs', entryFileNames: 'petalyard.cjs', chunkFileNames: '[name]-[hash].cjs' },
    },
  },
})
