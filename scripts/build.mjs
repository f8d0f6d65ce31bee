// Bundles the command line into dist/, so that it starts fast and without a TypeScript loader, and the page into dist/page/.
import { existsSync } from 'node:fs'
import { build } from 'esbuild'
import { build as buildPage } from 'vite'

const done = ['dist/cli.js', 'dist/page/index.html'].every((path) => existsSync(path))
if (process.argv.includes('--if-needed') && done) process.exit()

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

if (!process.argv.includes('--no-page')) await buildPage({ logLevel: 'warn' })
