import { words } from '../../_words/index.ts'
import type { Changes } from '../changes-since.ts'
import { Notice } from '../notice.tsx'
import type { FormFault } from './run.ts'

/** What is to be mended, each leading to its field. */
export function BenchFaults({ faults, live }: { faults: readonly FormFault[]; live: boolean }) {
  const t = words('workOut')
  return (
    <div
      className="bench-faults"
      role={live ? undefined : 'alert'}
      id="faults"
      tabIndex={-1}
      // biome-ignore lint/a11y/noAutofocus: after a form that was refused, reading starts at what is wrong
      autoFocus={!live}
    >
      <p className="notice-title">{t('faults.title', { count: faults.length })}</p>
      <ul>
        {faults.map(({ name, sentence }) => (
          <li key={sentence}>{name === undefined ? sentence : <a href={`#field-${name}`}>{sentence}</a>}</li>
        ))}
      </ul>
      <p className="note">{t('faults.kept')}</p>
    </div>
  )
}

/** Says exactly what became different since the address was made. */
export function VersionNotice({ changes, today }: { changes: Changes; today: string }) {
  const t = words('workOut')
  const { edition, sums, figures } = changes
  return (
    <Notice kind="note" title={t('versions.changed')}>
      {edition && <p>{t('versions.edition', { ...edition })}</p>}
      {sums && <p>{t('versions.sums', { ...sums })}</p>}
      <p>{t(`versions.${figures}`)}</p>
      <p className="screen-only">
        <a href={today}>{t('versions.fresh')}</a>
      </p>
    </Notice>
  )
}
