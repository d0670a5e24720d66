import { asWritten } from './as-written.ts'

/** Words that stand as they were written, in English, within words in another language. */
export function Written({ children }: { children: React.ReactNode }) {
  const { lang } = asWritten()
  return lang === undefined ? children : <span lang={lang}>{children}</span>
}

/** A sentence of ours around words that stand as they were written; `say` puts a text into it. */
export function WrittenIn({ say, children }: { say: (text: string) => string; children: string }) {
  const [before, after = ''] = say(HOLE).split(HOLE)
  return (
    <>
      {before}
      <Written>{children}</Written>
      {after}
    </>
  )
}

/** Stands in no sentence. */
const HOLE = '\uFFFC'
