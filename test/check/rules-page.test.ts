import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { rules } from '../../src/check/rules/rules.ts'
import { openKernel } from '../../src/kernel/open.ts'
import { cases } from './cases.ts'
import { rulePicture } from './rule-picture.ts'
import { PICTURES, rulesPage } from './rules-page.ts'

const ANEW = 'write it anew: npm run rules-page'
const pictured = rules.filter((r) => cases.some((c) => c.rule === r.name))

it('docs/rules.md is what the rules say today', () => {
  expect(readFileSync('docs/rules.md', 'utf8'), ANEW).toBe(rulesPage())
})

it('has a picture of every rule with a case, and no other', () => {
  expect(readdirSync(PICTURES).sort(), ANEW).toEqual(pictured.map((r) => `${r.name}.svg`).sort())
  for (const { name } of pictured) {
    const path = `${PICTURES}/${name}.svg`
    expect(existsSync(path), path).toBe(true)
    expect(readFileSync(path, 'utf8'), path).toMatch(/class="words bad"/)
  }
})

// All of them take a minute; these stand for views, title block and frames.
it.each(['hole-near-edge', 'number-missing', 'position-of-surface'])(
  'the picture of %s is drawn anew alike',
  async (name) => {
    const kernel = await openKernel()
    const rule = rules.find((r) => r.name === name)!
    const made = rulePicture(rule, cases.find((c) => c.rule === name)!, kernel)
    expect(readFileSync(`${PICTURES}/${name}.svg`, 'utf8'), ANEW).toBe(made)
  },
)
