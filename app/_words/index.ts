import { createTranslator } from 'use-intl/core'
import common from './en/common.json'
import faults from './en/faults.json'
import job from './en/job.json'
import library from './en/library.json'
import pages from './en/pages.json'
import steps from './en/steps.json'
import stepsAnalysis from './en/steps-analysis.json'
import terms from './en/terms.json'

/** The one language so far. Numbers and dates follow it too, never the server's own settings. */
export const LOCALE = 'en-GB'
export const TIME_ZONE = 'UTC'

/** Each file of the catalogue is a namespace of its own name. */
const messages = { common, faults, job, library, pages, steps: { ...steps, analysis: stepsAnalysis }, terms }
export type Messages = typeof messages
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
