import type { Draft } from '#lib/db/drafts.ts'
import { isSlug, text } from '#lib/entry/fields.ts'
import type { FieldFault } from '#lib/errors.ts'
import { slugOf } from './ids.ts'

const NOTE = text(600)

/**
 * What a draft needs beside its body before it can be sent: an address that can be one, words for the history, the licence, and of a
 * case what the work was done with or what was found.
 */
export function entryFaults(draft: Draft, body: unknown): FieldFault[] {
  const { typed, kind } = draft
  const blank = (name: string) => (typed[name] ?? '').trim() === ''
  const required = (name: string): FieldFault[] => (blank(name) ? [{ field: name, code: 'required' }] : [])
  const address = (typed['entry.slug'] ?? '').trim()
  return [
    ...(draft.slug === null && address !== '' && !isSlug(address) ? [slugFault(address)] : []),
    ...required('entry.note'),
    ...(blank('entry.note') || NOTE.safeParse(typed['entry.note']).success
      ? []
      : [{ field: 'entry.note', code: 'too-long', limit: 600 }]),
    ...(kind === 'case' ? [] : required('interests')),
    ...(typed['rights.licence'] === 'yes' ? [] : [{ field: 'rights.licence', code: 'licence-needed' }]),
    ...(kind === 'case' && !tellsOfMortar(body) ? [{ field: 'works.0.recipe', code: 'mortar-needed' }] : []),
    ...(hasPhotos(body) && typed['rights.photos'] !== 'yes'
      ? [{ field: 'rights.photos', code: 'permission-needed' }]
      : []),
  ]
}

/** An address that cannot be one, and the nearest that can. */
function slugFault(value: string): FieldFault {
  const nearest = slugOf(value, 80)
  const fault = { field: 'entry.slug', value }
  return nearest === '' ? { ...fault, code: 'not-a-slug' } : { ...fault, code: 'slug-form', limit: nearest }
}

interface Case {
  readonly mortars?: readonly unknown[]
  readonly works?: readonly {
    readonly recipe?: unknown
    readonly mixed?: { readonly ingredients?: readonly unknown[] }
  }[]
}

const tellsOfMortar = (body: unknown): boolean => {
  const { mortars = [], works = [] } = body as Case
  return (
    mortars.length > 0 ||
    works.some(({ recipe, mixed }) => recipe !== undefined || (mixed?.ingredients ?? []).length > 0)
  )
}

const hasPhotos = (body: unknown): boolean =>
  ((body as { photos?: readonly unknown[] }).photos ?? []).length > 0
