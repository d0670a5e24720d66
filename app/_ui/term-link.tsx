import { isPaged } from '#lib/content/pages.ts'
import { termName, termOf } from './label.ts'
import { nameLang } from './term-name.tsx'

/**
 * What a term is called, leading to its page, or to its place in its list; its id where the vocabulary has no such term.
 *
 * @param props.say how the name stands here
 */
export function TermLink(props: { vocabulary: string; id: string; say?: (name: string) => string }) {
  const { vocabulary, id, say = (name) => name } = props
  const term = termOf(vocabulary, id)
  if (term === undefined) return id
  return (
    <a
      href={isPaged(vocabulary) ? `/terms/${vocabulary}/${id}` : `/terms/${vocabulary}#${id}`}
      {...nameLang(term.labels)}
    >
      {say(termName(term))}
    </a>
  )
}
