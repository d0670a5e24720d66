import type { Outcome } from './state.ts'

/** Everything that somebody is told of: what became of their own work, and what others said beside it. */
export const NOTICES = [
  'published',
  'returned',
  'approved',
  'declined',
  'withdrawn',
  'restored',
  'visited',
  'answered',
  'disputed',
  'settled',
  'upheld',
  'struck',
  'erased',
  'photo-erased',
] as const
export type NoticeKind = (typeof NOTICES)[number]

/** What those whom a decision concerns are told: of every kind of decision something. */
export const NOTICE_OF = {
  publish: 'published',
  return: 'returned',
  decline: 'declined',
  withdraw: 'withdrawn',
  restore: 'restored',
  approve: 'approved',
  dispute: 'disputed',
  settle: 'settled',
  uphold: 'upheld',
  answer: 'answered',
  strike: 'struck',
  erase: 'erased',
} as const satisfies Record<Outcome, NoticeKind>
