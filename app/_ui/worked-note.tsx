import { COVERAGE } from '#lib/mortar/spread.ts'
import { words } from '../_words/index.ts'

/** How the restated figures beside it came about, with the way to the method. */
export const WorkedNote = ({ of }: { of: 'worked.note' | 'table.workedNote' }) =>
  words('pages').rich(of, {
    share: COVERAGE * 100,
    link: (text) => <a href="/method#sums">{text}</a>,
  })
