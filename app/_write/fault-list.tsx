import { words } from '../_words/index.ts'

const t = words('write')

/** One thing to mend, and the address of its field. */
export interface ToMend {
  readonly href: string
  readonly sentence: string
}

/** What is to be mended, each leading to its field; after a save that found something, reading starts here. */
export function FaultList({ faults }: { faults: readonly ToMend[] }) {
  if (faults.length === 0) return null
  return (
    // biome-ignore lint/a11y/noAutofocus: after a form that was refused, reading starts at what is wrong
    <div className="write-faults" role="alert" id="faults" tabIndex={-1} autoFocus>
      <p className="notice-title">{t('faults.title', { count: faults.length })}</p>
      <ul>
        {faults.map(({ href, sentence }) => (
          <li key={`${href} ${sentence}`}>
            <a href={href}>{sentence}</a>
          </li>
        ))}
      </ul>
      <p className="note">{t('faults.lead')}</p>
    </div>
  )
}
