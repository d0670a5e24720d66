import type { SessionLine } from '#lib/db/sessions.ts'
import { ActionForm } from '../_ui/action-form.tsx'
import { Section } from '../_ui/section.tsx'
import { Told } from '../_ui/told.tsx'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { endSessions } from './actions.ts'
import { agentWords } from './agent.ts'

const t = words('account')

/** Every browser that is signed in, each with a way to end it. */
export const SessionsSection = ({
  sessions,
  own,
  ended,
}: {
  sessions: readonly SessionLine[]
  own: string
  /** The one that was ended just now, or `others`. */
  ended: string | undefined
}) => (
  <Section id="sessions" title={t('sessions.title')} note={t('sessions.note')}>
    {ended !== undefined && (
      <Told key={ended}>{t(ended === 'others' ? 'sessions.endedOthers' : 'sessions.ended')}</Told>
    )}
    <ul className="index">
      {sessions.map(({ id, how, agent, createdAt, seenAt }) => (
        <li key={id}>
          <p className="index-title">{agentWords(agent)}</p>
          <p className="facts-line">
            <span>{t(`sessions.how.${how}`, { on: formatDate(createdAt) })}</span>
            <span>{id === own ? t('sessions.this') : t('sessions.seen', { on: formatDate(seenAt) })}</span>
          </p>
          {id !== own && (
            <ActionForm
              id={`end-${id}`}
              action={endSessions}
              hidden={{ session: id }}
              send={t('sessions.end')}
              about={`${agentWords(agent)}, ${formatDate(createdAt)}`}
              faulty={t('form.faulty')}
              plain
            />
          )}
        </li>
      ))}
    </ul>
    {sessions.length > 1 && (
      <ActionForm
        id="end-others"
        action={endSessions}
        hidden={{ session: 'others' }}
        send={t('sessions.endOthers')}
        faulty={t('form.faulty')}
        plain
      />
    )}
  </Section>
)
