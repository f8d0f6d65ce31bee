import { expect, it } from 'vitest'
import { readBrief } from '../../src/brief/read.ts'
import type { BriefRule, Rule } from '../../src/check/rule.ts'
import { rule as dateImpossible } from '../../src/check/rules/completeness/date-impossible.ts'
import { rule as edgeBreakOdd } from '../../src/check/rules/completeness/edge-break-odd.ts'
import { rule as gradeUnknown } from '../../src/check/rules/completeness/grade-unknown.ts'
import { rule as standardNumberOdd } from '../../src/check/rules/completeness/standard-number-odd.ts'

const brief = (units: string, line: string) =>
  readBrief(`units     ${units}\npractice  ISO, first angle\n${line}\nblock     60 × 40 × 20\n`)

const finds = (rule: Rule, units: string, line: string) =>
  (rule as BriefRule).check({ brief: brief(units, line) }).map((f) => f.expected)

// Wordings that title blocks carry; a checker passes them.
it.each([
  [edgeBreakOdd, 'mm', 'edges     edges broken 0.2 × 45°'],
  [edgeBreakOdd, 'mm', 'edges     ISO 13715 -0.3 +0.1'],
  [edgeBreakOdd, 'mm', 'edges     edges DIN 6784, 0.2 to 0.5'],
  [edgeBreakOdd, 'mm', 'edges     edges broken 0.3 +0.2 -0.1'],
  [edgeBreakOdd, 'inch', 'edges     break sharp edges 1/64 max'],
  [edgeBreakOdd, 'inch', 'edges     break sharp edges .005-.015'],
  [edgeBreakOdd, 'mm', 'edges     R0.5 max'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 2024-02-29'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 29.02.2024'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 24-03-11'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 3/11/24'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 11 Mar 2024'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 20240311'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 2024-03'],
  [gradeUnknown, 'mm', 'material  stainless steel ASTM A276 UNS S30400'],
  [gradeUnknown, 'mm', 'material  duplex stainless steel grade 2205'],
  [gradeUnknown, 'mm', 'material  S460NL EN 10025-3'],
  [gradeUnknown, 'mm', 'material  C45E EN ISO 683-1'],
  [gradeUnknown, 'mm', 'material  EN AW-6082-T6'],
  [standardNumberOdd, 'mm', 'coating   zinc flake ISO 10683'],
  [standardNumberOdd, 'mm', 'standard  ISO 128, ISO 129-1, ISO 14405-1, ISO 22081'],
  [standardNumberOdd, 'mm', 'note      Pipe threads ISO 228-1, screws ISO 4762, balance ISO 21940-11.'],
] as const)('%o passes on %s sheets: %s', (rule, units, line) => {
  expect(finds(rule, units, line)).toEqual([])
})

// Slips, and what the mark says to write. Days by the Gregorian calendar: 2023 is no leap year.
it.each([
  [edgeBreakOdd, 'mm', 'edges     edges broken 0.5 to 0.2', '0.2 to 0.5'],
  [edgeBreakOdd, 'inch', 'edges     break sharp edges .005+.015', '.005 to .015'],
  [edgeBreakOdd, 'mm', 'edges     edges broken 5', 'a few tenths of a millimetre'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 2023-02-29', 'year, month and day, as 2024-03-11'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 2024-13-05', 'year, month and day, as 2024-03-11'],
  [dateImpossible, 'mm', 'drawn     I. Vasperg, 20240-03-11', 'year, month and day, as 2024-03-11'],
  [gradeUnknown, 'mm', 'material  S735JR EN 10025-2', 'S235'],
  [gradeUnknown, 'mm', 'material  alloy steel bar, ASTM A29 grade 1048', 'grade 1045'],
  [standardNumberOdd, 'mm', 'material  S235JR EN 100250-2', 'EN 10025'],
] as const)('%o is raised on %s sheets: %s', (rule, units, line, expected) => {
  expect(finds(rule, units, line)).toEqual([expected])
})
