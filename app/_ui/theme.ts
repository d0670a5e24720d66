/** The paper of tokens.css, for what a browser draws around a page; a test holds the two together. */
export const PAPER = { light: '#fbf9f2', dark: '#14181d' } as const
