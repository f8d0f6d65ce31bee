import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

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

export default defineConfig({
  root: 'src/app/page',
  base: './',
  plugins: [noPackedFonts, react()],
  build: {
    outDir: '../../../dist/page',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 4000,
    reportCompressedSize: false,
  },
  worker: { format: 'es', plugins: () => [noPackedFonts] },
})
