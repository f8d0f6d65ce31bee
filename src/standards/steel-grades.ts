/*
 * Names of unalloyed and low-alloy steels that do not say “steel”: short names of EN 10027-1 (ISO 683, ISO 4957),
 * four-digit SAE numbers, and ASTM specifications of carbon and low-alloy steel. From memory, not complete.
 */
const SHORT_NAME = /\b\d{2,3}(cr|mn|ni|mo|si|smn|nicr|wcr|s(?=\d))[a-z]*\d[\w-]*/i
const STRUCTURAL =
  /\b(p(235|265|275|355)\w*|e(235|295|335|355|360)\w*|dc0[1-7]\w*|dd1[1-4]|dx5[1-7]d?|c\d{2}[ersuk]?)\b/i
const SAE =
  /\b(10(0[68]|1[0258]|2[0-26]|30|35|4[0-5]|50|55|60|70|75|8[04]|9[05])|11(17|37|41|44)|12(13|15)|12l1[45]|41(18|30|40|42|45|50)|43(20|40)|5160|52100|61(18|50)|86(20|30|40)|8740|9310)\b/i
const ASTM =
  /\b(a29|a36|a105|a106|a108|a283|a322|a331|a434|a500|a512|a513|a514|a516|a519|a572|a576|a588|a1008|a1011)\b/i
const TOOL = /\b(a681|a686|silver steel|drill rod)\b/i

/** Whether the words name a common steel that is neither stainless nor high in alloy. */
export const namesSteel = (material: string): boolean =>
  [SHORT_NAME, STRUCTURAL, SAE, ASTM, TOOL].some((form) => form.test(material))
