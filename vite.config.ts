import { copyFileSync, mkdirSync, readdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

const root = import.meta.dirname ?? process.cwd()
const outDir = resolve(root, 'dist/renderer')

/**
 * The page and its worker. Paths are relative, so that any host may serve the folder; nothing is inlined as a data
 * address; each script and style tag carries the placeholder that the host replaces with a fresh nonce per load.
 */
export default defineConfig({
  root: resolve(root, 'renderer'),
  base: './',
  html: { cspNonce: '__CSP_NONCE__' },
  plugins: [
    react(),
    {
      name: 'samples',
      /** Where the hosts look for them. */
      writeBundle({ dir = outDir }) {
        const [from, to] = [resolve(root, 'samples'), join(dir, 'samples')]
        mkdirSync(to, { recursive: true })
        for (const file of readdirSync(from))
          if (file.endsWith('.slabwright.json')) copyFileSync(join(from, file), join(to, file))
      },
    },
    {
      name: 'pictures of PDF pages',
      /** JPEG 2000 without WebAssembly, which the page's policy keeps out; fetched only for a page that has one. */
      writeBundle({ dir = outDir }) {
        mkdirSync(join(dir, 'pdf'), { recursive: true })
        for (const file of ['openjpeg_nowasm_fallback.js', 'LICENSE_OPENJPEG', 'LICENSE_PDFJS_OPENJPEG'])
          copyFileSync(resolve(root, 'node_modules/pdfjs-dist/wasm', file), join(dir, 'pdf', file))
      },
    },
  ],
  worker: { format: 'es' },
  build: {
    outDir,
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: true,
    chunkSizeWarningLimit: 1500,
    rolldownOptions: {
      output: {
        // Parsed beside the rest, on a thread of its own.
        codeSplitting: { groups: [{ name: 'react', test: /node_modules[\\/](react|react-dom|scheduler)[\\/]/ }] },
      },
    },
  },
})
