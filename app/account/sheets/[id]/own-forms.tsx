import type { KeptSheet } from '#lib/db/kept-sheets.ts'
import { sheetFields } from '../../../_kept/fields.ts'
import { ActionForm } from '../../../_ui/action-form.tsx'
import { Section } from '../../../_ui/section.tsx'
import { words } from '../../../_words/index.ts'
import { deleteSheet, renameSheet } from '../actions.ts'

const t = words('kept')

/** What its owner may do with a kept sheet. */
export const OwnForms = ({ kept: { id, name, note } }: { kept: KeptSheet }) => (
  <>
    <Section id="change" title={t('change.title')} note={t('change.lead')}>
      <ActionForm
        id="rename"
        action={renameSheet}
        hidden={{ id }}
        fields={sheetFields({ name, note })}
        send={t('change.send')}
        faulty={t('faulty')}
        plain
      />
    </Section>
    <Section id="delete" title={t('delete.title')} note={t('delete.lead')}>
      <ActionForm
        id="delete-sheet"
        action={deleteSheet}
        hidden={{ id }}
        fields={[
          {
            name: 'sure',
            label: t('field.sure'),
            kind: 'checks',
            options: [{ value: 'yes', label: t('delete.sure') }],
          },
        ]}
        send={t('delete.send')}
        faulty={t('faulty')}
        plain
      />
    </Section>
  </>
)
