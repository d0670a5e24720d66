import { askedLanguage } from '#app/asked.ts'
import { WANTED_LANGUAGES } from '#lib/content/gaps.ts'
import type { Labels } from '#lib/content/types.ts'
import library from '../_words/en/library.json'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'

/**
 * What a thing is called in other languages than the page's, the word tagged with its language; what is not known is
 * left out.
 */
export function NamesElsewhere(props: { english: readonly string[]; names: Labels | undefined }) {
  // Where content has no name in the page's language, the English one is its title.
  const { [askedLanguage()]: own, ...others } = props.names ?? {}
  const shown = own === undefined ? others : { en: props.english, ...others }
  if (Object.keys(shown).length === 0) return null
  return (
    <ul className="names">
      {Object.entries(shown).map(([language, name]) => (
        <li key={language}>
          <abbr title={languageName(language)}>{language}</abbr>{' '}
          <span lang={language}>{typeof name === 'string' ? name : name.join(', ')}</span>
        </li>
      ))}
    </ul>
  )
}

/** The languages that labels are wanted in and this one lacks, as a phrase; undefined when it lacks none. */
export function lackingIn(names: Readonly<Record<string, unknown>> = {}): string | undefined {
  const lacking = WANTED_LANGUAGES.filter((language) => names[language] === undefined)
  return lacking.length === 0 ? undefined : formatList(lacking.map(languageName))
}

/** A language by its tag: `German`. */
const languageName = (tag: string): string =>
  words('library')(`language.${isNamed(tag) ? tag : 'other'}`, { tag })

const isNamed = (tag: string): tag is keyof typeof library.language => Object.hasOwn(library.language, tag)
