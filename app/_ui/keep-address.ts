/** Where a worked sheet is kept: the page that asks for its name. The sheet's own address holds every input. */
export const keepAddress = (of: string): string => `/account/sheets/new?${new URLSearchParams({ of })}`
