import type { Published } from '#lib/db/published.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import { KeepSheet } from '../../../_kept/keep-sheet.tsx'
import { asWritten } from '../../../_ui/as-written.ts'
import { labelOf } from '../../../_ui/label.ts'
import { Notice } from '../../../_ui/notice.tsx'
import { words } from '../../../_words/index.ts'
import { inLanguage } from '../../../_words/language.ts'
import { JobCautions } from './cautions-line.tsx'
import { Sequence, Storage, Warnings } from './guidance.tsx'
import { Quantities } from './quantities.tsx'
import type { Inputs } from './read-inputs.ts'
import { TakenList } from './taken-list.tsx'
import { Totals } from './totals.tsx'
import type { Versions } from './versions.ts'
import { leavesWorking } from './wish.ts'
import { WorksDrawn, worksAsked } from './work-drawn.tsx'
import { WorkedFrom } from './worked-from.tsx'
import { Working } from './working.tsx'
import { WorksTable } from './works-table.tsx'

interface Props {
  readonly recipe: Published<RecipeBody>
  readonly inputs: Inputs
  readonly sheet: JobSheet
  readonly versions: Versions
  /** Opens the working, so that it prints too. */
  readonly working: boolean
  readonly workingAddress: string
  readonly address: string
  /** The same with what stands in the form by itself, for a script that follows it. */
  readonly fullAddress: string
  readonly cardAddress: string
}

/** The sheet that goes to the site: one page of paper, and the working behind it. */
export function Sheet({
  recipe,
  inputs,
  sheet,
  versions,
  working,
  workingAddress,
  address,
  fullAddress,
  cardAddress,
}: Props) {
  const t = words('job')
  const { body, slug } = recipe
  const { system, money } = inputs
  return (
    <section
      className="job-sheet"
      id="sheet"
      aria-labelledby="sheet-head"
      data-address={inLanguage(fullAddress)}
    >
      <h2 id="sheet-head">{t('sheet.title')}</h2>
      {body.standing !== 'in-use' && (
        <Notice
          kind={body.standing === 'known-hazard' ? 'hazard' : 'caution'}
          title={labelOf('standings', body.standing)}
        >
          <p {...asWritten()}>{body.standingReason}</p>
          <p>{t('standing.printed', { reason: inputs.reason })}</p>
        </Notice>
      )}
      {inputs.exampled && <p className="screen-only">{t('sheet.example')}</p>}
      <WorkedFrom inputs={inputs} />
      <Totals sheet={sheet} system={system} money={money} />
      <WorksTable sheet={sheet} system={system} />
      <Quantities sheet={sheet} system={system} money={money} />
      <div className="job-columns">
        <Warnings warnings={sheet.warnings} system={system} recipe={body} works={inputs.works} />
        <Sequence steps={sheet.sequence} />
        <Storage storage={sheet.storage} />
        <JobCautions sheet={sheet} recipe={body} slug={slug} />
      </div>
      <p className="job-versions note">
        {t('versions.line', {
          edition: versions.edition,
          digest: versions.digest,
          sums: String(versions.sums),
          revision: String(versions.revision),
        })}{' '}
        <span className="screen-only">{t('versions.note')}</span>
      </p>
      <p className="screen-only note">
        {t(sheet.works.length === 1 ? 'sheet.print' : 'sheet.printSeveral')}{' '}
        <a href={workingAddress}>{t('sheet.workingOpen')}</a>
      </p>
      <p className="screen-only">
        <a className="touch" href={cardAddress}>
          {t('card.open')}
        </a>
      </p>
      <KeepSheet fresh={inputs.exampled} address={address} />
      <WorksDrawn works={worksAsked(inputs)} system={system} printed={working} />
      <TakenList sheet={sheet} inputs={inputs} printed={working} />
      <Working sheet={sheet} open={working} left={!working && leavesWorking(inputs.typed.show)} />
    </section>
  )
}
