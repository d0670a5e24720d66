'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { carbon } from './calculation.ts'

/** Form and result, in the browser too. */
export const Carbon = (props: WorkshopProps) => <Workshop calculation={carbon} {...props} />
