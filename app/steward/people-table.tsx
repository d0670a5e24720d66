import type { PersonLine } from '#lib/db/accounts.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { formatDate, formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'

const t = words('steward')

/** People, each leading to where their roles are named. */
export function PeopleTable({ people }: { people: readonly PersonLine[] }) {
  if (people.length === 0) return <p>{t('people.none')}</p>
  return (
    <DataTable
      caption={t('people.title')}
      label={t('people.title')}
      hideCaption
      stack
      columns={(['name', 'email', 'roles', 'since'] as const).map((id) => ({
        key: id,
        head: t(`people.column.${id}`),
      }))}
      rows={people.map((person) => ({
        key: person.key,
        cells: {
          name: (
            <a href={`/steward/people/${person.key}`}>
              {person.name === '' ? t('people.closed') : person.name}
            </a>
          ),
          email: <Address person={person} />,
          roles: rolesText(person),
          since: formatDate(person.createdAt),
        },
      }))}
    />
  )
}

const Address = ({ person: { email, confirmed } }: { person: PersonLine }) =>
  email === null || confirmed ? email : t('people.unconfirmed', { email })

/** A person's roles in words. */
export const rolesText = ({ roles }: PersonLine): string =>
  roles.length === 0 ? t('people.noRole') : formatList(roles.map((role) => words('account')(`role.${role}`)))
