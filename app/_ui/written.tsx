import type { ReactNode } from 'react'
import { asWritten, inEnglish } from './as-written.ts'

/** Words that somebody wrote for the record, within words of ours. */
export const Written = ({ children }: { children: ReactNode }) => marked(asWritten(), children)

/** Words of content that are English, within words in another language. */
export const English = ({ children }: { children: ReactNode }) => marked(inEnglish(), children)

interface Sentence {
  /** Puts a text into it. */
  readonly say: (text: string) => string
  readonly children: string
}

/** A sentence of ours around words that somebody wrote for the record. */
export const WrittenIn = ({ say, children }: Sentence) => around(say, <Written>{children}</Written>)

/** A sentence of ours around words of content that are English. */
export const EnglishIn = ({ say, children }: Sentence) => around(say, <English>{children}</English>)

/** Words in the language that is told, or in that of the page, with what we say around them. */
export const InLanguage = (props: { lang?: string; say?: Sentence['say']; children: string }) =>
  around(props.say ?? ((text) => text), marked(props, props.children))

const marked = ({ lang }: { lang?: string }, words: ReactNode): ReactNode =>
  lang === undefined ? words : <span lang={lang}>{words}</span>

function around(say: Sentence['say'], words: ReactNode) {
  const [before, after = ''] = say(HOLE).split(HOLE)
  return (
    <>
      {before}
      {words}
      {after}
    </>
  )
}

/** Stands in no sentence. */
const HOLE = '\uFFFC'
