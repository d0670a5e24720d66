import { askedLanguage } from '#app/asked.ts'

/** What content says in so many words beside names. */
type Field = 'definition' | 'note' | 'title'
type Sayings = { readonly [F in Field]?: string | undefined }
type Speaking = Sayings & { readonly es?: Sayings | undefined }

/** What a thing of content says in a field, in the language spoken now; in English where it has no other words. */
export const said = (of: Speaking, field: Field): string | undefined => ownWords(of, field) ?? of[field]

/** The same on a page, marked as English where it is English on a page in another language. */
export function Said({ of, field }: { of: Speaking; field: Field }) {
  const text = said(of, field)
  return text === undefined || ownWords(of, field) !== undefined ? text : <span lang="en">{text}</span>
}

function ownWords(of: Speaking, field: Field): string | undefined {
  const language = askedLanguage()
  return (language === 'en' ? of : of[language])?.[field]
}
