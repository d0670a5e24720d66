import { LABORATORY, LAST, type Layout, SHEETS } from './parts.ts'

export const MATERIAL: Layout = [
  {
    id: 'material',
    needed: true,
    parts: [
      'title',
      'summary',
      'role',
      'like',
      'region.country',
      'region.name',
      'standing',
      'standingReason',
    ],
  },
  {
    id: 'figures',
    parts: [
      {
        list: 'properties',
        parts: ['property', 'low', 'typical', 'high', 'basis', 'source.source', 'source.locator', 'note'],
        ready: 1,
      },
    ],
  },
  { id: 'sieve', parts: [{ list: 'sieve', parts: ['openingMm', 'passingPercent'], ready: 6 }] },
  { id: 'laboratory', parts: [LABORATORY] },
  { id: 'worked', parts: [SHEETS] },
  { id: 'check', needed: true, parts: [...LAST] },
]
