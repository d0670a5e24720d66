'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { sand } from './calculation.ts'

/** Form and result, in the browser too. */
export const Sand = (props: WorkshopProps) => <Workshop calculation={sand} {...props} />
