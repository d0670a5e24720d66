import * as react from 'react/jsx-runtime'
import { lead } from './lead.ts'

/** Every element of the site is made here (`jsxImportSource` in tsconfig.json): React's own, but for {@link lead}. */
export const jsx: typeof react.jsx = (type, props, key) => react.jsx(type, lead(type, props), key)
export const jsxs: typeof react.jsxs = (type, props, key) => react.jsxs(type, lead(type, props), key)
export { Fragment, type JSX } from 'react/jsx-runtime'
