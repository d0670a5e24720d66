import { type ReturnWords, wordsOnReturn } from '#lib/db/drafts.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { isList, isObject, itemKey, type Json, type Path } from '#lib/entry/json.ts'
import { namesOf } from '../_ui/author.ts'
import { pathOf } from '../_versions/deeds.tsx'
import { fieldName } from '../_versions/field-name.ts'
import { stepOf } from './layout.ts'

/** What a version came back with. */
export interface Returned {
  readonly number: number
  readonly by: string
  readonly at: Date
  readonly words: string | null
  readonly fields: readonly {
    /** What the form of a draft that starts from this version calls the field. */
    readonly name: string
    readonly label: string
    readonly step: string
    readonly words: string
  }[]
}

/** What a reviewer said on this version as they returned or declined it; null where none did. */
export async function returnedOf(
  kind: WrittenKind,
  slug: string | null,
  number: number | null,
): Promise<Returned | null> {
  const found = slug === null || number === null ? null : await wordsOnReturn(slug, number)
  if (found === null || number === null) return null
  const { byKey, at, words, fields, body } = found satisfies ReturnWords
  const nameOf = await namesOf([byKey])
  return {
    ...{ number, by: nameOf(byKey), at, words },
    fields: fields.map(({ field, words }) => {
      const name = nameInForm(pathOf(field), body as Json)
      return { name, label: fieldName(pathOf(field), [body]), step: stepOf(kind, name), words }
    }),
  }
}

/** `works[repointing].areaM2` of a body as its form names it: `works.0.areaM2`. */
export function nameInForm(path: Path, body: Json | undefined): string {
  const keys: string[] = []
  path.reduce<Json | undefined>((value, part) => {
    const at = part.startsWith('[') ? indexOf(keys.at(-1), value, part.slice(1, -1)) : undefined
    keys.push(at === undefined ? part : String(at))
    if (at !== undefined) return isList(value) ? value[at] : undefined
    return isObject(value) ? value[part] : undefined
  }, body)
  return keys.join('.')
}

/** The place of the item with this key; the first where it is not there. */
function indexOf(list: string | undefined, items: Json | undefined, key: string): number {
  const field = itemKey(list, [items])
  if (field === undefined || !isList(items)) return 0
  return Math.max(
    0,
    items.findIndex((item) => isObject(item) && item[field] === key),
  )
}
