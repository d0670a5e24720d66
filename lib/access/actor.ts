export const ROLES = ['contributor', 'reviewer', 'steward'] as const
export type Role = (typeof ROLES)[number]

/** Someone signed in. The key stands beside what they write, for good; it is no name and no address. */
export interface Member {
  readonly kind: 'member'
  readonly key: string
  readonly roles: readonly Role[]
  /** Their address still waits to be confirmed where the site sends mail: they read and draft, and submit nothing. */
  readonly unconfirmed?: boolean
}

/** Whoever runs the server's own commands. */
export interface System {
  readonly kind: 'system'
  readonly key: 'system'
}

/** Who is asking. Never undefined: one who is not signed in is a guest. */
export type Actor = { readonly kind: 'guest' } | Member | System

export const GUEST: { readonly kind: 'guest' } = { kind: 'guest' }
export const SYSTEM: System = { kind: 'system', key: 'system' }
