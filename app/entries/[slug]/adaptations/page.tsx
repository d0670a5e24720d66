import type { Metadata } from 'next'
import { mayEver } from '#lib/access/policy.ts'
import { type Adaptation, adaptationTree } from '#lib/db/adaptations.ts'
import { entryHead } from '#lib/db/versions.ts'
import { currentActor } from '../../../_http/actor.ts'
import { alternates } from '../../../_ui/alternates.ts'
import { asWritten } from '../../../_ui/as-written.ts'
import { InventedMark } from '../../../_ui/invented.tsx'
import { NOT_HERE, NotHere } from '../../../_ui/not-here.tsx'
import { Section } from '../../../_ui/section.tsx'
import { words } from '../../../_words/index.ts'
import { VersionsHead } from '../head.tsx'

interface Props {
  params: Promise<{ slug: string }>
}

const t = words('review')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const entry = await entryHead(await currentActor(), (await params).slug)
  if (entry?.kind !== 'recipe') return NOT_HERE
  return {
    title: t('adaptations.titleOf', { title: entry.title }),
    alternates: alternates(`/entries/${(await params).slug}/adaptations`),
  }
}

/** The tree of recipes that go back to one, each with the version it was adapted from. */
export default async function AdaptationsPage({ params }: Props) {
  const { slug } = await params
  const actor = await currentActor()
  const entry = await entryHead(actor, slug)
  if (entry?.kind !== 'recipe') return <NotHere />
  const tree = await adaptationTree(entry.entryId)
  const [root] = tree
  return (
    <>
      <VersionsHead entry={entry} title={t('adaptations.title')} lead={t('adaptations.lead')}>
        {entry.published !== null && mayEver(actor, 'submit') && (
          <p className="actions">
            <a className="button button-plain" href={`/write/new?adapt=${slug}@${entry.published}`}>
              {t('adaptations.adapt')}
            </a>
          </p>
        )}
      </VersionsHead>
      <Section id="tree" title={t('adaptations.tree', { count: Math.max(0, tree.length - 1) })}>
        {root === undefined || tree.length < 2 ? (
          <p>{t('adaptations.none')}</p>
        ) : (
          <ul className="adaptations">
            <Branch node={root} tree={tree} here={slug} />
          </ul>
        )}
      </Section>
    </>
  )
}

function Branch({ node, tree, here }: { node: Adaptation; tree: readonly Adaptation[]; here: string }) {
  const children = tree.filter(({ parentId, depth }) => parentId === node.entryId && depth === node.depth + 1)
  return (
    <li>
      {node.slug === here ? (
        <strong aria-current="page" {...asWritten()}>
          {node.title}
        </strong>
      ) : (
        <a href={`/recipes/${node.slug}`} {...asWritten()}>
          {node.title}
        </a>
      )}{' '}
      {node.invented && <InventedMark />}{' '}
      {node.parentRevision !== null && (
        <span className="note">{t('adaptations.from', { number: node.parentRevision })}</span>
      )}
      {children.length > 0 && (
        <ul>
          {children.map((child) => (
            <Branch key={child.entryId} node={child} tree={tree} here={here} />
          ))}
        </ul>
      )}
    </li>
  )
}
