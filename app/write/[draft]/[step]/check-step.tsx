import type { Member } from '#lib/access/actor.ts'
import { newerRevision } from '#lib/workflow/draft-submit.ts'
import { Notice } from '../../../_ui/notice.tsx'
import { words } from '../../../_words/index.ts'
import { FaultList, type ToMend } from '../../../_write/fault-list.tsx'
import { FindingFields, findingNames, findingsIn, findingsToMend } from '../../../_write/finding-fields.tsx'
import { stepOf } from '../../../_write/layout.ts'
import { pointingFaults } from '../../../_write/pointing-faults.ts'
import { proposals } from '../../../_write/proposals.ts'
import { StepForm } from '../../../_write/step-form.tsx'
import type { FormView } from '../../../_write/view.ts'
import { discard } from '../../actions.ts'

const t = words('write')

/** The last step: everything that is to be mended, what lies outside practice, rights, and the button that sends. */
export async function CheckStep({ view, member, look }: { view: FormView; member: Member; look: boolean }) {
  const { draft } = view
  const [pointing, newer, proposed] = await Promise.all([
    pointingFaults(view),
    newerRevision(draft),
    proposals(view),
  ])
  const href = (name: string) => {
    const step = stepOf(draft.kind, name)
    return step === 'check' ? `#field-${name}` : `/write/${draft.id}/${step}?look=all#field-${name}`
  }
  const findings = findingsIn(view)
  const faults: ToMend[] = [
    ...view.faults
      .filter(({ missing }) => look || !missing)
      .map(({ name, sentence }) => ({ href: href(name), sentence })),
    ...pointing.map(({ name, sentence }) => ({ href: href(name), sentence })),
    ...(look ? findingsToMend(view) : []).map(({ name, sentence }) => ({ href: `#field-${name}`, sentence })),
  ]
  return (
    <div>
      {newer !== null && (
        <Notice kind="caution">
          <p>{t('check.newer', { number: String(newer.number), basedOn: String(draft.basedOn) })}</p>
          <p>
            <a href={`/write/${draft.id}/merge`}>{t('check.newerLink')}</a>
          </p>
        </Notice>
      )}
      {member.unconfirmed === true && (
        <Notice kind="note">
          <p>{t('check.unconfirmed')}</p>
        </Notice>
      )}
      <FaultList faults={faults} />
      <StepForm
        view={view}
        step="check"
        more={undefined}
        proposed={proposed}
        before={
          <Notice kind="note" title={t('check.rights')}>
            <p>{t('check.rightsNote')}</p>
          </Notice>
        }
        extra={{
          names: findingNames(view, findings),
          fields: <FindingFields view={view} findings={findings} />,
        }}
      />
      <details className="write-discard">
        <summary>{t('discard.title')}</summary>
        <form action={discard}>
          <p>{t('discard.text')}</p>
          <input type="hidden" name=":draft" value={draft.id} />
          <button className="button button-plain" type="submit">
            {t('discard.button')}
          </button>
        </form>
      </details>
    </div>
  )
}
