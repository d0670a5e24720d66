/** Citation.js comes without types; this is the little of it that the tests use. */
declare module '@citation-js/core' {
  export const plugins: {
    input: { chain(text: string, options: { forceType: string }): Record<string, unknown>[] }
  }
}
declare module '@citation-js/plugin-bibtex'
declare module '@citation-js/plugin-ris'
