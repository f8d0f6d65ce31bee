import type { BriefRule } from '../../rule.ts'

/** Families of grades by their form, and the figures that exist. */
const families: readonly (readonly [form: RegExp, figures: readonly number[], source: string])[] = [
  [
    /\bS(\d{3})(?=(?:JR|J0|J2|K2|N|NL|M|ML|MC|NC|Q|QL|G|W|\b))/g,
    [185, 195, 215, 235, 275, 315, 355, 380, 420, 450, 460, 500, 550, 600, 620, 650, 690, 700, 890, 900, 960],
    'EN 10025',
  ],
  [/\bC(\d{2})(?=[ER]\b)/g, [10, 15, 16, 20, 22, 25, 30, 35, 40, 45, 50, 55, 60], 'ISO 683-1'],
  [/\bDC(\d{2})\b/g, [1, 3, 4, 5, 6, 7], 'EN 10130'],
  [/\bEN-GJL-(\d{2,4})\b/g, [100, 150, 200, 250, 300, 350], 'EN 1561'],
  [
    // Of carbon and alloy steels only: stainless and duplex grades have four figures of their own.
    /(?<=^(?!.*(?:stainless|duplex)).*\bsteel\b.*)\bgrade (\d{4})\b/g,
    [
      1005, 1006, 1008, 1010, 1012, 1015, 1016, 1017, 1018, 1019, 1020, 1021, 1022, 1025, 1026, 1030, 1035, 1038, 1040,
      1042, 1043, 1045, 1050, 1055, 1060, 1065, 1070, 1074, 1075, 1080, 1084, 1090, 1095, 1117, 1137, 1141, 1144, 1213,
      1215, 1524, 1541, 3310, 4027, 4037, 4118, 4130, 4135, 4137, 4140, 4142, 4145, 4147, 4150, 4161, 4320, 4330, 4337,
      4340, 4615, 4620, 4626, 4720, 4815, 4817, 4820, 5015, 5046, 5060, 5115, 5120, 5130, 5132, 5135, 5140, 5145, 5147,
      5150, 5155, 5160, 6118, 6150, 8115, 8615, 8617, 8620, 8622, 8625, 8627, 8630, 8637, 8640, 8642, 8645, 8650, 8655,
      8660, 8740, 8822, 9254, 9255, 9259, 9260, 9310,
    ],
    'SAE J403 and J404',
  ],
  [
    /(?<![.\d])(\d{4})-(?:T\d|H\d|O\b)/g,
    [
      1050, 1060, 1070, 1100, 1200, 1350, 2007, 2011, 2014, 2017, 2024, 2030, 2117, 2124, 2218, 2219, 2297, 2618, 2624,
      3003, 3004, 3005, 3103, 3105, 5005, 5049, 5050, 5051, 5052, 5056, 5083, 5086, 5154, 5182, 5251, 5252, 5254, 5356,
      5383, 5454, 5456, 5457, 5554, 5556, 5652, 5657, 5754, 6005, 6012, 6013, 6016, 6020, 6026, 6042, 6053, 6056, 6060,
      6061, 6063, 6066, 6070, 6081, 6064, 6069, 6082, 6101, 6105, 6106, 6110, 6111, 6113, 6151, 6182, 6162, 6201, 6262,
      6351, 6463, 7003, 7005, 7010, 7020, 7021, 7022, 7039, 7049, 7050, 7055, 7068, 7072, 7075, 7150, 7175, 7178, 7475,
      7085, 7449, 8011, 8079, 8090,
    ],
    'EN 573-3, alloy numbers',
  ],
]

export const rule: BriefRule = {
  name: 'grade-unknown',
  weight: 'look again',
  source: 'EN 10025, ISO 683-1, EN 10130, EN 1561, SAE J403 and J404, EN 573-3, the grades that exist (from memory)',
  about: 'A grade is one of its family’s steps. A figure between them is one that no mill rolls: a digit was mistyped.',
  reads: 'brief',
  check: ({ brief: { header } }) => {
    const { material } = header
    if (!material) return []
    return families.flatMap(([form, figures, source]) =>
      [...material.text.matchAll(form)].flatMap((m) => {
        const figure = Number(m[1])
        if (figures.includes(figure)) return []
        const near = figures.reduce((a, b) => (apart(m[1]!, b) < apart(m[1]!, a) ? b : a))
        const wide = m[1]!.length
        return [
          {
            text: `There is no grade ${m[0]} in ${source}.`,
            span: material.span,
            expected: m[0].replace(m[1]!, String(near).padStart(wide, '0')),
            numbers: [m[0]],
          },
        ]
      }),
    )
  },
}

/** Digits that differ, then the difference itself. */
function apart(text: string, figure: number): number {
  const other = String(figure).padStart(text.length, '0')
  const digits = [...other].filter((d, i) => d !== text[i]).length
  return digits + Math.abs(Number(text) - figure) / 1e5
}
