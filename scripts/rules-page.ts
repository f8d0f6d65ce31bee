// Writes docs/rules.md from the rules themselves and the cases of their tests: `npx tsx scripts/rules-page.ts`.
import { writeFileSync } from 'node:fs'
import { rulesPage } from '../test/check/rules-page.ts'

writeFileSync('docs/rules.md', rulesPage())
