/** What a draft is, kept beside its text in a browser: enough to list it, to open it, and to begin it. */
export interface About {
  /** Key of whoever writes it: nobody else is shown it, and it goes up as nobody else's. */
  readonly by: string
  /** What it begins from, as the address of a page to begin on says it; blank names are left out. */
  readonly asked: Readonly<Record<string, string>>
  /** What it is called where it is listed. */
  readonly title: string
  /** The page that it is written on. */
  readonly page: string
  /**
   * `there`: the site has the draft. `begun`: it was begun in this browser, and is begun on the site as it is sent.
   * `discarded`: the site has it no longer; it is begun anew only as its writer says so.
   */
  readonly state: 'there' | 'begun' | 'discarded'
}

/** Page of the blank form on which a draft is written, or begun anew, under its key. */
export const blankPage = (asked: About['asked'], key: string): string =>
  `/write/blank?${new URLSearchParams({ ...asked, key })}`

/** What goes with the text of a draft. */
export interface Sent {
  readonly by?: string
  readonly begin?: About['asked']
}

/** Who typed it, and where the site may not have the draft, what it begins from; nothing where nobody noted it. */
export function sentWith(about: About | undefined): Sent {
  if (about === undefined) return {}
  return { by: about.by, ...(about.state !== 'there' && { begin: about.asked }) }
}
