'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { hydraulicity } from './calculation.ts'

/** Form and result, in the browser too. */
export const Hydraulicity = (props: WorkshopProps) => <Workshop calculation={hydraulicity} {...props} />
