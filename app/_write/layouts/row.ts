import { LAST, type Layout } from './parts.ts'

export const ROW: Layout = [
  {
    id: 'row',
    needed: true,
    parts: [
      'title',
      'table',
      'uses',
      'measured',
      {
        list: 'ingredients',
        parts: ['material', 'role', 'parts', 'parts.typical', 'by', 'state'],
        ready: 2,
      },
      'additions',
      'notes',
      'ambiguous',
    ],
  },
  {
    id: 'stated',
    needed: true,
    parts: [
      'region',
      'period',
      'from',
      'to',
      'source.source',
      'source.locator',
      'basis',
      'standing',
      'standingReason',
    ],
  },
  { id: 'check', needed: true, parts: [...LAST] },
]
