/** The outlines' own type: to infer one from three quarters of a megabyte of numbers helps nobody. */
declare module 'world-atlas/countries-50m.json' {
  const atlas: import('./outlines.ts').Atlas
  export default atlas
}
declare module 'world-atlas/countries-110m.json' {
  const atlas: import('./outlines.ts').Atlas
  export default atlas
}
