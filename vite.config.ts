import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'

/** The reader of fonts knows a packed form that no font of ours has; its dictionary alone is half a megabyte. */
const noPackedFonts = {
  name: 'no-packed-fonts',
  enforce: 'pre' as const,
  resolveId: (id: string) => (/^brotli\/decompress\.js$/.test(id) ? '\0no-packed-fonts' : undefined),
  load: (id: string) =>
    id === '\0no-packed-fonts'
      ? 'export default () => { throw new Error("WOFF2 fonts are not read") }'
      : undefined,
}

/** Writes down the files of the build that the page needs, for keeping them in the browser (offline.ts). */
const fileList: Plugin = {
  name: 'file-list',
  enforce: 'post',
  generateBundle(_, bundle) {
    const files = Object.keys(bundle).filter((name) => /^assets\/.*\.(?:js|css|wasm|woff2|ttf)$/.test(name))
    this.emitFile({ type: 'asset', fileName: 'files.json', source: JSON.stringify(files.sort()) })
  },
}

export default defineConfig({
  root: 'src/app/page',
  base: './',
  plugins: [noPackedFonts, react(), fileList],
  build: {
    outDir: '../../../dist/page',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 4000,
    reportCompressedSize: false,
    rolldownOptions: {
      input: { index: 'src/app/page/index.html', offline: 'src/app/page/offline.ts' },
      // Found by its name, at the page's own place: it serves no farther than it lies.
      output: { entryFileNames: ({ name }) => (name === 'offline' ? 'offline.js' : 'assets/[name]-[hash].js') },
    },
  },
  worker: { format: 'es', plugins: () => [noPackedFonts] },
})
