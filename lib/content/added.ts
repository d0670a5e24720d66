import type { MaterialBody } from '#lib/entry/material.ts'
import type { RowBody } from '#lib/entry/row.ts'
import type { SourceBody } from '#lib/entry/source.ts'
import { PROPERTY_UNITS } from '#lib/mortar/material.ts'
import type { Property } from '#lib/mortar/range.ts'
import type { Material, RowIngredient, Source } from './types.ts'

/** What people add, in the shapes that content has, so that both are shown and worked with by the same parts. */

/** A source entry as CSL-JSON with the entry's slug for its id. */
export function sourceOf(id: string, body: SourceBody): Source {
  const { type, title, author, issued, publisher, edition, volume, page, number, language, note } = body
  return {
    ...{ id, type, title },
    ...(author !== undefined && { author: author.map(present) }),
    ...(issued !== undefined && {
      issued: { 'date-parts': [[issued.year]], ...(issued.circa === true && { circa: true }) },
    }),
    ...present({ publisher, edition, volume, page, number, language, note }),
    ...present({
      'publisher-place': body.publisherPlace,
      'container-title': body.containerTitle,
      DOI: body.doi,
      ISBN: body.isbn,
      URL: body.url,
    }),
  }
}

/** A material entry with its figures in the units that the sums use; it claims no cautions beyond its role's. */
export function materialOf(id: string, body: MaterialBody): Material {
  const { title, role, summary, properties, standing, standingReason } = body
  return {
    ...{ id, label: title, role, description: summary, names: {}, cautions: [], standing },
    properties: Object.fromEntries(properties.map((figure) => [figure.property, propertyOf(figure)])),
    ...present({ standingReason }),
  }
}

/** A proposed row's ingredients as a table's row has them. */
export const rowIngredientsOf = ({ ingredients }: RowBody): RowIngredient[] =>
  ingredients.map(({ parts = null, ...ingredient }) => ({ ...ingredient, parts }))

function propertyOf(figure: MaterialBody['properties'][number]): Property {
  const { property, low, typical, high, basis, source, note } = figure
  const cited =
    source && (source.locator === undefined ? source.source : `${source.source}, ${source.locator}`)
  return { low, typical, high, unit: PROPERTY_UNITS[property], basis, ...present({ source: cited, note }) }
}

type Present<T> = { [K in keyof T]: Exclude<T[K], undefined> }

/** The same without the fields that are absent. */
const present = <T extends object>(fields: T) =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<Present<T>>
