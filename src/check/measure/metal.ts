import { namesSteel } from '../../standards/steel-grades.ts'

/** What the material's words come to, for rules of the shop. */
export type Metal = 'steel' | 'stainless' | 'aluminium' | 'iron' | 'copper' | 'plastic'

const words: readonly (readonly [Metal, RegExp])[] = [
  ['stainless', /\b(stainless|1\.4\d{3}|x\d+cr\w*|30[1-4]l?|316l?|321|347)\b/i],
  ['iron', /\b(gr[ea]y iron|cast iron|ductile iron|en-gj[lsm]\S*|ggg?-?\d{2})/i],
  ['aluminium', /\b(alumin(i)?um|en aw|[2567]\d{3}-[tho]\d*|almg\S*|alsi\S*)/i],
  ['copper', /\b(bronze|brass|copper|cusn\S*|cual\S*|cuzn\S*|c93200|c36000|cu-etp)/i],
  ['plastic', /\b(acetal|pom(-c)?|nylon|polyamide|pa ?66?|ptfe|polyethylene|pe-?(hd|uhmw)|pvc|acrylic|pmma)\b/i],
  ['steel', /\b(steel|s\d{3}\w*|c\d{2}e?|1\.[0-37]\d{3}|42crmo4|16mncr5|a36|a1011|a108|4140|1018|1045|12l14)\b/i],
]

/** Undefined where the words name nothing known. */
export function metalOf(material: string | undefined): Metal | undefined {
  if (material === undefined) return undefined
  return words.find(([, form]) => form.test(material))?.[0] ?? (namesSteel(material) ? 'steel' : undefined)
}

/** Plain structural or mild steel, which rusts and does not through-harden. */
export function isMildSteel(material: string): boolean {
  return (
    metalOf(material) === 'steel' &&
    /\b(s2[37]5\w*|s355\w*|a36|a1011|a1008|a500|10[01][0-9]|1020|12l14|mild|low[- ]carbon|c10|c15e?)\b/i.test(material)
  )
}

/**
 * Least inside bend radius over the thickness, across the grain at room temperature. Machinery's Handbook, bending of
 * sheet metal, and makers' data, from memory; the spread between sources is about half a thickness.
 */
export function leastBend(material: string | undefined, thicknessMm: number): number {
  const text = material ?? ''
  switch (metalOf(material)) {
    case 'aluminium':
      if (/6061|6082/.test(text)) return /-?t[46]/i.test(text) ? (thicknessMm > 3.2 ? 3 : 2) : 1
      if (/2024|7075/.test(text)) return /-?t\d/i.test(text) ? 4 : 1
      return /-h3[46]/i.test(text) ? 1.5 : /-h/i.test(text) ? 1 : 0.5
    case 'stainless':
      return 1
    case 'copper':
      return 0.5
    case 'iron':
    case 'plastic':
      return Number.POSITIVE_INFINITY
    default:
      return /4140|42crmo4|spring|1\.7225|a514/i.test(text)
        ? 3
        : thicknessMm > 6.35
          ? 1.5
          : thicknessMm > 3.2
            ? 0.9
            : 0.5
  }
}
