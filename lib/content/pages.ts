import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Where each kind of page has its files, one to a page, named by its id. */
const FILES = {
  tables: ['tables', '.md'],
  sources: ['sources', '.json'],
  materials: ['materials', '.yaml'],
  guides: ['guides', '.md'],
  terms: ['vocabularies', '.yaml'],
} as const

export type ContentPage = keyof typeof FILES

/** Whether content/ has a page of this kind and id; reads no content, so it costs a request next to nothing. */
export function hasContentPage(kind: ContentPage, id: string): boolean {
  const [folder, ending] = FILES[kind]
  return /^[a-z0-9-]+$/.test(id) && existsSync(join(process.cwd(), 'content', folder, `${id}${ending}`))
}

/** Vocabularies of the wall's fabric: each of their terms has a page of its own. */
export const PAGED_VOCABULARIES = ['units', 'wall-types'] as const
export type PagedVocabulary = (typeof PAGED_VOCABULARIES)[number]

export const isPaged = (vocabulary: string): vocabulary is PagedVocabulary =>
  PAGED_VOCABULARIES.some((paged) => paged === vocabulary)

/** Whether a term has a page of its own. Looks into its vocabulary's file alone, as above. */
export function hasTermPage(vocabulary: string, id: string): boolean {
  if (!isPaged(vocabulary) || !/^[a-z0-9-]+$/.test(id)) return false
  const file = join(process.cwd(), 'content', 'vocabularies', `${vocabulary}.yaml`)
  return new RegExp(`^ *- id: ${id}$`, 'm').test(readFileSync(file, 'utf8'))
}
