'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { slaking } from './calculation.ts'

/** Form and result, in the browser too. */
export const Slaking = (props: WorkshopProps) => <Workshop calculation={slaking} {...props} />
