import * as react from 'react/jsx-dev-runtime'
import { lead } from './lead.ts'

/** The same while developing, where React wants to know more. */
export const jsxDEV: typeof react.jsxDEV = (type, props, ...rest) =>
  react.jsxDEV(type, lead(type, props), ...rest)
export { Fragment, type JSX } from 'react/jsx-dev-runtime'
