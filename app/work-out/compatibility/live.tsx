'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { compatibility } from './calculation.ts'

/** Form and result, in the browser too. */
export const Compatibility = (props: WorkshopProps) => <Workshop calculation={compatibility} {...props} />
