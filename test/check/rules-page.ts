import { ruleGroups, rules } from '../../src/check/rules/rules.ts'
import { cases } from './cases.ts'

/** Where the pictures stand, from the root of the project. */
export const PICTURES = 'docs/pictures/rules'

/** The page of rules: what each says and why, its source, and a brief that raises it beside one that does not. */
export function rulesPage(): string {
  const out = [
    '# The checker’s rules',
    '',
    'Written by `npm run rules-page` from the rules and the cases of their tests; do not edit by hand. How the',
    'checker works is in `check.md`. Each picture shows the sheet that raises the rule and its twin. The briefs stand under a complete header; `no material` drops its statement.',
    '',
    `${rules.length} rules: ${ruleGroups.map((g) => `${g.rules.length} on ${g.name}`).join(', ')}.`,
  ]
  for (const group of ruleGroups) {
    out.push('', `# ${group.name[0]!.toUpperCase()}${group.name.slice(1)}`)
    for (const rule of group.rules) {
      out.push('', `## ${rule.name}`, '', `${rule.about}`, '', `${capital(rule.weight)}. Source: ${rule.source}.`)
      const found = cases.find((c) => c.rule === rule.name)
      if (found) out.push('', `![${rule.name}](pictures/rules/${rule.name}.svg)`)
      if (found)
        out.push(
          '',
          'Raised by',
          '',
          ...fenced(found.bad),
          '',
          ...(found.spoilt ? [found.spoilt.words, ''] : []),
          'and not by',
          '',
          ...fenced(found.good),
        )
    }
  }
  return `${out.join('\n')}\n`
}

const capital = (text: string) => text[0]!.toUpperCase() + text.slice(1)
const fenced = (text: string) => ['```', ...text.split('\n'), '```']
