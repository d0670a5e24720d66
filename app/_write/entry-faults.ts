import type { Draft } from '#lib/db/drafts.ts'
import { slug, text } from '#lib/entry/fields.ts'
import type { FieldFault } from '#lib/errors.ts'

const NOTE = text(600)

/**
 * What a draft needs beside its body before it can be sent: an address, words for the history, the licence, and of a
 * case what the work was done with or what was found.
 */
export function entryFaults(draft: Draft, body: unknown): FieldFault[] {
  const { typed, kind } = draft
  const blank = (name: string) => (typed[name] ?? '').trim() === ''
  const required = (name: string): FieldFault[] => (blank(name) ? [{ field: name, code: 'required' }] : [])
  const address = typed['entry.slug'] ?? ''
  return [
    ...(draft.slug === null ? required('entry.slug') : []),
    ...(draft.slug === null && address !== '' && !slug.safeParse(address).success
      ? [{ field: 'entry.slug', code: 'not-a-slug', value: address }]
      : []),
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
