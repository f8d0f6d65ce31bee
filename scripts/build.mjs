// Bundles the command line into dist/, so that it starts fast and without a TypeScript loader, and the page into dist/page/.
import { existsSync, readdirSync, rmSync, statSync } from 'node:fs'
import { build } from 'esbuild'
import { build as buildPage } from 'vite'

const done = ['dist/cli.js', 'dist/page/index.html'].every((path) => existsSync(path))
if (process.argv.includes('--if-needed') && done) process.exit()

/** Libraries written as CommonJS ask for Node's own modules by `require`. */
const REQUIRE = "import{createRequire as makeRequire}from'node:module';const require=makeRequire(import.meta.url);"

/** The reader of fonts knows a packed form that no font of ours has; its dictionary alone is half a megabyte. */
const noPackedFonts = {
  name: 'no packed fonts',
  setup(build) {
    build.onResolve({ filter: /^brotli\/decompress\.js$/ }, ({ path }) => ({ path, namespace: 'absent' }))
    build.onLoad({ filter: /.*/, namespace: 'absent' }, () => ({
      contents: 'export default () => { throw new Error("WOFF2 fonts are not read") }',
    }))
  },
}

const { metafile } = await build({
  entryPoints: {
    cli: 'src/app/cli/main.ts',
    'stack-worker': 'src/app/cli/stack-worker.ts',
    'view-worker': 'src/app/cli/view-worker.ts',
  },
  outdir: 'dist',
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  // one file instead of hundreds to look for; the kernel finds its binary beside itself
  external: ['replicad-opencascadejs'],
  plugins: [noPackedFonts],
  splitting: true,
  metafile: true,
  minifySyntax: true,
  minifyWhitespace: true,
  banner: { js: REQUIRE },
  sourcemap: true,
  logLevel: 'warning',
})

// what earlier builds left; a program that is still running may yet load a piece of the last one
const HOUR = 3_600_000
for (const name of readdirSync('dist')) {
  const path = `dist/${name}`
  if (/\.js(?:\.map)?$/.test(name) && !(path in metafile.outputs) && Date.now() - statSync(path).mtimeMs > HOUR)
    rmSync(path)
}

if (!process.argv.includes('--no-page')) await buildPage({ logLevel: 'warn' })
