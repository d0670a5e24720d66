import type { Metadata } from 'next'
import { alternates } from '../_ui/alternates.ts'
import { PageHead } from '../_ui/page-head.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'

const t = words('pages')
const PARTS = ['what', 'invented', 'limits', 'safety', 'private', 'licence'] as const

export const generateMetadata = (): Metadata => ({
  title: t('about.title'),
  alternates: alternates('/about'),
})

/** What the site is, what it is not, and on what terms its words and figures may be used. */
export default function AboutPage() {
  return (
    <>
      <PageHead title={t('about.title')} lead={t('about.lead')} />
      {PARTS.map((part) => (
        <Section key={part} id={part} title={t(`about.${part}.title`)}>
          {t(`about.${part}.text`)
            .split('\n')
            .map((paragraph) => (
              <p key={paragraph}>{paragraph}</p>
            ))}
        </Section>
      ))}
    </>
  )
}
