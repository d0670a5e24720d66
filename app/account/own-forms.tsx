import type { SignedIn } from '#lib/db/sessions.ts'
import { sendsMail } from '#lib/mail/send-mail.ts'
import { ActionForm, type FormField } from '../_ui/action-form.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { LANGUAGES, OWN_NAMES } from '../_words/languages.ts'
import { NAME, NEW_PASSWORD } from '../sign-in/fields.ts'
import { closeAccount, rename, setAddress, setLanguage, setPassword } from './actions.ts'

const t = words('account')
const faulty = () => t('form.faulty')

type Props = { readonly session: SignedIn }

/** The password that shows that it is the owner, where there is one. */
const current = ({ hasPassword }: SignedIn): readonly FormField[] =>
  hasPassword
    ? [
        {
          name: 'current-password',
          label: t('field.current-password'),
          kind: 'password',
          autoComplete: 'current-password',
        },
      ]
    : []

/** Name and address. */
export const WhoSection = ({ session }: Props) => (
  <Section id="name" title={t('account.nameAndAddress')} note={t('account.nameNote')}>
    <ActionForm
      id="rename"
      action={rename}
      fields={[{ ...NAME, value: session.name }]}
      send={t('account.rename')}
      faulty={faulty()}
      plain
    />
    <ActionForm
      id="address"
      action={setAddress}
      fields={[
        {
          name: 'email',
          label: t('field.email'),
          hint: t(sendsMail() ? 'hint.emailByMail' : 'hint.emailPlain'),
          kind: 'email',
          autoComplete: 'email',
          value: session.email ?? '',
        },
        ...current(session),
      ]}
      send={t(sendsMail() ? 'account.sendConfirm' : 'account.changeAddress')}
      faulty={faulty()}
      plain
    />
  </Section>
)

/** The language of mail and of the calendar: pages have theirs from the address. */
export const LanguageSection = ({ session }: Props) => (
  <Section id="set-language" title={t('field.language')} note={t('account.languageNote')}>
    <ActionForm
      id="language"
      action={setLanguage}
      fields={[
        {
          name: 'language',
          label: t('field.language'),
          kind: 'choice',
          value: session.language,
          options: LANGUAGES.map((value) => ({ value, label: OWN_NAMES[value] })),
        },
      ]}
      send={t('account.setLanguage')}
      faulty={faulty()}
      plain
    />
  </Section>
)

export const PasswordSection = ({ session }: Props) => (
  <Section id="set-password" title={t('field.password')} note={t('account.passwordNote')}>
    <ActionForm
      id="password"
      action={setPassword}
      fields={[...current(session), { ...NEW_PASSWORD, label: t('account.newPassword') }]}
      send={t('account.setPassword')}
      faulty={faulty()}
      plain
    />
  </Section>
)

export const CloseSection = ({ session }: Props) => (
  <Section id="close" title={t('account.close')}>
    <p>{t('account.closeLead')}</p>
    <ActionForm
      id="close-account"
      action={closeAccount}
      fields={[
        ...current(session),
        {
          name: 'sure',
          label: t('field.sure'),
          kind: 'checks',
          options: [{ value: 'yes', label: t('account.closeSure') }],
        },
      ]}
      send={t('account.closeSend')}
      faulty={faulty()}
      plain
    />
  </Section>
)
