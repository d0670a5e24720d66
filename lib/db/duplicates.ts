import type { CaseBody } from '#lib/entry/case.ts'
import { db } from './client.ts'

/** A published case that may be of the same wall. */
export interface LikelyDuplicate {
  readonly slug: string
  readonly title: string
  /** What speaks for it. */
  readonly because: readonly ('title' | 'position' | 'dates' | 'author')[]
}

/** Share of three-letter pieces that two titles have in common, from which they are alike. */
const ALIKE = 0.45

/**
 * Published cases in the same country and region, with the same kind of wall and a unit in common, that share at
 * least two of: a title that reads alike, a position within about 15 km, a work of the same use within a year, the
 * author.
 */
export async function likelyDuplicates(
  entryId: string,
  body: CaseBody,
  authorKey: string,
): Promise<LikelyDuplicate[]> {
  const { latitude = null, longitude = null, country, region } = body.place
  const units = body.fabric.units.map(({ unit }) => unit)
  const [uses, years] = [
    body.works.map(({ use }) => use),
    body.works.map(({ started }) => Number(started.slice(0, 4))),
  ]
  const rows = await db().$queryRaw<
    { slug: string; title: string; likeness: number; near: boolean; dates: boolean; author: boolean }[]
  >`
    WITH regions AS MATERIALIZED (
      SELECT DISTINCT i.region FROM "CaseIndex" i WHERE i.country = ${country}
    ), likest AS MATERIALIZED (
      SELECT i."entryId", i.slug, i.title, similarity(i.title, ${body.title}) AS likeness,
        coalesce(abs(i.latitude - ${latitude}::float8) <= 0.15 AND abs(i.longitude - ${longitude}::float8) <= 0.25, false)
          AS near
      FROM (SELECT region FROM regions WHERE similarity(region, ${region}) > 0.6) g
      -- One region after the other by the index: of all the cases of a country only theirs are read.
      CROSS JOIN LATERAL (
        SELECT * FROM "CaseIndex" c WHERE c.country = ${country} AND c.region = g.region AND c.wall = ${body.fabric.wall}
          AND c.units && ${units}::text[] AND c."entryId" <> ${entryId}::uuid OFFSET 0
      ) i
      ORDER BY near DESC, likeness DESC, i.slug LIMIT 200
    )
    SELECT l.slug, l.title, l.likeness, l.near,
      (SELECT count(*) FROM "WorkIndex" w, unnest(${uses}::text[], ${years}::int[]) AS g(use, year)
        WHERE w."caseEntryId" = l."entryId" AND w.use = g.use AND abs(left(w.started, 4)::int - g.year) <= 1) > 0 AS dates,
      (SELECT count(*) FROM "Revision" r WHERE r."entryId" = l."entryId" AND r."authorKey" = ${authorKey}) > 0 AS author
    FROM likest l ORDER BY l.likeness DESC, l.slug`
  return rows
    .map(({ slug, title, likeness, near, dates, author }) => ({
      slug,
      title,
      because: [
        ...(likeness >= ALIKE ? (['title'] as const) : []),
        ...(near ? (['position'] as const) : []),
        ...(dates ? (['dates'] as const) : []),
        ...(author ? (['author'] as const) : []),
      ],
    }))
    .filter(({ because }) => because.length >= 2 && because.some((one) => one !== 'author'))
    .slice(0, 5)
}

/** Visits of the same work on the same day by anybody, besides this one. */
export async function visitsOfThatDay(
  entryId: string,
  visit: { case: string; work: string; on: string },
): Promise<string[]> {
  const rows = await db().$queryRaw<{ slug: string }[]>`
    SELECT v.slug FROM "VisitIndex" v JOIN "Entry" e ON e.id = v."caseEntryId"
    WHERE e.slug = ${visit.case} AND v.work = ${visit.work} AND v."on" = ${visit.on}::date
      AND v."entryId" <> ${entryId}::uuid ORDER BY v.slug`
  return rows.map(({ slug }) => slug)
}
