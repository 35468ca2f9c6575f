/** Builds the window: plain files for the desktop's own protocol and for the loopback server alike. */
import { fileURLToPath } from 'node:url'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vite'

const path = (name: string) => fileURLToPath(new URL(name, import.meta.url))

export default defineConfig({
  root: path('src-renderer'),
  base: './',
  plugins: [svelte({ configFile: false })],
  build: {
    outDir: path('out/renderer'),
    emptyOutDir: true,
    target: 'chrome114',
    // Everything is a file of its own: the content security policy allows no scripts in the page.
    assetsInlineLimit: 0,
  },
})
