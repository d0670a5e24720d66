import type { MaterialBody } from '#lib/entry/material.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { RowBody } from '#lib/entry/row.ts'
import type { FieldFault } from '#lib/errors.ts'
import {
  type Check,
  labSources,
  taken,
  unknown,
  unknownMaterials,
  unknownRecipes,
  unknownSources,
} from './find.ts'
import { foreignSheets } from './sheets.ts'

export async function checkRecipe(body: RecipeBody, check: Check): Promise<FieldFault[]> {
  const { tx, content } = check
  return [
    ...(await foreignSheets(body.sheets, check)),
    ...(await unknownMaterials(tx, content, ingredientsOf(body))),
    ...unknown(body.units, (unit, i) => [`units.${i}`, unit], content.vocabularies.get('units')),
    ...unknown(body.follows, (row, i) => [`follows.${i}`, row], content.rows),
    ...(await unknownSources(tx, content, [
      ...body.sources.map(({ source }, i) => [`sources.${i}.source`, source] as const),
      ...labSources(body.laboratory),
    ])),
    ...(await unknownRecipes(tx, body.adaptedFrom === undefined ? [] : [['adaptedFrom', body.adaptedFrom]])),
  ]
}

export async function checkMaterial(body: MaterialBody, check: Check): Promise<FieldFault[]> {
  const { tx, content, slug } = check
  const cited = body.properties.map(
    ({ source }, i) => [`properties.${i}.source.source`, source?.source] as const,
  )
  return [
    ...taken(slug, content.materials),
    ...unknown(body.like === undefined ? [] : [body.like], (id) => ['like', id], content.materials),
    ...repeatedProperties(body),
    ...(await foreignSheets(body.sheets, check)),
    ...(await unknownSources(tx, content, [...cited, ...labSources(body.laboratory)])),
  ]
}

export async function checkRow(body: RowBody, { tx, content }: Check): Promise<FieldFault[]> {
  const tables = new Map([...content.rows.values()].map(({ table }) => [table, table]))
  return [
    ...unknown(body.table === undefined ? [] : [body.table], (id) => ['table', id], tables),
    ...(await unknownMaterials(tx, content, ingredientsOf(body))),
    ...(await unknownSources(tx, content, [['source.source', body.source.source]])),
  ]
}

const ingredientsOf = ({ ingredients }: { ingredients: readonly { material: string }[] }) =>
  ingredients.map(({ material }, i) => [`ingredients.${i}.material`, material] as const)

function repeatedProperties({ properties }: MaterialBody): FieldFault[] {
  const seen = new Set<string>()
  return properties.flatMap(({ property }, i) => {
    if (!seen.has(property)) {
      seen.add(property)
      return []
    }
    return [{ field: `properties.${i}.property`, code: 'repeated', value: property }]
  })
}
