import { ActionForm } from '../_ui/action-form.tsx'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { claimRevision, releaseRevision } from './actions.ts'

/** Who has an item in hand, and the button to take it or to put it back. */
export function Hold(props: { revisionId: string; heldBy: string | null; until: Date | null; me: string }) {
  const { revisionId, heldBy, until, me } = props
  const t = words('review')
  if (heldBy !== null && heldBy !== me) return null
  const mine = heldBy === me
  return (
    <div className="hold">
      <p className="note">{mine && until ? t('hold.mine', { date: formatDate(until) }) : t('hold.free')}</p>
      <ActionForm
        id={mine ? 'release' : 'claim'}
        action={mine ? releaseRevision : claimRevision}
        hidden={{ revisionId }}
        send={t(mine ? 'hold.release' : 'hold.claim')}
        faulty={t('form.faulty')}
        plain
      />
    </div>
  )
}
