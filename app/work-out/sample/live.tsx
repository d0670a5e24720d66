'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { sample } from './calculation.ts'

/** Form and result, in the browser too. */
export const Sample = (props: WorkshopProps) => <Workshop calculation={sample} {...props} />
