import { LABORATORY, LAST, type Layout, SHEETS } from './parts.ts'

export const RECIPE: Layout = [
  {
    id: 'what',
    needed: true,
    parts: [
      'title',
      'family',
      'uses',
      'standing',
      'standingReason',
      'historicTerm',
      'chemistry',
      'modernClass',
    ],
  },
  {
    id: 'ingredients',
    needed: true,
    parts: [
      {
        list: 'ingredients',
        parts: ['material', 'role', 'parts', 'parts.typical', 'by', 'state', 'note'],
        ready: 2,
      },
      'method',
      'methodNotes',
    ],
  },
  {
    id: 'rests',
    parts: [
      'follows',
      { list: 'sources', parts: ['source', 'locator'], ready: 1 },
      'region.country',
      'region.name',
      'period',
      'units',
    ],
  },
  { id: 'laboratory', parts: [LABORATORY] },
  { id: 'worked', parts: [SHEETS] },
  { id: 'check', needed: true, parts: ['summary', ...LAST] },
]
