import { v7 } from 'uuid'
import type { Draft } from '#lib/db/drafts.ts'
import { isOfEveryVersion } from '#lib/workflow/draft-fields.ts'
import { Section } from '../../_ui/section.tsx'
import { words } from '../../_words/index.ts'
import { fullLabel, numberIn } from '../../_write/labels.ts'
import { textShown, waitingTexts } from '../../_write/text-shown.ts'
import { viewOf } from '../../_write/view.ts'
import { beginWriting, settleBoth } from '../actions.ts'

const t = words('write')

/** What came in for a draft after it was sent, beside what was sent, and the two things that can be done with it. */
export async function LateText({ draft }: { draft: Draft }) {
  if (draft.held === null) return null
  const view = await viewOf(draft)
  const seen = waitingTexts(draft)
  const goesOn = Object.keys(seen).some(isOfEveryVersion)
  const text = (name: string, one: string) => textShown(view, name, one) || t('both.blank')
  return (
    <Section id="late" title={t('both.late')}>
      <p>{t('both.lateLead')}</p>
      <dl>
        {Object.entries(seen).map(([name, [sent = '', ...late]]) => (
          <div key={name} className="write-choice">
            <dt>{fullLabel(name, numberIn(draft.typed))}</dt>
            {late.map((one) => (
              <dd key={one} className="write-text">
                {text(name, one)}
              </dd>
            ))}
            <dd>
              <span className="note">{t('both.lateSent')}</span>{' '}
              <span className="write-text">{text(name, sent)}</span>
            </dd>
            {!isOfEveryVersion(name) && <dd className="note">{t('both.lateAddress')}</dd>}
          </div>
        ))}
      </dl>
      <div className="actions">
        {goesOn && (
          <form action={beginWriting} className="write-begin">
            <input type="hidden" name="late" value={draft.id} />
            <input type="hidden" name="key" value={v7()} />
            <button className="button" type="submit">
              {t('both.goOn')}
            </button>
          </form>
        )}
        <form action={settleBoth}>
          <input type="hidden" name=":draft" value={draft.id} />
          <input type="hidden" name=":seen" value={JSON.stringify(seen)} />
          {Object.keys(seen).map((name) => (
            <input key={name} type="hidden" name={name} value="stands" />
          ))}
          <button className="button button-plain" type="submit">
            {t('both.letGo')}
          </button>
        </form>
      </div>
    </Section>
  )
}
