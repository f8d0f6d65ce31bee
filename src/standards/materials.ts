import { namesSteel } from './steel-grades.ts'

/** A material's density and where the figure comes from. */
export interface Density {
  readonly gPerCm3: number
  readonly source: string
}

interface Row {
  /** Matched against the brief's material words, first row that fits. */
  readonly words: RegExp
  readonly gPerCm3: number
  readonly source: string
}

const HANDBOOK = "Machinery's Handbook, table of specific gravity and density of metals (from memory)"
const TOOL = 'makers’ data sheets of tool steels, customary value (from memory)'
const EN = 'EN 1991-1-1:2002, table A.4, metals (from memory)'
const PLASTICS = 'makers’ data sheets, customary middle value (common practice, no source)'

/**
 * Handbook densities in g/cm³. Specific rows stand before general ones: `cast iron` before `iron`, stainless before
 * steel. A brief whose words fit none has no mass; the density is never guessed.
 */
const ROWS: readonly Row[] = [
  // High in alloy, and so named before the rest: tool steels and high-speed steels.
  {
    words: /\b(x153crmov12|x155crvmo12-?1|x210cr12|1\.2379|1\.2080|(a681|aisi|sae)\D{0,9}d[23])\b/i,
    gPerCm3: 7.7,
    source: TOOL,
  },
  { words: /\b(x40crmov5-?1|x38crmov5-?1|1\.234[34]|(a681|aisi|sae)\D{0,9}h1[13])\b/i, gPerCm3: 7.8, source: TOOL },
  { words: /\b(hs6-5-2\w*|1\.33(39|43)|(a600|aisi|sae)\D{0,9}m2)\b/i, gPerCm3: 8.16, source: TOOL },
  { words: /\b(stainless|1\.4\d{3}|x\d+cr\w*|30[1-4]l?|316l?|321|347)\b/i, gPerCm3: 7.9, source: HANDBOOK },
  {
    words: /\b(grey iron|gray iron|cast iron|en-gjl\S*|en-gjs\S*|gg-?\d{2}|ductile iron)/i,
    gPerCm3: 7.2,
    source: HANDBOOK,
  },
  {
    words:
      /\b(carbon steel|alloy steel|tool steel|mild steel|steel|s\d{3}\w*|c\d{2}e?|1\.[0-3]\d{3}|a36|a1011|a108|4140|1018|1045|12l14)\b/i,
    gPerCm3: 7.85,
    source: EN,
  },
  { words: /\b(alumin(i)?um|en aw|6061|6082|5052|7075|2024|almg\S*|alsi\S*)/i, gPerCm3: 2.7, source: EN },
  { words: /\b(bronze|cusn\S*|cual\S*|c93200|sae 660)/i, gPerCm3: 8.8, source: HANDBOOK },
  { words: /\b(brass|cuzn\S*|c36000)/i, gPerCm3: 8.5, source: HANDBOOK },
  { words: /\b(copper|cu-etp|cu-of)\b/i, gPerCm3: 8.9, source: EN },
  { words: /\b(titanium|ti-?6al-?4v)\b/i, gPerCm3: 4.43, source: HANDBOOK },
  { words: /\b(magnesium|az31\w?|az91\w?)\b/i, gPerCm3: 1.8, source: HANDBOOK },
  { words: /\b(zinc)\b/i, gPerCm3: 7.1, source: HANDBOOK },
  { words: /\b(lead)\b/i, gPerCm3: 11.3, source: HANDBOOK },
  { words: /\b(acetal|pom(-c)?)\b/i, gPerCm3: 1.41, source: PLASTICS },
  { words: /\b(nylon|polyamide|pa ?6(6)?)\b/i, gPerCm3: 1.14, source: PLASTICS },
  { words: /\b(ptfe)\b/i, gPerCm3: 2.17, source: PLASTICS },
  { words: /\b(hdpe|uhmw|polyethylene|pe-?(hd|uhmw))\b/i, gPerCm3: 0.95, source: PLASTICS },
  { words: /\b(pvc)\b/i, gPerCm3: 1.4, source: PLASTICS },
  { words: /\b(acrylic|pmma)\b/i, gPerCm3: 1.19, source: PLASTICS },
  { words: /\b(iron)\b/i, gPerCm3: 7.2, source: HANDBOOK },
]

/** Density by the words of a material statement; undefined where none of them is known. */
export function densityOf(material: string): Density | undefined {
  const row = ROWS.find((r) => r.words.test(material))
  if (row) return { gPerCm3: row.gPerCm3, source: row.source }
  return namesSteel(material) ? { gPerCm3: 7.85, source: EN } : undefined
}
