import type { RuleFinding } from '#lib/mortar/compatibility.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Cell, Shown } from '../../_ui/workshop/shown.ts'
import { type Messages, words } from '../../_words/index.ts'

type Rule = keyof Messages['workOut']['compatibility']['rules']

/** Each rule with what it found, what was held against what, and where it comes from. */
export function show(findings: readonly RuleFinding[], _: Given, data: BenchData): Shown {
  const t = words('workOut')
  return {
    steps: [],
    blocks: [
      { kind: 'notice', tone: 'caution', text: t('compatibility.results.noVerdict') },
      {
        kind: 'table',
        name: 'rules',
        title: t('compatibility.results.title'),
        stack: true,
        columns: [
          { key: 'rule', head: t('compatibility.results.rule') },
          { key: 'found', head: t('compatibility.results.found') },
          { key: 'figure', head: t('compatibility.results.figure') },
          { key: 'against', head: t('compatibility.results.against') },
          { key: 'from', head: t('compatibility.results.from') },
        ],
        rows: findings.map((finding) => ({ name: finding.rule, cells: cellsOf(finding, data) })),
      },
      { kind: 'note', text: t('compatibility.results.salts') },
    ],
  }
}

function cellsOf(finding: RuleFinding, { cites }: BenchData): Record<string, Cell> {
  const t = words('workOut')
  const { rule, kind, outcome, figure, against, unit, missing, basis, source } = finding
  const bench = unit.startsWith('kg/(m2.min')
  const from = source === null ? undefined : cites[source.split(', ')[0] ?? '']
  const told = t(`compatibility.outcomes.${outcome}`, { source: from ?? '' })
  return {
    rule: t(`compatibility.rules.${rule as Rule}`),
    found:
      missing.length === 0
        ? told
        : t('compatibility.results.missing', {
            outcome: told,
            figures: missing
              .map((name) => t(`compatibility.missing.${name as 'mortar.capillarity'}`))
              .join(', '),
          }),
    ...(kind === 'pair'
      ? { figure: null, against: null }
      : { figure: { value: figure, unit, bench }, against: { value: against, unit, bench } }),
    from: { words: '', basis, ...(source !== null && { source }) },
  }
}
