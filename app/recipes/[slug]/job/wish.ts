/**
 * What the page is asked for beside the sheet of what was typed, as `show` of its address: a button's `fields` (those of
 * each kind of work, with examples where nothing is typed), `more` (another work) and `drop-2` (without that one); and
 * what a script sends that follows typing: `fields-2` (those of that work alone), `live` (nothing more, and the working
 * left out) or `working` (nothing more). An address that is kept never has it.
 */
export type Wish = string

const LIVE = 'live'
const WORKING = 'working'

/** Does a script ask, which needs nothing typed in advance? */
export const asksLive = (wish: Wish | undefined): boolean => wish === LIVE || wish === WORKING

/** Is the working left out of the answer? It is more than half of a sheet, and nobody looks at it while it is closed. */
export const leavesWorking = (wish: Wish | undefined): boolean => wish === LIVE

/** Are examples wanted where nothing is typed for that work? */
export const wantsExamples = (wish: Wish | undefined, work: number): boolean =>
  wish === 'fields' || wish === `fields-${work}`

/**
 * What a script asks for once these choices of the form were changed.
 *
 * @param changed names of the fields, such as `use-2`
 * @param working is the working open?
 */
export function wishFor(changed: readonly string[], working: boolean): Wish {
  const works = changed.flatMap((name) => {
    const kind = /^use(?:-(\d+))?$/.exec(name)
    return kind ? [kind[1] ?? '1'] : []
  })
  const [one] = works
  if (one !== undefined) return works.length > 1 ? 'fields' : `fields-${one}`
  return working ? WORKING : LIVE
}
