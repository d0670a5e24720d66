import type { Metadata } from 'next'
import type { ReactNode } from 'react'
import { askedLanguage } from '#app/asked.ts'
import { content } from '#lib/content/index.ts'
import type { Caution } from '#lib/content/types.ts'
import { alternates } from '../_ui/alternates.ts'
import { cautionWords } from '../_ui/caution-words.ts'
import { Facts } from '../_ui/facts.tsx'
import { Hinted, hinter } from '../_ui/hint.tsx'
import { labelOf, materialLabel } from '../_ui/label.ts'
import { PageHead } from '../_ui/page-head.tsx'
import { Section } from '../_ui/section.tsx'
import { SourceList } from '../_ui/source-mark.tsx'
import { words } from '../_words/index.ts'

const t = words('library')

export const generateMetadata = (): Metadata => ({
  title: t('cautions.title'),
  alternates: alternates('/cautions'),
})

/** Every caution in full, each at an address of its own. */
export default function CautionsPage() {
  const cautions = [...content().cautions.values()].map((caution) => ({
    ...caution,
    ...cautionWords(caution),
  }))
  const hint = hinter(askedLanguage())
  return (
    <>
      <PageHead title={t('cautions.title')} lead={t('cautions.lead')}>
        <ul className="names">
          {cautions.map(({ id, title }) => (
            <li key={id}>
              <a className="touch" href={`#${id}`}>
                {title}
              </a>
            </li>
          ))}
        </ul>
      </PageHead>
      {cautions.map((caution) => (
        <Section key={caution.id} id={caution.id} title={caution.title}>
          <p>
            <strong>{caution.notice}</strong>
          </p>
          {caution.body.map((paragraph) => (
            <p key={paragraph}>
              <Hinted pieces={hint(paragraph)} />
            </p>
          ))}
          <Facts
            facts={{ ...appliesTo(caution), [t('guide.sources')]: <SourceList sources={caution.sources} /> }}
          />
        </Section>
      ))}
    </>
  )
}

/** What a caution is shown with, by kind; kinds without any are left out. */
function appliesTo({
  id,
  appliesTo: { materials, roles, uses, methods },
}: Caution): Record<string, ReactNode> {
  const named = [...content().materials.values()].filter((material) => material.cautions.includes(id))
  const all = [...new Set([...named.map((material) => material.id), ...materials])]
  const lists = {
    [t('cautions.materials')]: all.map((one) => (
      <a key={one} href={`/materials/${one}`}>
        {materialLabel(one)}
      </a>
    )),
    [t('cautions.roles')]: roles.map((role) => labelOf('roles', role)),
    [t('cautions.uses')]: uses.map((use) => labelOf('uses', use)),
    [t('cautions.methods')]: methods.map((method) => labelOf('methods', method)),
  }
  return Object.fromEntries(
    Object.entries(lists).flatMap(([name, items]) => (items.length === 0 ? [] : [[name, joined(items)]])),
  )
}

const joined = (items: readonly ReactNode[]): ReactNode =>
  items.flatMap((item, index) => (index === 0 ? [item] : ['; ', item]))
