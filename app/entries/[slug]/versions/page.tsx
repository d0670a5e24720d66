import type { Metadata } from 'next'
import { may, mayEver } from '#lib/access/policy.ts'
import { partiesTo } from '#lib/db/authors.ts'
import {
  type EntryHead,
  entryHead,
  readableVersions,
  type VersionLine,
  versionBefore,
  versionsOf,
} from '#lib/db/versions.ts'
import { currentActor } from '../../../_http/actor.ts'
import { alternates } from '../../../_ui/alternates.ts'
import { type NameOf, namesOf } from '../../../_ui/author.ts'
import { Facts } from '../../../_ui/facts.tsx'
import { NOT_HERE, NotHere } from '../../../_ui/not-here.tsx'
import { type Query, wholeNumber } from '../../../_ui/query.ts'
import { Section } from '../../../_ui/section.tsx'
import { Written } from '../../../_ui/written.tsx'
import { citePath, comparePath, versionPath } from '../../../_versions/address.ts'
import { DeedList } from '../../../_versions/deeds.tsx'
import { formatDate } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { VersionsHead } from '../head.tsx'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('review')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const entry = await entryHead(await currentActor(), (await params).slug)
  return entry === null
    ? NOT_HERE
    : {
        title: t('versions.titleOf', { title: entry.title }),
        alternates: alternates(`/entries/${(await params).slug}/versions`),
      }
}

/** Every version of an entry, the latest first, with all that was decided about each and by whom. */
export default async function VersionsPage({ params, searchParams }: Props) {
  const { slug } = await params
  const actor = await currentActor()
  const entry = await entryHead(actor, slug)
  if (entry === null) return <NotHere />
  const [{ versions, next }, readable] = await Promise.all([
    versionsOf(actor, entry, wholeNumber((await searchParams).before)),
    readableVersions(actor, entry),
  ])
  const { entryId, caseSlug, published } = entry
  const answers =
    actor.kind === 'member' &&
    caseSlug !== null &&
    published !== null &&
    may(actor, 'answer', await partiesTo({ entryId, caseSlug }))
  const nameOf = await namesOf(
    versions.flatMap(({ authorKey, deeds }) => [authorKey, ...deeds.map(({ byKey }) => byKey)]),
  )
  return (
    <>
      <VersionsHead entry={entry} title={t('versions.title')} lead={t('versions.lead')} here="versions">
        <p className="facts-line">
          <span>{t('versions.count', { count: entry.latest })}</span>
          {entry.published !== null && (
            <>
              <a href={citePath(slug, entry.published)}>{t('versions.cite')}</a>
              <a href={`/entries/${slug}/dispute`}>{t('versions.dispute')}</a>
            </>
          )}
          {answers && <a href={`/entries/${slug}/answer`}>{t('answer.link')}</a>}
          {entry.kind === 'recipe' && (
            <a href={`/entries/${slug}/adaptations`}>{t('versions.adaptations')}</a>
          )}
        </p>
        <CompareForm slug={slug} numbers={readable} />
      </VersionsHead>
      {versions.map((version) => (
        <Version
          key={version.number}
          entry={entry}
          version={version}
          nameOf={nameOf}
          before={versionBefore(readable, version.number)}
          writes={mayEver(actor, 'submit')}
          mine={actor.kind === 'member' && actor.key === version.authorKey}
          strikes={may(actor, 'strike', undefined)}
        />
      ))}
      {next !== null && (
        <p className="actions">
          <a className="button button-plain" href={`/entries/${slug}/versions?before=${next}`}>
            {t('versions.earlier')}
          </a>
        </p>
      )}
    </>
  )
}

/** @param numbers of the versions that the reader may read, the latest first */
function CompareForm({ slug, numbers }: { slug: string; numbers: readonly number[] }) {
  const [latest, before] = numbers
  if (latest === undefined || before === undefined) return null
  return (
    <form className="actions compare-form" method="get" action={`/entries/${slug}/compare`}>
      {(['from', 'to'] as const).map((end) => (
        <label key={end} className="choice" htmlFor={`compare-${end}`}>
          {t(`compare.${end}`)}
          <select id={`compare-${end}`} name={end} defaultValue={end === 'from' ? before : latest}>
            {numbers.map((number) => (
              <option key={number} value={number}>
                {number}
              </option>
            ))}
          </select>
        </label>
      ))}
      <button className="button button-plain" type="submit">
        {t('compare.show')}
      </button>
    </form>
  )
}

/** How to write on from a version: correct what came back or still waits, return to what stood once. */
function WriteOn(props: { entry: EntryHead; number: number; state: VersionLine['state']; mine: boolean }) {
  const { entry, number, state, mine } = props
  const ref = `${entry.slug}@${number}`
  if (state === 'superseded') return <a href={`/write/new?back=${ref}`}>{t('versions.return')}</a>
  if (!mine || state === 'published' || state === 'withdrawn') return null
  return (
    <a href={`/write/new?from=${ref}`}>{t(state === 'submitted' ? 'versions.add' : 'versions.correct')}</a>
  )
}

function Version(props: {
  entry: EntryHead
  version: VersionLine
  nameOf: NameOf
  /** The version before it that the reader may read. */
  before: number | undefined
  writes: boolean
  mine: boolean
  strikes: boolean
}) {
  const { entry, version, nameOf } = props
  const { number, state, authorKey, submittedAt, note, digest, open, erased, deeds, basedOn } = version
  const isLatest = entry.published === number
  return (
    <Section
      id={`version-${number}`}
      title={
        open && !erased ? (
          <a href={versionPath(entry.slug, number)}>{t('versions.number', { number })}</a>
        ) : (
          t('versions.number', { number })
        )
      }
      note={t(`state.${state}`)}
    >
      <Facts
        facts={{
          [t('versions.author')]: nameOf(authorKey),
          [t('versions.submitted')]: formatDate(submittedAt),
          [t('versions.what')]: erased ? (
            t('versions.erased')
          ) : note === null ? (
            t('versions.closed')
          ) : (
            <Written>{note}</Written>
          ),
          [t('versions.basedOn')]: basedOn === null ? null : t('versions.number', { number: basedOn }),
          [t('versions.digest')]: <code>{digest}</code>,
        }}
      />
      {open && !erased && (
        <p className="facts-line">
          {props.before !== undefined && (
            <a href={comparePath(entry.slug, props.before, number)}>{t('compare.before')}</a>
          )}
          {!isLatest && entry.published !== null && (
            <a href={comparePath(entry.slug, number, entry.published)}>{t('compare.published')}</a>
          )}
          {props.writes && !entry.withdrawn && <WriteOn {...{ entry, number, state }} mine={props.mine} />}
        </p>
      )}
      {deeds.length > 0 ? (
        <DeedList
          kind={entry.kind}
          deeds={deeds}
          nameOf={nameOf}
          strikeAt={props.strikes ? (deed) => `/entries/${entry.slug}/strike?deed=${deed}` : undefined}
        />
      ) : (
        <p>{t('versions.waits')}</p>
      )}
    </Section>
  )
}
