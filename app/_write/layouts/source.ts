import { LAST, type Layout } from './parts.ts'

export const SOURCE: Layout = [
  {
    id: 'source',
    needed: true,
    parts: [
      'type',
      'title',
      { list: 'author', parts: ['family', 'given', 'literal'], ready: 1 },
      'issued.year',
      'issued.circa',
      'publisher',
      'publisherPlace',
      'containerTitle',
      'edition',
      'volume',
      'page',
      'number',
    ],
  },
  { id: 'found', parts: ['doi', 'isbn', 'url', 'language', 'note'] },
  { id: 'check', needed: true, parts: [...LAST] },
]
