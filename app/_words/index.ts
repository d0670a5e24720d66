import { createTranslator } from 'use-intl/core'
import { askedLanguage } from '#app/asked.ts'
import { type Messages, messagesOf } from '#app/catalogue.ts'
import { locale } from './language.ts'
import type { Language } from './languages.ts'

export { eachLanguage, locale } from './language.ts'
export const TIME_ZONE = 'UTC'

export type { Messages }
export type Namespace = keyof Messages

const make = <N extends Namespace>(language: Language, namespace: N) =>
  createTranslator<Messages, N>({
    locale: locale(language),
    timeZone: TIME_ZONE,
    messages: messagesOf(language),
    namespace,
    onError: (error) => {
      throw error
    },
  })
type Words<N extends Namespace> = ReturnType<typeof make<N>>

/** Each translator keeps the sentences it has parsed; making one anew for every figure took half a page's time. */
const made = new Map<string, unknown>()

function spoken<N extends Namespace>(namespace: N, language: Language): Words<N> {
  const name = `${language} ${namespace}`
  const known = made.get(name) ?? make(language, namespace)
  made.set(name, known)
  return known as Words<N>
}

type Given = Parameters<Words<'common'>>

/**
 * The words of one part of the catalogue: `const t = words('pages')`, then `t('home.title')`, in the language of the
 * request that is being answered by then. Keys are checked by the compiler; a missing word is a fault of ours and throws.
 *
 * @param language where no request says it
 */
export function words<N extends Namespace>(namespace: N, language?: Language): Words<N> {
  if (language !== undefined) return spoken(namespace, language)
  const now = () => spoken(namespace, askedLanguage()) as unknown as Words<'common'>
  const t = (...given: Given) => now()(...given)
  t.rich = (...given: Parameters<Words<'common'>['rich']>) => now().rich(...given)
  t.markup = (...given: Parameters<Words<'common'>['markup']>) => now().markup(...given)
  t.raw = (...given: Parameters<Words<'common'>['raw']>) => now().raw(...given)
  t.has = (...given: Parameters<Words<'common'>['has']>) => now().has(...given)
  return t as unknown as Words<N>
}
