/** The builder looks for this file in the folders above too and would take the site's: this one matches nothing. */
export function proxy() {}

export const config = { matcher: '/never' }
