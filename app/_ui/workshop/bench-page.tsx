import type { Metadata } from 'next'
import type { ComponentType } from 'react'
import { content } from '#lib/content/index.ts'
import { readSettings } from '#lib/env.ts'
import { SUMS_VERSION } from '#lib/mortar/version.ts'
import { typedFrom } from '../../_http/form.ts'
import { words } from '../../_words/index.ts'
import { inLanguage } from '../../_words/language.ts'
import { Cautions } from '../cautions.tsx'
import { PageHead } from '../page-head.tsx'
import type { Query } from '../query.ts'
import { askedSystem } from '../systems.ts'
import { benchWords, type PageWords } from './bench-words.ts'
import type { BenchData } from './brought.ts'
import type { AnyCalculation } from './calculation.ts'
import { benchData } from './data.ts'
import { workOut } from './run.ts'
import { switchUnits } from './switch-units.ts'
import { addressOf, isComplete, versionsOf } from './versions.ts'
import type { WorkshopProps } from './workshop.tsx'
import './workshop.css'
import { redirect } from '../../_http/redirect.ts'
import { alternates } from '../alternates.ts'

/** One page of the workshop: its calculation, its words, and the part of it that runs in the browser too. */
export interface BenchPageOf {
  readonly calculation: AnyCalculation
  readonly page: PageWords
  /** Cautions of content/cautions that stand before everything else. */
  readonly cautions?: readonly string[]
}

export const pathOf = ({ calculation }: Pick<BenchPageOf, 'calculation'>) => `/work-out/${calculation.name}`

/** Title and address of a page; an address with figures in it is not for search engines. */
export const benchMetadata = (of: BenchPageOf): Metadata => ({
  title: words('workOut')(`${of.page}.title`),
  description: words('workOut')(`${of.page}.lead`),
  alternates: alternates(pathOf(of)),
})

/** A calculation page. Every page of the workshop is this one with another declaration. */
export function BenchPage({
  of,
  Live,
  query,
  held,
}: {
  of: BenchPageOf
  Live: ComponentType<WorkshopProps>
  query: Query
  /** What the site holds that may lie near the result. */
  held?: BenchData['held']
}) {
  const t = words('workOut')
  const { calculation, page, cautions = [] } = of
  const path = pathOf(of)
  const data = { ...benchData(calculation), ...(held && { held }) }
  const editions = { edition: content().edition, sums: SUMS_VERSION }
  const typed = typedFrom(query)
  const to = askedSystem(typed)
  const sent = (to && switchUnits(calculation, typed, data, to)) ?? typed
  const { form, shown } = workOut(calculation, sent, data)
  if (shown && !form.fresh && !isComplete(sent))
    redirect(`${addressOf(path, form.typed, versionsOf(editions, shown.blocks))}#result`)
  const cautioned = cautions.flatMap((id) => content().cautions.get(id) ?? [])
  return (
    <>
      <PageHead
        title={t(`${page}.title`)}
        kicker={<a href="/work-out">{t('kicker')}</a>}
        lead={<span className="screen-only">{t(`${page}.lead`)}</span>}
      />
      <Cautions cautions={cautioned} />
      <Live
        sent={sent}
        data={data}
        words={benchWords(page)}
        editions={editions}
        path={inLanguage(path)}
        origin={readSettings().siteUrl}
      />
    </>
  )
}
