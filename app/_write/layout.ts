import type { WrittenKind } from '#lib/entry/body.ts'
import { CASE } from './layouts/case.ts'
import { MATERIAL } from './layouts/material.ts'
import type { Layout, Part } from './layouts/parts.ts'
import { RECIPE } from './layouts/recipe.ts'
import { ROW } from './layouts/row.ts'
import { SOURCE } from './layouts/source.ts'
import { VISIT } from './layouts/visit.ts'

export const LAYOUTS: Readonly<Record<WrittenKind, Layout>> = {
  case: CASE,
  visit: VISIT,
  recipe: RECIPE,
  material: MATERIAL,
  source: SOURCE,
  row: ROW,
}

/** A path without the numbers of items: `works.0.title` is `works.*.title`. */
export const generic = (name: string): string => name.replace(/\.\d+(?=\.|$)/g, '.*')

/** A path as a key of the catalogue: `works.0.mixed.waterL` is `works-mixed-waterL`. */
export const wordKey = (name: string): string => name.replace(/\.\d+(?=\.|$)/g, '').replaceAll('.', '-')

/** The step of a form that holds a field. */
export const stepOf = (kind: WrittenKind, name: string): string => {
  const path = generic(name.replace(/-mark$/, ''))
  const holds = (parts: readonly Part[], within: string): boolean =>
    parts.some((part) =>
      typeof part === 'string'
        ? [`${within}${part}`, `${within}${part}.*`].includes(path)
        : holds(part.parts, `${within}${part.list}.*.`) || `${within}${part.list}` === path,
    )
  return LAYOUTS[kind].find(({ parts }) => holds(parts, ''))?.id ?? 'check'
}
