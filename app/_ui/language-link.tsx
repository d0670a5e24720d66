'use client'

import { askedLanguage } from '#app/asked.ts'
import { switched } from '../_words/language.ts'
import { LANGUAGES, OWN_NAMES } from '../_words/languages.ts'

/**
 * The way to this page in the other language, with all that its address holds.
 *
 * @param here its address as it was asked for; as scripts change it, the link follows when it is reached for
 */
export function LanguageLink({ here }: { here: string }) {
  const now = askedLanguage()
  const follow = ({ currentTarget }: { currentTarget: HTMLAnchorElement }) => {
    const to = LANGUAGES.find((one) => one === currentTarget.lang) ?? 'en'
    const { pathname, search, hash } = window.location
    currentTarget.href = switched(`${pathname}${search}${hash}`, to)
  }
  return LANGUAGES.filter((one) => one !== now).map((one) => (
    <a
      key={one}
      className="language"
      href={switched(here, one)}
      lang={one}
      hrefLang={one}
      onPointerEnter={follow}
      onFocus={follow}
      onClick={follow}
    >
      {OWN_NAMES[one]}
    </a>
  ))
}
