import { words } from '../_words/index.ts'
import { Notice } from './notice.tsx'

/** The mark beside an invented entry in a list. */
export const InventedMark = () => <span className="invented">{words('common')('invented.mark')}</span>

/** The notice at the head of a page that shows invented entries. */
export const InventedNotice = ({ page }: { page: 'one' | 'list' }) => (
  <Notice kind="invented">
    <p>{words('common')(`invented.${page}`)}</p>
  </Notice>
)
