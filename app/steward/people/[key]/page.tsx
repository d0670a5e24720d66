import type { Metadata } from 'next'
import { ROLES } from '#lib/access/actor.ts'
import { personByKey } from '#lib/db/accounts.ts'
import { enter } from '../../../_http/actor.ts'
import { ActionForm } from '../../../_ui/action-form.tsx'
import { NotHere } from '../../../_ui/not-here.tsx'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { words } from '../../../_words/index.ts'
import { nameRoles } from '../../actions.ts'
import { StewardPlaces } from '../../places.tsx'

const t = words('steward')

export const generateMetadata = (): Metadata => ({ title: t('person.roles'), robots: { index: false } })

/** One person, and the roles they have. */
export default async function OnePerson({ params }: { params: Promise<{ key: string }> }) {
  const { key } = await params
  if ((await enter('/steward/people/[key]', `/steward/people/${key}`)) === null) return <NotYours />
  const person = await personByKey(key)
  if (person === null || person.closed) return <NotHere lead={t('person.absent')} />
  return (
    <>
      <PageHead title={person.name} kicker={t('people.title')} lead={t('person.lead')}>
        <StewardPlaces />
      </PageHead>
      <ActionForm
        id="roles"
        action={nameRoles}
        hidden={{ person: key }}
        fields={[
          {
            name: 'roles',
            label: t('person.roles'),
            hint: t('person.rolesHint'),
            kind: 'checks',
            value: person.roles.join(' '),
            options: ROLES.map((role) => ({ value: role, label: words('account')(`role.${role}`) })),
          },
        ]}
        send={t('person.save')}
        faulty={words('account')('form.faulty')}
      />
      <p>
        <a href={`/steward/audit?${new URLSearchParams({ person: key })}`}>{t('person.acts')}</a>
      </p>
    </>
  )
}
