import type { WrittenKind } from '#lib/entry/body.ts'

interface Placed {
  readonly kind: WrittenKind
  readonly slug: string
  /** Of a visit. */
  readonly caseSlug: string | null
}

/** Where an entry is read; a visit on the page of its case. */
export function homeOf({ kind, slug, caseSlug }: Placed, revision?: number): string {
  if (kind === 'visit') return `/cases/${caseSlug ?? ''}#${slug}`
  return revision === undefined ? `/${kind}s/${slug}` : `/${kind}s/${slug}?revision=${revision}`
}

/** The pages about an entry's versions. */
export const versionsPath = (slug: string) => `/entries/${slug}/versions`
export const versionPath = (slug: string, number: number) => `/entries/${slug}/versions/${number}`
export const comparePath = (slug: string, from: number, to: number) =>
  `/entries/${slug}/compare?from=${from}&to=${to}`
export const citePath = (slug: string, number: number) => `/entries/${slug}/cite?revision=${number}`
