// Writes docs/rules.md and its pictures from the rules themselves and the cases of their tests: `npm run rules-page`.
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { rules } from '../src/check/rules/rules.ts'
import { openKernel } from '../src/kernel/open.ts'
import { cases } from '../test/check/cases.ts'
import { rulePicture } from '../test/check/rule-picture.ts'
import { PICTURES, rulesPage } from '../test/check/rules-page.ts'

writeFileSync('docs/rules.md', rulesPage())
const kernel = await openKernel()
mkdirSync(PICTURES, { recursive: true })
const written = new Set<string>()
for (const rule of rules) {
  const found = cases.find((c) => c.rule === rule.name)
  if (!found) continue
  const name = `${rule.name}.svg`
  writeFileSync(`${PICTURES}/${name}`, rulePicture(rule, found, kernel))
  written.add(name)
}
for (const name of readdirSync(PICTURES)) if (!written.has(name)) rmSync(`${PICTURES}/${name}`)
