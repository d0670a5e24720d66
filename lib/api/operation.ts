import type { z } from 'zod'

/**
 * One thing that the JSON interface does: what it takes, what it answers, and how. Route handlers and the
 * OpenAPI document are both made from this, so they can't drift apart.
 */
export interface Operation<P = unknown, Q = unknown, B = unknown, A = unknown> {
  readonly id: string
  readonly method: 'GET' | 'POST'
  /** With `{name}` for each field of `params`. */
  readonly path: `/api/${string}`
  readonly summary: string
  readonly params?: z.ZodType<P>
  readonly query?: z.ZodType<Q>
  readonly body?: z.ZodType<B>
  readonly answer: z.ZodType<A>
  /** May refuse with a Refusal; whatever else it throws is a fault of ours. */
  run(given: { params: P; query: Q; body: B }): Promise<A>
}

/** Names the types of an operation from its schemas. */
export const operation = <P, Q, B, A>(parts: Operation<P, Q, B, A>): Operation<P, Q, B, A> => parts
