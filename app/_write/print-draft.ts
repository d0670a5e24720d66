import { caseBySlug } from '#lib/db/cases.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import type { Picks } from './picks.ts'
import { printForm } from './print.ts'
import { followingDay } from './season.ts'
import { shower } from './view.ts'

/** A body as the text of a draft: names as people know them, and what follows from other fields left to follow. */
export async function printDraft(
  kind: WrittenKind,
  body: object,
  picks: Picks,
): Promise<Readonly<Record<string, string>>> {
  const typed = printForm(kind, body, shower(picks))
  if (kind !== 'visit') return typed
  return followingDay(typed, (await caseBySlug(typed.case ?? ''))?.body.place)
}
