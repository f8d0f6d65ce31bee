// Bundles the command line into dist/, so that it starts fast and without a TypeScript loader.
import { build } from 'esbuild'

await build({
  entryPoints: { cli: 'src/app/cli/main.ts' },
  outdir: 'dist',
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  packages: 'external',
  splitting: true,
  sourcemap: true,
  logLevel: 'warning',
})
