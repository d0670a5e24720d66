import { words } from '../../../_words/index.ts'
import type { FormFault } from './form-faults.ts'

/** What is to be mended, each leading to its field. */
export function FaultList({ faults }: { faults: readonly FormFault[] }) {
  if (faults.length === 0) return null
  const t = words('job')
  return (
    // biome-ignore lint/a11y/noAutofocus: after a form that was refused, reading starts at what is wrong
    <div className="job-faults" role="alert" id="faults" tabIndex={-1} autoFocus>
      <p className="notice-title">{t('faults.title', { count: faults.length })}</p>
      <ul>
        {faults.map(({ name, sentence }) => (
          <li key={sentence}>{name === undefined ? sentence : <a href={`#field-${name}`}>{sentence}</a>}</li>
        ))}
      </ul>
      <p className="note">{t('faults.lead')}</p>
    </div>
  )
}
