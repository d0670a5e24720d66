import { z } from 'zod'
import { GUEST } from '#lib/access/actor.ts'
import { type EntryHead, entryHead, type VersionLine, versionOf, versionsOf } from '#lib/db/versions.ts'
import { readBody } from '#lib/entry/body.ts'
import { diffBodies } from '#lib/entry/diff.ts'
import { slug } from '#lib/entry/fields.ts'
import { pathText } from '#lib/entry/json.ts'
import { OUTCOMES, REVISION_STATES } from '#lib/entry/state.ts'
import { KINDS } from '#lib/entry/terms.ts'
import { Refusal } from '#lib/errors.ts'
import { operation } from './operation.ts'

const decision = z.object({
  number: z.int().positive(),
  outcome: z.enum(OUTCOMES),
  by: z.string(),
  at: z.iso.datetime(),
  /** Null where a steward took them off the page. */
  words: z.string().nullable(),
  checklist: z.record(z.string(), z.boolean()),
  fields: z.array(z.object({ field: z.string(), words: z.string() })),
  digest: z.string(),
})

const version = z.object({
  number: z.int().positive(),
  basedOn: z.int().positive().nullable(),
  state: z.enum(REVISION_STATES),
  author: z.string(),
  submittedAt: z.iso.datetime(),
  /** Null for what was never published: its words are for its author and the reviewers. */
  note: z.string().nullable(),
  digest: z.string(),
  erased: z.boolean(),
  decisions: z.array(decision),
})

const entry = {
  slug,
  kind: z.enum(KINDS),
  published: z.int().positive().nullable(),
  withdrawn: z.boolean(),
  disputed: z.boolean(),
}

const writeEntry = ({ slug, kind, published, withdrawn, disputed }: EntryHead) => ({
  ...{ slug, kind, published, withdrawn, disputed },
})

const writeVersion = ({ authorKey, submittedAt, deeds, id, open, ...rest }: VersionLine) => ({
  number: rest.number,
  basedOn: rest.basedOn,
  state: rest.state,
  author: authorKey,
  submittedAt: submittedAt.toISOString(),
  note: rest.note,
  digest: rest.digest,
  erased: rest.erased,
  decisions: deeds.map(({ byKey, at, fields, ...deed }) => ({
    ...deed,
    by: byKey,
    at: at.toISOString(),
    fields: fields.map((field) => ({ ...field })),
  })),
})

async function readEntry(address: string): Promise<EntryHead> {
  const found = await entryHead(GUEST, address)
  if (found === null) throw new Refusal('not-found', 'Nothing was ever published at this address.')
  return found
}

async function readVersion(entry: EntryHead, number: number) {
  const found = await versionOf(GUEST, entry, number)
  if (found === null) throw new Refusal('not-found', 'There is no such version.')
  return found
}

/** All versions of an entry of any kind, with all decisions. */
export const versionsOperation = operation({
  id: 'listVersions',
  method: 'GET',
  path: '/api/v1/entries/{slug}/versions',
  summary: 'Versions of an entry of any kind, the latest first, with every decision',
  params: z.strictObject({ slug }),
  query: z.strictObject({ before: z.coerce.number().int().positive().optional() }),
  answer: z.object({ ...entry, versions: z.array(version), next: z.int().positive().nullable() }),
  async run({ params, query }) {
    const found = await readEntry(params.slug)
    const { versions, next } = await versionsOf(GUEST, found, query.before)
    return { ...writeEntry(found), versions: versions.map(writeVersion), next }
  },
})

/** One version with its body as it was submitted. */
export const versionOperation = operation({
  id: 'readVersion',
  method: 'GET',
  path: '/api/v1/entries/{slug}/versions/{number}',
  summary: 'One version of an entry as it was submitted, with its decisions',
  params: z.strictObject({ slug, number: z.coerce.number().int().positive() }),
  answer: z.object({
    ...entry,
    version,
    /** Null where it was erased, or is not for all to read. */
    body: z.record(z.string(), z.unknown()).nullable(),
  }),
  async run({ params }) {
    const found = await readEntry(params.slug)
    const { body, shape: _, ...line } = await readVersion(found, params.number)
    return {
      ...writeEntry(found),
      version: writeVersion(line),
      body: body as Record<string, unknown> | null,
    }
  },
})

/** What differs between two versions, field by field. */
export const compareOperation = operation({
  id: 'compareVersions',
  method: 'GET',
  path: '/api/v1/entries/{slug}/compare',
  summary: 'What differs between two versions, field by field',
  params: z.strictObject({ slug }),
  query: z.strictObject({
    from: z.coerce.number().int().positive(),
    to: z.coerce.number().int().positive(),
  }),
  answer: z.object({
    ...entry,
    from: z.int().positive(),
    to: z.int().positive(),
    changes: z.array(
      z.object({
        kind: z.enum(['added', 'removed', 'changed', 'reordered']),
        /** Names of fields, and the key of an item of a list in brackets: `works[repointing].areaM2`. */
        path: z.string(),
        before: z.unknown().optional(),
        after: z.unknown().optional(),
      }),
    ),
  }),
  async run({ params, query: { from, to } }) {
    const found = await readEntry(params.slug)
    const [old, now] = (await Promise.all([readVersion(found, from), readVersion(found, to)])).map(
      ({ body, shape }) => (body === null ? null : readBody(found.kind, body, shape)),
    )
    if (!old || !now)
      throw new Refusal('not-found', 'One of the two versions was erased, or is not for all to read.')
    return {
      ...writeEntry(found),
      from,
      to,
      changes: diffBodies(old, now).map(({ path, ...change }) => ({ ...change, path: pathText(path) })),
    }
  },
})
