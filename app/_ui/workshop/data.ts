import { content } from '#lib/content/index.ts'
import type { Properties } from '#lib/mortar/material.ts'
import { eachLanguage } from '../../_words/index.ts'
import { shortCitation } from '../citation.tsx'
import { nameOf, termName } from '../label.ts'
import type { BenchData, BenchMaterial } from './brought.ts'
import type { AnyCalculation } from './calculation.ts'

const kept = eachLanguage(() => new Map<string, BenchData>())

/** What a calculation brings along from content/: its materials, labels of its terms, and citations. */
export function benchData(calculation: AnyCalculation): BenchData {
  const known = kept().get(calculation.name)
  if (known) return known
  const { materials, sources, vocabularies } = content()
  const wanted = [...materials.values()].filter((one) => calculation.uses?.(one) ?? false)
  const brought = Object.fromEntries(
    wanted.map(({ id, label, names, role, properties }): [string, BenchMaterial] => [
      id,
      { label: nameOf(label, names), role, properties: withoutNotes(properties) },
    ]),
  )
  const cited = new Set([
    ...(calculation.sources ?? []),
    ...wanted.flatMap(({ properties }) =>
      Object.values(properties).flatMap(({ source }) => (source === undefined ? [] : [sourceIn(source)])),
    ),
  ])
  const cites = Object.fromEntries(
    [...cited].flatMap((id) => {
      const source = sources.get(id)
      return source ? [[id, shortCitation(source)] as const] : []
    }),
  )
  const terms = Object.fromEntries(
    (calculation.vocabularies ?? []).map((name) => [
      name,
      Object.fromEntries(
        [...(vocabularies.get(name)?.values() ?? [])].map((term) => [term.id, termName(term)]),
      ),
    ]),
  )
  const data = { materials: brought, cites, terms }
  kept().set(calculation.name, data)
  return data
}

/** The source of `source-id, locator`. */
const sourceIn = (text: string): string => text.split(', ')[0] ?? text

/** Notes stay on the material's own page: a browser needs figures and where they come from. */
const withoutNotes = (properties: Properties): Properties =>
  Object.fromEntries(Object.entries(properties).map(([name, { note: _, ...figure }]) => [name, figure]))
