import type { BriefRule } from '../../rule.ts'

export const rule: BriefRule = {
  name: 'hardness-missing',
  weight: 'must change',
  source: 'ISO 15787:2016: heat treatment is stated with its hardness and the limits of it (from memory)',
  about: '“Hardened” without figures can be neither done nor inspected.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const said = [header.material, ...header.notes].flatMap((w) => (w ? [w] : []))
    const treated = said.find((w) =>
      /\b(hardened|quenched|nitrided|carburi[sz]ed|case[- ]hardened|heat treat\w*)\b/i.test(w.text),
    )
    if (!treated || said.some((w) => /\b(HRC|HRB|HB|HBW|HV\d*|Rm|MPa|ksi)\b/i.test(w.text))) return []
    return [
      {
        text: `“${treated.text}” gives no hardness.`,
        span: treated.span,
        expected: 'the hardness and its limits: 50 +5 HRC, 28-32 HRC',
      },
    ]
  },
}
