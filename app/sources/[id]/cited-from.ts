import { content } from '#lib/content/index.ts'
import type { TableRow } from '#lib/content/types.ts'
import type { PropertyName } from '#lib/mortar/material.ts'
import { cautionWords } from '../../_ui/caution-words.ts'
import { guideWords } from '../../_ui/guide-words.ts'
import { termName } from '../../_ui/label.ts'
import { words } from '../../_words/index.ts'

/** A page of the site's own, or a place in one. */
interface Citing {
  readonly label: string
  readonly href: string
}

/** What in the site's own content rests on a source. */
export function citedFrom(id: string): {
  rows: TableRow[]
  materials: (Citing & { properties: string[] })[]
  terms: Citing[]
  cautions: Citing[]
  guides: Citing[]
} {
  const { rows, materials, vocabularies, cautions, guides } = content()
  const cites = ({ sources }: { sources: readonly { source: string }[] }) =>
    sources.some(({ source }) => source === id)
  const names = (text: string | undefined) => text === id || text?.startsWith(`${id}, `) === true
  const t = words('terms')
  return {
    rows: [...rows.values()].filter(({ citation }) => citation.source === id),
    materials: [...materials.values()]
      .map(({ id: material, label, properties }) => ({
        label,
        href: `/materials/${material}`,
        properties: (Object.keys(properties) as PropertyName[])
          .filter((name) => names(properties[name]?.source))
          .map((name) => t(`property.${name}`)),
      }))
      .filter(({ properties }) => properties.length > 0),
    terms: [...vocabularies].flatMap(([vocabulary, terms]) =>
      [...terms.values()]
        .filter(({ source, figures = [] }) => names(source) || figures.some((one) => names(one.source)))
        .map((term) => ({ label: termName(term), href: `/terms/${vocabulary}#${term.id}` })),
    ),
    cautions: [...cautions.values()]
      .filter(cites)
      .map((caution) => ({ label: cautionWords(caution).title, href: `/cautions#${caution.id}` })),
    guides: [...guides.values()]
      .filter(cites)
      .map((guide) => ({ label: guideWords(guide).title, href: `/guides/${guide.id}` })),
  }
}
