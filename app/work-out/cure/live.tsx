'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { cure } from './calculation.ts'

/** Form and result, in the browser too. */
export const Cure = (props: WorkshopProps) => <Workshop calculation={cure} {...props} />
