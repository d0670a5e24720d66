import { createTranslator } from 'use-intl/core'
import { type Messages, messages } from '#app/catalogue.ts'

/** The one language so far. Numbers and dates follow it too, never the server's own settings. */
export const LOCALE = 'en-GB'
export const TIME_ZONE = 'UTC'

export type { Messages }
export type Namespace = keyof Messages

const make = <N extends Namespace>(namespace: N) =>
  createTranslator<Messages, N>({
    locale: LOCALE,
    timeZone: TIME_ZONE,
    messages,
    namespace,
    onError: (error) => {
      throw error
    },
  })
type Words<N extends Namespace> = ReturnType<typeof make<N>>

/** Each translator keeps the sentences it has parsed; making one anew for every figure took half a page's time. */
const made = new Map<Namespace, unknown>()

/**
 * The words of one part of the catalogue: `const t = words('pages')`, then `t('home.title')`.
 * Keys are checked by the compiler; a missing word is a fault of ours and throws.
 */
export function words<N extends Namespace>(namespace: N): Words<N> {
  const known = made.get(namespace) ?? make(namespace)
  made.set(namespace, known)
  return known as Words<N>
}
