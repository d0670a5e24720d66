import type { ReadText } from '#lib/search/index.ts'
import { formatList } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

/** How the words of a question were taken, where that was not simply as they stand. */
export function ReadAs({ read: { corrected, excluded, ignored } }: { read: ReadText }) {
  const t = words('find')
  const said = [
    ...corrected.map(({ typed, to }) => t('read.corrected', { typed, to })),
    ...(excluded.length > 0
      ? [t('read.excluded', { words: formatList(quoted(excluded), 'disjunction') })]
      : []),
    ...(ignored.length > 0 ? [t('read.ignored', { words: formatList(quoted(ignored)) })] : []),
  ]
  return said.map((sentence) => (
    <p key={sentence} className="note">
      {sentence}
    </p>
  ))
}

const quoted = (typed: readonly string[]) => typed.map((word) => `“${word}”`)
