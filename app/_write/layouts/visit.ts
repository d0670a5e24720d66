import { LAST, type Layout, SHEETS } from './parts.ts'

/** What one person saw on one day; the photos have a step of their own, for the camera. */
export const VISIT: Layout = [
  {
    id: 'seen',
    needed: true,
    parts: ['work', 'on', 'baseline', 'season', 'daysSinceRain', 'joint', 'unit', 'damp', 'seen'],
  },
  { id: 'photos', parts: [{ list: 'photos', items: 'kept', parts: ['sha256', 'alt', 'spot', 'takenOn'] }] },
  {
    id: 'measured',
    parts: [
      'salts',
      { list: 'readings', parts: ['kind', 'value', 'unit', 'instrument', 'where'], ready: 1 },
      'deterioration',
      'surveyClass',
      { list: 'others', parts: ['who', 'joint', 'unit', 'damp'] },
    ],
  },
  {
    id: 'observer',
    needed: true,
    parts: ['observer.who', 'observer.how', 'harm.words', 'harm.protectedFabric'],
  },
  { id: 'worked', parts: [SHEETS] },
  { id: 'check', needed: true, parts: ['rights.photos', ...LAST] },
]
