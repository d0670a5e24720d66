import type { Metadata } from 'next'
import { alternates } from '../../../_ui/alternates.ts'
import { NOT_HERE, NotHere } from '../../../_ui/not-here.tsx'
import { type Query, wholeNumber } from '../../../_ui/query.ts'
import { Section } from '../../../_ui/section.tsx'
import { FORMS } from '../../../_versions/citation-forms.ts'
import { readCited } from '../../../_versions/read-cited.ts'
import { words } from '../../../_words/index.ts'
import { VersionsHead } from '../head.tsx'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('review')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const found = await readCited((await params).slug, undefined)
  return found === null
    ? NOT_HERE
    : {
        title: t('cite.titleOf', { title: found.cited.title }),
        alternates: alternates(`/entries/${(await params).slug}/cite`),
      }
}

/** One version as it can be cited, in each form, to copy or to take away. */
export default async function CitePage({ params, searchParams }: Props) {
  const { slug } = await params
  const found = await readCited(slug, wholeNumber((await searchParams).revision))
  if (found === null) return <NotHere />
  const { entry, cited } = found
  return (
    <>
      <VersionsHead entry={entry} title={t('cite.title', { number: cited.revision })} lead={t('cite.lead')} />
      {(['text', 'bibtex', 'ris', 'csl-json'] as const).map((form) => (
        <Section key={form} id={`cite-${form}`} title={t(`cite.form.${form}`)}>
          <pre className="citation">{FORMS[form].write(cited)}</pre>
          <p>
            <a className="touch" href={`/entries/${slug}/cite/${form}?revision=${cited.revision}`} download>
              {t('cite.download', { file: `${slug}-${cited.revision}.${FORMS[form].ending}` })}
            </a>
          </p>
        </Section>
      ))}
    </>
  )
}
