import { existsSync } from 'node:fs'
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
