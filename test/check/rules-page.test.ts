import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { rulesPage } from './rules-page.ts'

it('docs/rules.md is what the rules say today', () => {
  expect(readFileSync('docs/rules.md', 'utf8'), 'write it anew: npx tsx scripts/rules-page.ts').toBe(rulesPage())
})
