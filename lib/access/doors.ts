import type { Actor } from './actor.ts'
import { mayEver, type Verb } from './policy.ts'

/** Who may pass: anyone at all, anyone signed in, or whoever the policy lets do this. */
export type DoorRule = 'anyone' | 'member' | Verb

/**
 * Every page, by the address its folder gives it. The gate and the page itself both ask this table; whoever adds
 * a page adds its line, or a test fails.
 */
export const PAGES = {
  '/': 'anyone',
  '/about': 'anyone',
  '/account': 'member',
  '/account/closed': 'anyone',
  '/account/sheets': 'keepSheet',
  '/account/sheets/[id]': 'ownSheet',
  '/account/sheets/new': 'keepSheet',
  '/evidence': 'anyone',
  '/evidence/compare': 'anyone',
  '/evidence/method': 'anyone',
  '/cases': 'anyone',
  '/cases/[slug]': 'anyone',
  '/cases/[slug]/photos': 'anyone',
  '/cautions': 'anyone',
  '/compare': 'anyone',
  '/due': 'remind',
  '/entries/[slug]/adaptations': 'anyone',
  '/entries/[slug]/answer': 'answer',
  '/entries/[slug]/cite': 'anyone',
  '/entries/[slug]/compare': 'anyone',
  '/entries/[slug]/dispute': 'dispute',
  '/entries/[slug]/strike': 'strike',
  '/entries/[slug]/versions': 'anyone',
  '/entries/[slug]/versions/[number]': 'anyone',
  '/find': 'anyone',
  '/glossary': 'anyone',
  '/guides': 'anyone',
  '/guides/[id]': 'anyone',
  '/kept': 'anyone',
  '/like': 'anyone',
  '/map': 'anyone',
  '/materials': 'anyone',
  '/materials/[id]': 'anyone',
  '/method': 'anyone',
  '/notices': 'remind',
  '/photos': 'uploadPhoto',
  '/recipes': 'anyone',
  '/recipes/[slug]': 'anyone',
  '/recipes/[slug]/job': 'anyone',
  '/recipes/[slug]/job/card': 'anyone',
  '/record': 'anyone',
  '/record/sheet': 'anyone',
  '/review': 'review',
  '/review/[id]': 'review',
  '/review/disputes/[slug]': 'review',
  '/rows': 'anyone',
  '/rows/[slug]': 'anyone',
  '/sign-in': 'anyone',
  '/sign-in/link': 'anyone',
  '/sign-up': 'anyone',
  '/sources': 'anyone',
  '/sources/[id]': 'anyone',
  '/steward': 'nameRoles',
  '/steward/audit': 'readAudit',
  '/steward/people/[key]': 'nameRoles',
  '/steward/take-down': 'withdraw',
  '/tables': 'anyone',
  '/tables/[id]': 'anyone',
  '/terms': 'anyone',
  '/terms/[id]': 'anyone',
  '/terms/[id]/[term]': 'anyone',
  '/work-out': 'anyone',
  '/work-out/carbon': 'anyone',
  '/work-out/compatibility': 'anyone',
  '/work-out/convert-ratio': 'anyone',
  '/work-out/cure': 'anyone',
  '/work-out/hydraulicity': 'anyone',
  '/work-out/lime-certificate': 'anyone',
  '/work-out/sample': 'anyone',
  '/work-out/sand': 'anyone',
  '/work-out/slaking': 'anyone',
  '/work-out/sieve': 'anyone',
  '/work-out/subsoil': 'anyone',
  '/write': 'writeDraft',
  '/write/[draft]': 'writeDraft',
  '/write/[draft]/[step]': 'writeDraft',
  '/write/[draft]/both': 'writeDraft',
  '/write/[draft]/merge': 'writeDraft',
  '/write/blank': 'writeDraft',
  '/write/new': 'writeDraft',
} as const satisfies Record<string, DoorRule>
export type PageDoor = keyof typeof PAGES

