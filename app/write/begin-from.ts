import type { Member } from '#lib/access/actor.ts'
import { caseBySlug } from '#lib/db/cases.ts'
import { newestStanding, ownDraft, revisionToStartFrom, type StartRevision, sentAs } from '#lib/db/drafts.ts'
import { SHAPES, type WrittenKind } from '#lib/entry/body.ts'
import { Refusal } from '#lib/errors.ts'
import { type Beginning, beginDraft } from '#lib/workflow/draft-begin.ts'
import { words } from '../_words/index.ts'
import { readPicks } from '../_write/picks.ts'
import { printDraft } from '../_write/print-draft.ts'

/** What somebody wants to write, as the address says it. */
export interface Asked {
  readonly kind: string
  /** `slug` or `slug@revision` of an entry to revise. */
  readonly from: string
  /** `slug@revision` to return to. */
  readonly back: string
  /** The same, of a recipe to adapt. */
  readonly adapt: string
  /** Slug of the case that a visit was made to. */
  readonly of: string
  readonly work: string
  /** Id of a draft that was sent and has text that came in since, to begin a further version with. */
  readonly late: string
}

const NAMES = ['kind', 'from', 'back', 'adapt', 'of', 'work', 'late'] as const satisfies (keyof Asked)[]

/** What is asked, from whatever holds it under these names; what is not there is blank. */
export const askedFrom = (read: (name: keyof Asked) => string | undefined): Asked =>
  Object.fromEntries(NAMES.map((name) => [name, read(name) ?? ''])) as unknown as Asked

/** What is asked without what is blank, as an address has it. */
export const givenOf = (asked: Asked): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(asked).filter(([, text]) => text !== ''))

export type Start = Omit<Beginning, 'id'> & { readonly title: string }

export const isKind = (kind: string): kind is WrittenKind => Object.hasOwn(SHAPES, kind)

/**
 * Begins the draft that was asked for.
 *
 * @returns its id
 * @throws Refusal `not-found` when there is nothing of that address to begin from; as `beginDraft`
 */
export async function beginFrom(actor: Member, id: string, asked: Asked): Promise<string> {
  const start = await startOf(actor, asked)
  if (start === null)
    throw new Refusal('conflict', words('write')(asked.of === '' ? 'begin.noStart' : 'begin.noCase'))
  const { title: _, ...beginning } = start
  await beginDraft(actor, { id, ...beginning })
  return id
}

/** What a draft begins with; null when there is nothing of that address, or it is not theirs to begin from. */
export async function startOf(actor: Member, asked: Asked): Promise<Start | null> {
  if (asked.late !== '') return goOnFrom(actor, asked.late)
  if (asked.from !== '') return reviseFrom(actor, asked.from)
  if (asked.back !== '') return returnTo(actor, asked.back)
  if (asked.adapt !== '') return adaptFrom(actor, asked.adapt)
  if (asked.of !== '') return visitTo(asked)
  const { kind } = asked
  if (!isKind(kind) || kind === 'visit') return null
  const typed = { 'entry.note': words('write')('firstNote') }
  return { kind, slug: null, basedOn: null, adaptedFrom: null, typed, title: '' }
}

async function find(actor: Member, ref: string): Promise<StartRevision | null> {
  const [slug = '', number] = ref.split('@')
  return revisionToStartFrom(actor.key, slug, number === undefined ? null : Number(number) || 0)
}

/** A body's text. What its writer granted and permitted, whoever writes on grants anew. */
async function print({ kind, body }: StartRevision): Promise<Record<string, string>> {
  const typed = await printDraft(kind, body, await readPicks())
  return Object.fromEntries(Object.entries(typed).filter(([name]) => !name.startsWith('rights.')))
}

async function reviseFrom(actor: Member, ref: string): Promise<Start | null> {
  const found = await find(actor, ref)
  if (found === null) return null
  const { kind, slug, number } = found
  const typed = await print(found)
  return { kind, slug, basedOn: number, adaptedFrom: null, typed, title: typed.title ?? slug }
}

/** The very text of a draft that was sent, so that what came in for it since finds its fields. */
async function goOnFrom(actor: Member, late: string): Promise<Start | null> {
  const draft = await ownDraft(actor.key, late)
  const sent = draft?.submittedRevisionId ? await sentAs(draft.submittedRevisionId) : null
  const found = sent && (await find(actor, `${sent.slug}@${sent.number}`))
  if (draft === null || found === null) return null
  const { kind, slug, number } = found
  const typed = Object.fromEntries(
    Object.entries(draft.typed).filter(([name]) => !/^(entry|rights)\./.test(name)),
  )
  return { kind, slug, basedOn: number, adaptedFrom: null, typed, late, title: typed.title ?? slug }
}

/** An earlier version's text, to follow the newest one: nothing between is undone unseen. */
async function returnTo(actor: Member, ref: string): Promise<Start | null> {
  const found = await find(actor, ref)
  const newest = found && (await newestStanding(found.slug))
  if (found === null || newest === null) return null
  const { kind, slug, number } = found
  const note = words('write')('backNote', { number: String(number) })
  const typed: Record<string, string> = { ...(await print(found)), 'entry.note': note }
  return { kind, slug, basedOn: newest, adaptedFrom: null, typed, title: typed.title ?? slug }
}

/**
 * A recipe of one's own that remembers which version it came from. What its writer declares is not theirs, nor are the
 * sheets that it was worked out on.
 */
async function adaptFrom(actor: Member, ref: string): Promise<Start | null> {
  const found = await find(actor, ref)
  if (found?.kind !== 'recipe') return null
  const adaptedFrom = `${found.slug}@${found.number}`
  const { interests, invented, ...rest } = await print(found)
  const typed = Object.fromEntries(Object.entries(rest).filter(([name]) => !name.startsWith('sheets.')))
  return {
    kind: 'recipe',
    slug: null,
    basedOn: null,
    adaptedFrom,
    typed: { ...typed, adaptedFrom, 'entry.note': words('write')('firstNote') },
    title: typed.title ?? found.slug,
  }
}

async function visitTo({ of, work }: Asked): Promise<Start | null> {
  const found = await caseBySlug(of)
  if (found === null) return null
  const { works, title } = found.body
  const seen = works.length === 1 ? works[0]?.id : works.find(({ id }) => id === work)?.id
  const typed = {
    case: of,
    ...(seen !== undefined && { work: seen }),
    'entry.note': words('write')('firstNote'),
  }
  return { kind: 'visit', slug: null, basedOn: null, adaptedFrom: null, typed, title }
}
