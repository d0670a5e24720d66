import { content } from '#lib/content/index.ts'
import type { TableRow } from '#lib/content/types.ts'
import type { PropertyName } from '#lib/mortar/material.ts'
import { words } from '../../_words/index.ts'

/** What in the site's own content rests on a source. */
export function citedFrom(id: string): {
  rows: TableRow[]
  materials: { label: string; properties: string[] }[]
  terms: string[]
  cautions: string[]
} {
  const { rows, materials, vocabularies, cautions } = content()
  const names = (text: string | undefined) => text === id || text?.startsWith(`${id}, `) === true
  const t = words('terms')
  return {
    rows: [...rows.values()].filter(({ citation }) => citation.source === id),
    materials: [...materials.values()]
      .map(({ label, properties }) => ({
        label,
        properties: (Object.keys(properties) as PropertyName[])
          .filter((name) => names(properties[name]?.source))
          .map((name) => t(`property.${name}`)),
      }))
      .filter(({ properties }) => properties.length > 0),
    terms: [...vocabularies.values()].flatMap((terms) =>
      [...terms.values()].filter(({ source }) => names(source)).map(({ label }) => label),
    ),
    cautions: [...cautions.values()]
      .filter(({ sources }) => sources.some(({ source }) => source === id))
      .map(({ title }) => title),
  }
}
