import type { BodyOf } from './body.ts'
import type { CaseBody } from './case.ts'
import { type FacetValues, regionId } from './facets.ts'
import type { MaterialBody } from './material.ts'
import type { RecipeBody } from './recipe.ts'
import type { RowBody } from './row.ts'
import type { SourceBody } from './source.ts'
import type { Findable } from './words.ts'

/** Kinds of entry that are found by themselves; visits are found by their case. */
export const SEARCHED_KINDS = ['case', 'recipe', 'material', 'source', 'row'] as const
export type SearchedKind = (typeof SEARCHED_KINDS)[number]

/** What a written page says, what it is found by, and its values of the facets that its body tells. */
export interface SearchText extends Findable {
  readonly facets: FacetValues
}

/** One term of a vocabulary, or one material, as pages are marked with it. */
export const mark = (of: string, id: string): string => `${of}:${id}`

const TEXTS: { readonly [K in SearchedKind]: (body: BodyOf<K>) => SearchText } = {
  case: caseText,
  recipe: recipeText,
  material: materialText,
  source: sourceText,
  row: rowText,
}

/** The words and marks of a body. What is known of a case's mortars and visits is added by its projection. */
export const searchTextOf = <K extends SearchedKind>(kind: K, body: BodyOf<K>): SearchText =>
  TEXTS[kind](body)

/** Texts one after another, each its own line; absent ones are left out. */
export const lines = (texts: readonly (string | undefined)[]): string =>
  texts.flatMap((text) => (text === undefined || text === '' ? [] : [text.replaceAll('\n', ' ')])).join('\n')

function caseText(body: CaseBody): SearchText {
  const { place, fabric, structure, exposure, works } = body
  return {
    title: body.title,
    summary: body.summary,
    body: lines([
      [place.locality, place.region].filter(Boolean).join(', '),
      ...fabric.units.flatMap(({ localName, note }) => [localName, note]),
      ...body.mortars.flatMap(({ where, phase, description, samples }) => [
        where,
        phase,
        description,
        ...samples.flatMap(({ location, finding }) => [location, finding]),
      ]),
      exposure.note,
      ...body.earlier.flatMap(({ what, condition }) => [what, condition]),
      ...works.flatMap(({ title, weather, protection, tools, mixed, ended }) => [
        title,
        weather,
        protection,
        tools,
        mixed?.note,
        ended?.note,
      ]),
    ]),
    marks: [
      ...fabric.units.map(({ unit }) => mark('unit', unit)),
      mark('wall', fabric.wall),
      ...works.map(({ use }) => mark('use', use)),
      mark('structure', structure.type),
      mark('country', place.country),
      ...exposure.salts.map((salt) => mark('salt', salt)),
    ],
    facets: {
      unit: fabric.units.map(({ unit }) => unit),
      wall: [fabric.wall],
      use: works.map(({ use }) => use),
      country: [place.country],
      region: [regionId(place.country, place.region)],
      rain: [exposure.drivingRain],
      frost: [exposure.frost],
      salt: exposure.salts,
      ground: [exposure.ground],
      structure: [structure.type],
    },
  }
}

function recipeText(body: RecipeBody): SearchText {
  const materials = body.ingredients.map(({ material }) => material)
  const country = body.region.country === undefined ? [] : [body.region.country]
  return {
    title: body.title,
    summary: body.summary,
    body: lines([
      body.historicTerm,
      body.chemistry,
      body.modernClass,
      ...body.ingredients.map(({ note }) => note),
      body.methodNotes,
      body.region.name,
      body.period,
      body.standingReason,
    ]),
    marks: [
      mark('family', body.family),
      mark('method', body.method),
      ...body.uses.map((use) => mark('use', use)),
      ...materials.map((material) => mark('material', material)),
      ...body.units.map((unit) => mark('unit', unit)),
      ...country.map((one) => mark('country', one)),
    ],
    facets: {
      unit: body.units,
      use: body.uses,
      family: [body.family],
      method: [body.method],
      binder: materials,
      country,
      row: body.follows,
    },
  }
}

function materialText(body: MaterialBody): SearchText {
  const country = body.region.country === undefined ? [] : [body.region.country]
  return {
    title: body.title,
    summary: body.summary,
    body: lines([body.region.name, ...body.properties.map(({ note }) => note), body.standingReason]),
    marks: [
      mark('role', body.role),
      ...(body.like === undefined ? [] : [mark('material', body.like)]),
      ...country.map((one) => mark('country', one)),
    ],
    facets: { country },
  }
}

function sourceText(body: SourceBody): SearchText {
  const authors = (body.author ?? []).map(
    ({ family, given, literal }) => literal ?? [given, family].join(' '),
  )
  return {
    title: body.title,
    summary: authors.join(', '),
    body: lines([body.containerTitle, body.publisher, body.publisherPlace, body.note]),
    marks: [],
    facets: {},
  }
}

function rowText(body: RowBody): SearchText {
  const materials = body.ingredients.map(({ material }) => material)
  return {
    title: body.title,
    summary: body.measured,
    body: lines([body.additions, body.notes, body.ambiguous, body.region, body.period, body.standingReason]),
    marks: [
      ...body.uses.map((use) => mark('use', use)),
      ...materials.map((material) => mark('material', material)),
    ],
    facets: { use: body.uses, binder: materials },
  }
}
