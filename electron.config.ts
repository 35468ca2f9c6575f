/**
 * Builds what stands behind the window: the desktop's main process and the loopback server (CommonJS for
 * Node 18, the oldest that they meet), and the preload in one piece, since a sandboxed one cannot load
 * files, and the client that does the preload's work in a browser. scripts/window-build.mjs checks what the
 * preload asks for.
 */
import { builtinModules } from 'node:module'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'
import type { UserConfig } from 'vite'
import { phoneScript } from './scripts/phone-script.mjs'

const path = (name: string) => fileURLToPath(new URL(name, import.meta.url))
const builtins = [...builtinModules, ...builtinModules.map((name) => `node:${name}`)]

const common = {
  configFile: false,
  root: path('.'),
  publicDir: false,
  ssr: { noExternal: true, target: 'node' },
} as const

/** The desktop's main process (desktop.cjs), the loopback server (browser.cjs) and the paper's worker (paper.cjs). */
export const mainConfig: UserConfig & { configFile: false } = {
  ...common,
  plugins: [phoneScript()],
  build: {
    ssr: true,
    outDir: path('out/main'),
    emptyOutDir: true,
    target: 'node18',
    minify: false,
    sourcemap: true,
    rolldownOptions: {
      input: {
        desktop: path('src-main/desktop/main.ts'),
        browser: path('src-main/browser/main.ts'),
        paper: path('src-main/host/paper-worker.ts'),
      },
      external: ['electron', 'original-fs', ...builtins],
      output: { format: 'cjs', entryFileNames: '[name].cjs', chunkFileNames: '[name]-[hash].cjs' },
    },
  },
}

/** The preload (preload.cjs), beside the main process. */
export const preloadConfig: UserConfig & { configFile: false } = {
  ...common,
  build: {
    ssr: true,
    outDir: path('out/main'),
    emptyOutDir: false,
    target: 'chrome114',
    minify: false,
    rolldownOptions: {
      input: { preload: path('src-main/desktop/preload.ts') },
      external: ['electron', ...builtins],
      output: { format: 'cjs', entryFileNames: '[name].cjs', codeSplitting: false },
    },
  },
}

/** A plain script for the browser. */
const scriptConfig = (name: string, source: string): UserConfig & { configFile: false } => ({
  configFile: false,
  root: path('.'),
  publicDir: false,
  build: {
    outDir: path('out/main'),
    emptyOutDir: false,
    target: 'chrome114',
    minify: false,
    rolldownOptions: {
      input: { [name]: path(source) },
      output: { format: 'iife', entryFileNames: '[name].js' },
    },
  },
})

/** The browser's client of the loopback server (client.js), run before the window's own scripts. */
export const clientConfig = scriptConfig('client', 'src-main/browser/client.ts')

/** The worker in which the tabs of a browser share one stream (stream.js). */
export const streamConfig = scriptConfig('stream', 'src-main/browser/stream-worker.ts')

/** The script of its door (enter.js). */
export const entryConfig = scriptConfig('enter', 'src-main/browser/enter.ts')

export default defineConfig(mainConfig)