/** Every route handler, by the address its folder gives it. */
export const ROUTES = {
  '/api/[...path]': 'anyone',
  '/api/health': 'anyone',
  '/api/v1/evidence': 'anyone',
  '/api/v1/cases': 'anyone',
  '/api/v1/cases/[slug]': 'anyone',
  '/api/v1/entries/[slug]/compare': 'anyone',
  '/api/v1/entries/[slug]/versions': 'anyone',
  '/api/v1/entries/[slug]/versions/[number]': 'anyone',
  '/api/v1/find': 'anyone',
  '/api/v1/find/[file]': 'anyone',
  '/api/v1/find/like': 'anyone',
  '/api/v1/find/regions': 'anyone',
  '/api/v1/find/suggest': 'anyone',
  '/api/v1/job': 'anyone',
  '/api/v1/openapi.json': 'anyone',
  '/api/v1/photos': 'uploadPhoto',
  '/api/v1/photos/[key]': 'uploadPhoto',
  '/api/v1/recipes': 'anyone',
  '/api/v1/recipes/[slug]': 'anyone',
  '/api/v1/standing': 'anyone',
  '/api/v1/sums/[name]': 'anyone',
  '/api/v1/tables': 'anyone',
  '/due/calendar/[token]': 'anyone',
  '/entries/[slug]/cite/[form]': 'anyone',
  '/icons/[file]': 'anyone',
  '/map/world.svg': 'anyone',
  '/worker.js': 'anyone',
  '/account/export': 'member',
  '/api/auth/callback/[provider]': 'anyone',
  '/sign-in/service': 'anyone',
  '/photos/[sha]/[file]': 'anyone',
  '/work-out/[name]/figures.csv': 'anyone',
  '/work-out/[name]/figures.json': 'anyone',
  '/photos/add': 'uploadPhoto',
  '/api/drafts/[draft]': 'writeDraft',
} as const satisfies Record<string, DoorRule>
export type RouteDoor = keyof typeof ROUTES

/** Every server action, by its name: `act` and `actor` ask it before anything else happens. */
export const ACTIONS = {
  addReminder: 'remind',
  answerVisit: 'answer',
  claimRevision: 'review',
  disputeEntry: 'dispute',
  judge: 'review',
  makeCalendar: 'remind',
  readNotices: 'remind',
  releaseRevision: 'review',
  removeReminder: 'remind',
  ruleOnDispute: 'review',
  strike: 'strike',
  signIn: 'anyone',
  sendLink: 'anyone',
  signUp: 'anyone',
  redeemLink: 'anyone',
  rename: 'member',
  setAddress: 'member',
  setLanguage: 'member',
  setPassword: 'member',
  endSessions: 'member',
  signOut: 'member',
  closeAccount: 'member',
  keepSheet: 'keepSheet',
  renameSheet: 'ownSheet',
  deleteSheet: 'ownSheet',
  nameRoles: 'nameRoles',
  withdrawEntry: 'withdraw',
  restoreEntry: 'restore',
  eraseBody: 'erase',
  erasePhoto: 'erase',
  beginWriting: 'writeDraft',
  saveStep: 'writeDraft',
  settleBoth: 'writeDraft',
  discard: 'writeDraft',
  takeOver: 'writeDraft',
  removePhoto: 'uploadPhoto',
} as const satisfies Record<string, DoorRule>
export type ActionDoor = keyof typeof ACTIONS

/** Operations of the JSON interface that are not open to anyone, by id. */
export const OPERATIONS: Readonly<Record<string, DoorRule>> = {}

/** Whether this person gets past a door of this rule at all; what they may do behind it, the policy says. */
export function mayPass(actor: Actor, rule: DoorRule): boolean {
  if (rule === 'anyone') return true
  return rule === 'member' ? actor.kind === 'member' : mayEver(actor, rule)
}

/** Doors with fewer holes first: `/write/[draft]/both` stands before `/write/[draft]/[step]`. */
const PATTERNS = (Object.keys(PAGES) as PageDoor[])
  .map((door) => ({
    door,
    pattern: new RegExp(`^${door.replaceAll('.', '\\.').replaceAll(/\[[^\]]+\]/g, '[^/]+')}$`),
  }))
  .sort((a, b) => a.door.split('[').length - b.door.split('[').length)

/** The door of the page at an address; undefined where there is no page. */
export const doorOfPath = (path: string): PageDoor | undefined =>
  Object.hasOwn(PAGES, path) ? (path as PageDoor) : PATTERNS.find(({ pattern }) => pattern.test(path))?.door

/** The rule of the page at an address; what no page answers is open, to say that nothing is there. */
export function ruleOfPath(path: string): DoorRule {
  const door = doorOfPath(path)
  return door === undefined ? 'anyone' : PAGES[door]
}
